#pragma once
// Rules about arms over counters, peels, aisles and seated cooks.

#include "engine/rules/rule_row.h"

namespace hs::rules {

// What knees need beside height; nobody is asked for these two, so each sentence says them.
#define KNEE_DEPTH_AND_WIDTH                                                                      \
  "need depth, 8 in (205 mm) at 27 in (685 mm) above the ground and 11 in (280 mm) at 9 in (230 " \
  "mm), and 30 in (760 mm) of width (ADA 2010, 306.3.2 to 306.3.5): measure both."

inline constexpr RuleRow kReachRows[] = {
    {.id = "reach.nearest_standoff",
     .title = "How near a body can stand",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "the distance asked for, eye to mouth",
     .against = "the nearest that the counter allows",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The belly stops 25 mm (1 in, our judgement) short of the counter's front edge and "
              "the toes at the kick board; the mouth is set back behind that edge.",
     .ok = "{cook} can stand {measured} from the mouth; the counter allows {limit}.",
     .warn =
         "{cook} can stand {measured} from the mouth only by leaning on the counter: {limit} is "
         "the nearest upright.",
     .fail =
         "{cook} cannot stand {measured} from the mouth: the counter stops the body at {limit}.",
     .unknown = "",
     .inputs = "reach.nearest_standoff"},
    {.id = "reach.feet_line",
     .title = "Where the toes go",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "toe tips in front of the counter's edge",
     .against = "",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The watching distance less the mouth's setback behind the counter's edge less how "
              "far the toes are in front of the eye. A line of tape there puts every cook in the "
              "right place.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "sight.full_view reach.nearest_standoff",
     .finding = false},
    {.id = "reach.prep_depth",
     .title = "Counter depth in reach",
     .unit = Unit::Length,
     .harm = Harm::Strain,
     .measures = "depth of the dough counter",
     .against = "how deep this cook reaches",
     .source = "geometry",
     .clause = "reach over a surface; trunk to 20 degrees, ISO 11226 second-hand",
     .basis = Basis::Computed,
     .words = "Square root of (arm to grip squared - (shoulder - surface) squared), less the body, "
              "with the trunk leaning at most 20 degrees. The near part is what the forearm "
              "sweeps with the elbow at the side.",
     .ok = "{cook} reaches all of the dough counter; {limit} deep would be in reach.",
     .warn = "The back {margin} of the dough counter is out of {cook}'s reach: keep it for what is "
             "seldom used.",
     .fail = "Most of the dough counter is out of {cook}'s reach: {limit} of {measured} can be "
             "used.",
     .unknown = "",
     .inputs = "reach.prep_depth"},
    {.id = "reach.prep_area",
     .title = "Room to prepare",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "width or depth of the dough counter",
     .against = "36 in wide, 24 in deep (915 x 610 mm)",
     .source = "us_kitchen",
     .clause = "guideline 12",
     .basis = Basis::Seen,
     .words = "A continuous area at least 36 in (915 mm) wide and 24 in (610 mm) deep.",
     .ok = "The dough counter is {measured} {where}; {limit} is advised.",
     .warn = "The dough counter is only {measured} {where}; {limit} is advised.",
     .fail = "",
     .unknown = "",
     .inputs = "reach.prep_area"},
    {.id = "reach.landing",
     .title = "Landing beside the oven",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "free counter on the peel hand's side",
     .against = "15 in (380 mm)",
     .source = "us_kitchen",
     .clause = "guideline 23",
     .basis = Basis::Seen,
     .words = "At least 15 in (380 mm) of free counter beside the oven, on the side of the hand "
              "that holds the peel, to set a hot pizza down; or across an aisle of at most 48 in "
              "(1220 mm) that nobody walks through.",
     .ok = "{cook} has {measured} of landing {where}; {limit} is advised.|{cook} sets a hot pizza "
           "down {where}.",
     .warn = "{cook} has only {measured} of landing {where} to set a hot pizza down; {limit} is "
             "advised.",
     .fail = "{cook} has nowhere {where} to set a hot pizza down; {limit} is advised.",
     .unknown = "Nobody has said how much free counter {cook} has {where} of the oven; {limit} is "
                "advised to set a hot pizza down.",
     .inputs = "reach.landing"},
    {.id = "reach.aisle",
     .title = "Room to pass behind",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "free ground in front of the counter",
     .against = "42 in for one cook, 48 in for more (1065, 1220 mm)",
     .source = "us_kitchen",
     .clause = "work aisle",
     .basis = Basis::SecondHand,
     .words = "A work aisle of at least 42 in (1065 mm) for one cook and 48 in (1220 mm) for more, "
              "from counter edge to what stands behind.",
     .ok = "There is {measured} behind the cook; {limit_about} is advised.",
     .warn = "There is only {measured} behind the cook; {limit_about} is advised.",
     .fail = "There is only {measured} behind the cook; {limit_about} is advised, and a hot peel "
             "needs it.",
     .unknown =
         "Nobody has said how much free ground there is behind the cook; {limit_about} is advised.",
     .inputs = "reach.aisle"},
    {.id = "reach.peel_room",
     .title = "Free ground to work the peel",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "free ground in front of the counter",
     .against = "1.5 x the oven's depth",
     .source = "trade_forum",
     .clause = "",
     .basis = Basis::Seen,
     .words = "Free ground in front of the oven of one and a half times its depth: the word of one "
              "expert, without data.",
     .ok = "The {measured} in front of the oven is room enough to work a peel.",
     .warn = "The {measured} in front of the oven is less than the {limit_about} that one expert "
             "advises for working a peel.",
     .fail = "",
     .unknown = "Nobody has said how much free ground there is to work the peel; one expert "
                "advises {limit_about}.",
     .inputs = "reach.peel_room"},
    {.id = "reach.peel_drawback",
     .title = "Room to draw the peel straight out",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "free ground in front of the counter",
     .against = "peel length less what stays over the counter",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "When the blade's tip is just out of the mouth, the whole peel is in front of it; "
              "less the mouth's setback, that much ground must be free.",
     .ok = "The peel comes straight out with {margin} to spare behind the cook.",
     .warn = "The peel does not come straight out: it needs {limit_about} and there is {measured}. "
             "Swing it aside, or use a shorter one.",
     .fail = "The peel does not come straight out: it needs {limit_about} and there is {measured}.",
     .unknown = "Nobody has said how much free ground there is; drawing the peel straight out "
                "needs {limit_about}.",
     .inputs = "reach.peel_room"},
    {.id = "reach.peel_fits",
     .title = "Peel through the mouth",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "width of the peel's blade",
     .against = "width of the mouth at the floor, less 20 mm of play (our judgement)",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The blade must be narrower than the mouth where it slides in, with 20 mm (3/4 in) "
              "of play for both sides together (our judgement).",
     .ok = "The peel slides through the mouth with {margin} to spare.",
     .warn = "The peel goes through the mouth with only {margin} to spare.",
     .fail = "The peel, {measured} wide, does not slide through the mouth: {limit} is the widest "
             "that does.",
     .unknown = "",
     .inputs = "reach.peel_fits"},
    {.id = "reach.pizza_fits",
     .title = "Pizza in the oven",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "width of the pizza",
     .against = "the least of the mouth's width and the floor's width and depth",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The pizza must be narrower than the mouth and than the oven's floor.",
     .ok = "A pizza of {measured} fits with {margin} to spare.",
     .warn = "A pizza of {measured} fits with only {margin} to spare.",
     .fail = "A pizza of {measured} does not fit: the oven takes {limit} at most.",
     .unknown = "",
     .inputs = "reach.pizza_fits"},
    {.id = "reach.seated_reach",
     .title = "Reach from a seat",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "height of the dough counter",
     .against = "1220 mm over a counter to 510 deep, 1120 over one to 635 deep",
     .source = "ada2010",
     .clause = "308.2.2",
     .basis = Basis::Seen,
     .words = "Forward reach over a counter up to 510 mm (20 in) deep ends at 1220 mm (48 in); up "
              "to 635 mm (25 in) deep at 1120 mm (44 in); deeper than that no reach is allowed.",
     .ok = "{cook} reaches over the dough counter from the seat.",
     .warn = "{cook} only just reaches over the dough counter from the seat.",
     .fail =
         "{cook} cannot reach over the dough counter at {measured} from the seat: reach ends at "
         "{limit_about}.|The dough counter is {measured} deep; past 25 in (635 mm) {cook} "
         "cannot reach over it from the seat.",
     .unknown = "",
     .inputs = "reach.seated_reach reach.nearest_standoff height.hand_ceiling"},
    {.id = "reach.knee_room",
     .title = "Knee room under the counter",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "free height under the dough counter",
     .against = "685 mm (27 in)",
     .source = "ada2010",
     .clause = "306.3",
     .basis = Basis::Seen,
     .words = "Free height of 685 mm (27 in), at least 205 mm (8 in) deep there and 280 mm (11 in) "
              "deep at 230 mm (9 in) above the ground, 760 mm (30 in) wide. Never more than is "
              "left under the counter's top as it is built: sheets, bed, metal, and the drip that "
              "its turned-down edge hangs below them. Measurements of wheelchair users say that "
              "even this is tight for most.",
     .ok = "{cook}'s knees have {measured} of height under {where}. They "
           "also " KNEE_DEPTH_AND_WIDTH
           "|{cook}'s knees have {measured} of height under the counter. They "
           "also " KNEE_DEPTH_AND_WIDTH,
     .warn = "",
     .fail = "{cook}'s knees do not fit: {measured} is free under {where}, and 27 in (685 mm) is "
             "the least. They also " KNEE_DEPTH_AND_WIDTH
             "|{cook}'s knees do not fit: {measured} is free under the counter, and 27 in (685 mm) "
             "is the least. They also " KNEE_DEPTH_AND_WIDTH,
     .unknown = "Nobody has said how high the free space under {cook}'s counter is; 27 in (685 mm) "
                "is the least. Knees also " KNEE_DEPTH_AND_WIDTH,
     .inputs = "reach.knee_room"},
    {.id = "reach.seated_counter",
     .title = "Counter for a seated cook",
     .unit = Unit::Length,
     .harm = Harm::Strain,
     .measures = "height of the dough counter",
     .against = "710 to 865 mm (28 to 34 in)",
     .source = "ada2010",
     .clause = "902.3",
     .basis = Basis::Seen,
     .words = "A work surface for a seated person is 710 to 865 mm (28 to 34 in) high.",
     .ok = "The dough counter at {measured} is within 28 to 34 in (710 to 865 mm) for {cook}, "
           "seated.",
     .warn = "The dough counter at {measured} is {margin} {too} for {cook}, seated; 28 to 34 in "
             "(710 to 865 mm) is asked for.",
     .fail = "The dough counter at {measured} is {margin} {too} for {cook}, seated; 28 to 34 in "
             "(710 to 865 mm) is asked for.",
     .unknown = "",
     .inputs = "reach.seated_reach reach.knee_room height.dough_band"},
};

#undef KNEE_DEPTH_AND_WIDTH

}  // namespace hs::rules
