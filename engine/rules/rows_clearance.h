#pragma once
// Rules about free room around the oven and what it stands on.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kClearanceRows[] = {
    {.id = "clearance.side",
     .title = "Free room at the sides",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "gap between the oven's body and the nearest thing on that side",
     .against = "what the manual, or a local rule, asks for",
     .source = "oven_manual",
     .clause = "clearance to combustibles, sides",
     .basis = Basis::SecondHand,
     .words =
         "The oven's own manual, then a local rule; where both speak, the larger. For an oven that "
         "is said to have no listing, then the published fallback: 36 in (914 mm) at sides and "
         "back (NFPA 211 12.6, second hand; IRC R1002.5), 48 in (1219 mm) above and in front (IFGC "
         "623). Where none speaks the answer is unknown: never a guess, and never from the heat "
         "model.",
     .ok = "{Where} there is {measured}; {asks} {limit}.",
     .warn = "{Where} there is only {measured}; {asks} {limit} to what burns. What is there does "
             "not burn: read whether the oven still wants the room.",
     .fail = "{Where} there is only {measured}; {asks} {limit}.",
     .unknown = "{Where} {asks} {limit}; nobody has measured what is there.|How much free room "
                "this oven needs {where} is not known: find it in its manual before you build.",
     .inputs = "clearance.side"},
    {.id = "clearance.back",
     .title = "Free room behind",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "gap between the oven's body and the nearest thing behind it",
     .against = "what the manual, or a local rule, asks for",
     .source = "oven_manual",
     .clause = "clearance to combustibles, back",
     .basis = Basis::SecondHand,
     .words = "As for the sides.",
     .ok = "Behind the oven there is {measured}; {asks} {limit}.",
     .warn = "Behind the oven there is only {measured}; {asks} {limit} to what burns. What is "
             "there does not burn: read whether the oven still wants the room.",
     .fail = "Behind the oven there is only {measured}; {asks} {limit}.",
     .unknown = "Behind the oven {asks} {limit}; nobody has measured what is there.|How much room "
                "this oven needs behind it is not known: find it in its manual before you build.",
     .inputs = "clearance.back"},
    {.id = "clearance.above",
     .title = "Free room above",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "room between the oven's top and the cover",
     .against = "what the manual, or a local rule, asks for",
     .source = "oven_manual",
     .clause = "clearance to combustibles, above",
     .basis = Basis::SecondHand,
     .words =
         "As for the sides; the room is the cover's height less the oven's top. A chimney needs "
         "its own clearance.",
     .ok = "Above the oven there is {measured}; {asks} {limit}.|Nothing is above the oven.",
     .warn = "Above the oven there is only {measured}; {asks} {limit} to what burns. What is there "
             "does not burn: read whether the oven still wants the room.",
     .fail = "Above the oven there is only {measured}; {asks} {limit}.",
     .unknown =
         "Above the oven {asks} {limit}; say how high the cover is, if there is one.|How much "
         "room this oven needs above it is not known: find it in its manual before you "
         "build.",
     .inputs = "clearance.above"},
    {.id = "clearance.front",
     .title = "Free room in front",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "free ground from the mouth to what stands behind the cook",
     .against = "what the manual, or a local rule, asks for",
     .source = "oven_manual",
     .clause = "clearance to combustibles, front",
     .basis = Basis::SecondHand,
     .words = "As for the sides.",
     .ok = "In front of the oven there is {measured}; {asks} {limit}.",
     .warn = "In front of the oven there is only {measured}; {asks} {limit} to what burns. What is "
             "there does not burn: read whether the oven still wants the room.",
     .fail = "In front of the oven there is only {measured}; {asks} {limit}.",
     .unknown =
         "In front of the oven {asks} {limit}; nobody has measured what is there.|How much "
         "room this oven needs in front of it is not known: find it in its manual before you "
         "build.",
     .inputs = "clearance.front"},
    {.id = "clearance.below",
     .title = "Free room below",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "room under the oven's base",
     .against = "what the manual, or a local rule, asks for",
     .source = "oven_manual",
     .clause = "clearance to combustibles, below",
     .basis = Basis::SecondHand,
     .words = "As for the sides. Feet or a stand that came with the oven count as part of it.",
     .ok = "Below the oven there is {measured}; {asks} {limit}.",
     .warn = "Below the oven there is only {measured}; {asks} {limit} to what burns. What is there "
             "does not burn: read whether the oven still wants the room.",
     .fail = "Below the oven there is only {measured}; {asks} {limit}.",
     .unknown = "Below the oven {asks} {limit}; nobody has said what is there.|How much room this "
                "oven needs below it is not known: find it in its manual before you build.",
     .inputs = "clearance.below"},
    {.id = "clearance.unlisted_sides",
     .title = "Oven without a listing: sides and back",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "",
     .against = "36 in (914 mm)",
     .source = "nfpa211",
     .clause = "12.6, unlisted solid-fuel appliance; IRC R1002.5 asks the same",
     .basis = Basis::SecondHand,
     .words = "36 in (914 mm) to anything that burns. Written for stoves and masonry heaters: no "
              "clause was found that is written for a pizza oven outdoors at a home.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "clearance.side",
     .finding = false},
    {.id = "clearance.unlisted_open",
     .title = "Oven without a listing: above and in front",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "",
     .against = "48 in (1219 mm)",
     .source = "ifgc",
     .clause = "unlisted cooking appliance",
     .basis = Basis::Seen,
     .words = "48 in (1219 mm) to anything that burns. Written for commercial kitchens: no clause "
              "was found that is written for a pizza oven outdoors at a home.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "clearance.above",
     .finding = false},
    {.id = "clearance.on_combustible",
     .title = "What the oven stands on",
     .unit = Unit::None,
     .harm = Harm::Fire,
     .measures = "",
     .against = "",
     .source = "oven_manual",
     .clause = "installation surface",
     .basis = Basis::SecondHand,
     .words = "Whether the oven may stand on anything that burns is for its manual to say, then a "
              "local rule. Wood held above 77 C (171 F) for long can catch fire years later "
              "(Babrauskas and others 2007): a stone top on plywood is a combustible top.",
     .ok = "The oven may stand on this top.",
     .warn = "The oven may stand on this top, but keep what burns out of it where you can.",
     .fail = "The oven must not stand on a combustible top, and this one is combustible.",
     .unknown = "Whether this oven may stand on anything that burns is not known: find it in its "
                "manual before you build.",
     .inputs = "clearance.on_combustible"},
    {.id = "oven.masonry_mass",
     .title = "Mass of a masonry oven",
     .unit = Unit::Mass,
     .harm = Harm::Fall,
     .measures = "the oven's mass as given",
     .against = "the least that we believe of an oven of brick or stone",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "An oven of brick or stone weighs hundreds of kilograms, dome, floor and "
              "insulation together. Less than 150 kg (331 lb) is more often another oven's figure, "
              "or one that was never changed.",
     .ok = "",
     .warn = "{measured} is very little for an oven of brick or stone; {limit} is the least that "
             "we believe. Look its mass up: what it stands on must carry all of it.",
     .fail = "",
     .unknown = "",
     .inputs = "oven.masonry_base"},
    {.id = "oven.masonry_base",
     .title = "What a masonry oven stands on",
     .unit = Unit::None,
     .harm = Harm::Fall,
     .measures = "",
     .against = "",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "A masonry oven weighs hundreds of kilograms and stands on masonry or a slab of its "
              "own, never on a cabinet.",
     .ok = "A masonry oven stands on masonry or a slab.",
     .warn =
         "A masonry oven stands on masonry or a slab of its own, never on a cabinet: the height "
         "here is that of the slab's top.",
     .fail = "A masonry oven stands on masonry or a slab of its own, never on a cabinet.",
     .unknown = "",
     .inputs = "oven.masonry_base"},
};

}  // namespace hs::rules
