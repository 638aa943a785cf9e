#pragma once
// Rules about radiant heat from the mouth at face and hand, and about hot surfaces. None of them is
// a clearance, and none permits anything.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kHeatRows[] = {
    {.id = "heat.hot_zone",
     .title = "The hot zone in front of the mouth",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "face to the outer mouth plane",
     .against = "how far the zone reaches",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words =
         "Hot air, sparks and flames leave by the upper half of the mouth and rise. From half "
         "the mouth's height up, as far as 450 mm (17 3/4 in) in front of it and 150 mm (6 in) "
         "wider on either side, no face and no lamp is put, whatever the heat figures say.",
     .ok = "{Where}, {cook}'s face stays out of the hot zone in front of the mouth.",
     .warn = "",
     .fail =
         "{Where}, {cook}'s face is {measured} from the mouth, inside the hot zone that reaches "
         "{limit} before it: step back.",
     .unknown = "",
     .inputs = "sight.pizza_share sight.working_share"},
    {.id = "heat.face",
     .title = "Heat at the face, watching",
     .unit = Unit::HeatFlux,
     .harm = Harm::Burn,
     .measures = "radiant heat at the face, at least",
     .against = "what people outdoors without protection, children among them, are allowed",
     .source = "cfr_24_51",
     .clause = "51.203(a)(2)",
     .basis = Basis::Seen,
     .words =
         "The mouth's outline as seen from the face, times what it emits. Up to 1.42 kW/m2 (450 "
         "Btu an hour and square foot) people may be for minutes; to 2.5 for a short reach "
         "(SFPE Handbook 5th ed. Table 63.20, second-hand); past that it hurts within half a "
         "minute. Flames, sparks and hot air come on top, so it is told as at least, and a "
         "low figure permits nothing.",
     .ok = "Watching, at least {measured} reaches {cook}'s face; people outdoors are allowed "
           "{limit}. Flames come on top.",
     .warn = "Watching, at least {measured} reaches {cook}'s face: too hot to linger, painful in "
             "some {seconds}. Watch from {linger} or further.",
     .fail =
         "Watching, at least {measured} reaches {cook}'s face: painful in some {seconds}. Watch "
         "from {linger} or further.",
     .unknown = "",
     .inputs = "heat.face sight.pizza_share"},
    {.id = "heat.face_working",
     .title = "Heat at the face, peel in hand",
     .unit = Unit::HeatFlux,
     .harm = Harm::Burn,
     .measures = "radiant heat at the face, at least",
     .against = "a short reach",
     .source = "sfpe",
     .clause = "Table 63.20",
     .basis = Basis::SecondHand,
     .words = "As for watching, from the working distance. Up to 2.5 kW/m2 is borne for half a "
              "minute; the time to severe pain is 60 x 1.33 / q^1.33 seconds. Sources differ by a "
              "factor of two.",
     .ok = "Peel in hand, at least {measured} reaches {cook}'s face[: painful in some {seconds}, "
           "time for a short reach].",
     .warn =
         "Peel in hand, at least {measured} reaches {cook}'s face: painful in some {seconds}. A "
         "longer peel lets {cook} stand back.",
     .fail = "",
     .unknown = "",
     .inputs = "heat.face sight.pizza_share sight.working_share"},
    {.id = "heat.hand",
     .title = "Heat at the hand on the peel",
     .unit = Unit::HeatFlux,
     .harm = Harm::Burn,
     .measures = "radiant heat that gets through to the hand, at least",
     .against = "a short reach, or what is borne for four seconds",
     .source = "sfpe",
     .clause = "Table 63.20",
     .basis = Basis::SecondHand,
     .words =
         "The hand is 60 mm (our judgement) from the handle's end with the blade's tip under the "
         "far rim of the pizza, 50 mm above the oven's floor. Up to 2.5 kW/m2 is borne for "
         "half a minute, 10 for four seconds. A dry gauntlet and a plate each count as one "
         "black layer that gives half back: one lets half through, two a third (textbook, "
         "from memory). They go on warming, and a wet glove scalds.",
     .ok = "With the peel under the pizza, at least {measured} gets through to {cook}'s hand[: "
           "painful in some {seconds}].",
     .warn = "With the peel under the pizza, at least {measured} gets through to {cook}'s hand: "
             "painful in some {seconds}. A dry gauntlet, a longer peel or a plate before the hand.",
     .fail = "With the peel under the pizza, at least {measured} gets through to {cook}'s hand, "
             "{limit} "
             "is borne for four seconds: a longer peel before anything else.",
     .unknown = "",
     .inputs = "heat.hand heat.face sight.pizza_share sight.working_share"},
    {.id = "heat.stoop",
     .title = "A stoop that is too hot",
     .unit = Unit::HeatFlux,
     .harm = Harm::Burn,
     .measures = "radiant heat at the face in that stoop, at least",
     .against = "what people outdoors without protection are allowed",
     .source = "cfr_24_51",
     .clause = "51.203(a)(2)",
     .basis = Basis::Seen,
     .words =
         "The least stoop that would show the target brings the face nearer the mouth. One that "
         "brings it past 1.42 kW/m2 is not offered.",
     .ok = "",
     .warn = "The stoop that would show {cook} {all_of_target} brings at least {measured} to the "
             "face: it is not offered. Step back or raise the eye instead.",
     .fail = "",
     .unknown = "",
     .inputs = "heat.face sight.pizza_share"},
    {.id = "heat.linger",
     .title = "Nearest place to linger",
     .unit = Unit::Distance,
     .harm = Harm::Burn,
     .measures = "face to mouth",
     .against = "",
     .source = "cfr_24_51",
     .clause = "51.203(a)(2)",
     .basis = Basis::Seen,
     .words = "The distance from which on no more than 1.42 kW/m2 reaches a face at this height, "
              "rounded up to 10 mm, never inside the hot zone. At least: a flame needs more.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "heat.face sight.pizza_share",
     .finding = false},
    {.id = "heat.mouth",
     .title = "What the mouth emits",
     .unit = Unit::HeatFlux,
     .harm = Harm::Note,
     .measures = "what the mouth emits, at least",
     .against = "",
     .source = "gouffe1945",
     .clause = "leading term",
     .basis = Basis::SecondHand,
     .words = "Effective emissivity x 5.670374e-8 x (floor temperature + 273.15)^4. A cavity is "
              "blacker than its walls: e / (e + (1 - e) f), walls e = 0.9 (our judgement), f the "
              "mouth's share of the inside, which is taken as no higher than the mouth.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "heat.face sight.pizza_share",
     .finding = false},
    {.id = "heat.touch",
     .title = "Hot surfaces",
     .unit = Unit::None,
     .harm = Harm::Burn,
     .measures = "",
     .against = "",
     .source = "iso13732",
     .clause = "contact limits",
     .basis = Basis::Memory,
     .words =
         "The surface temperature that bare skin bears for a contact of this length, the lower "
         "end where a range is published. Metal, wood and textile as an insulation firm "
         "prints the table, the rest from memory. What this oven's door, face and chimney "
         "reach is not worked out: an infrared thermometer tells.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "-",
     .finding = false},
    {.id = "heat.not_computed",
     .title = "What no heat figure holds",
     .unit = Unit::None,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words =
         "The heat figures are those of the mouth at the floor's temperature. A flame at 600 C "
         "(1112 F) that rolls under the roof emits more by the fourth power of the absolute "
         "temperatures; sparks and hot air are not modelled. No clearance ever comes from a "
         "heat figure; the oven's own manual speaks.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "Flames, sparks and hot air are in no heat figure here[: a flame rolling under the "
                "roof gives {flame} times as much]. Stand where it feels easy, and step back "
                "before it does not.",
     .inputs = "heat.face"},
};

}  // namespace hs::rules
