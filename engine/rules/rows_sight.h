#pragma once
// Rules about what an eye sees of the oven's floor, and the bending it takes.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kSightRows[] = {
    {.id = "sight.pizza_share",
     .title = "Pizza seen, standing upright",
     .unit = Unit::Share,
     .harm = Harm::Sight,
     .measures = "share of the pizza seen, upright at the watching distance",
     .against = "all of it, taken as 99.9 %; below half is a failure",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words =
         "A point of the oven's floor is seen when the straight line from the eye to it passes "
         "through the mouth and under whatever sticks out above it. All of the pizza should "
         "show from the watching distance; less than half of it is too little to bake by.",
     .ok = "{cook} sees all of the pizza from {standoff}.",
     .warn = "{cook} sees {measured} of the pizza from {standoff}"
             "[; {steps} to {full_view} shows {all_of}].",
     .fail = "{cook} sees only {measured} of the pizza from {standoff}"
             "[; {steps} to {full_view} shows {all_of}].",
     .unknown = "",
     .inputs = ""},
    {.id = "sight.working_share",
     .title = "Pizza seen, peel in hand",
     .unit = Unit::Share,
     .harm = Harm::Sight,
     .measures = "share of the pizza seen, upright at the working distance",
     .against = "all of it, taken as 99.9 %",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "The same lines of sight from nearer, peel in hand. Nearer always hides more of the "
              "back: what is missed here is looked at from a step back, so this is a caution and "
              "never a failure.",
     .ok = "Even with the peel in hand, {working} away, {cook} sees all of the pizza.",
     .warn = "With the peel in hand, {working} away, {cook} sees {measured} of the pizza: look "
             "from a step back between turns.",
     .fail = "",
     .unknown = "",
     .inputs = "sight.pizza_share sight.working_share"},
    {.id = "sight.far_crust",
     .title = "Far rim seen",
     .unit = Unit::None,
     .harm = Harm::Sight,
     .measures = "",
     .against = "",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The top of the risen far rim is seen when the line from the eye to it passes under "
              "the mouth's top edge.",
     .ok = "{cook} sees the top of the far rim from {standoff}.",
     .warn = "From {standoff} the mouth's top edge hides the top of the far rim from {cook}"
             "[; {full_view} away shows it].",
     .fail = "",
     .unknown = "",
     .inputs = "sight.pizza_share sight.far_crust"},
    {.id = "sight.edge_on",
     .title = "Far edge seen edge-on",
     .unit = Unit::Angle,
     .harm = Harm::Sight,
     .measures = "angle between the line of sight and the floor at the far edge",
     .against = "8 degrees",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "A surface looked at along itself shows little, even where nothing hides it. Below 8 "
              "degrees to the floor the far edge counts as seen but is said to be edge-on.",
     .ok = "{cook} looks onto the far edge at {measured} to the floor.",
     .warn = "{cook} looks along the far edge at only {measured} to the floor: it is in view, but "
             "edge-on.",
     .fail = "",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "sight.full_view",
     .title = "Where to stand to see it all",
     .unit = Unit::Distance,
     .harm = Harm::Sight,
     .measures = "nearest distance, eye to mouth, from which all that must be seen is seen",
     .against = "the watching distance",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words =
         "On the middle line all is seen when the eye's distance is at least the depth of what "
         "must be seen times (eye height over the floor / mouth height - 1). The sides of the "
         "mouth and an arch ask for more. Stepping back comes first: it costs nothing.",
     .ok = "{cook} sees {all_of_target} from {measured} or further.",
     .warn = "{cook} sees {all_of_target} only from {measured} back, {margin} further than the "
             "watching distance.",
     .fail = "At this height {cook} sees {all_of_target} from nowhere in front of the oven.",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "sight.stoop",
     .title = "Least bending that shows it",
     .unit = Unit::Angle,
     .harm = Harm::Strain,
     .measures = "trunk forward from upright, at the watching distance",
     .against = "20 degrees good, to 60 for a short time",
     .source = "iso11226",
     .clause = "trunk inclination",
     .basis = Basis::SecondHand,
     .words =
         "When stepping back is not possible: knees first, then a bend at the hips, feet where "
         "they are, the face never within 450 mm (17 3/4 in) of the mouth (our judgement). "
         "Trunk 0 to 20 degrees is good, 20 to 60 for a short time, more is not acceptable.",
     .ok = "Without stepping back, {cook} sees {all_of_target} with {bend}.",
     .warn = "Without stepping back, {cook} must bend for it: {bend}. Good for a glance, not for a "
             "bake[; {full_view} back needs no bending].|Bending does not help: no stoop that "
             "keeps the "
             "face out of the heat shows {cook} {all_of_target}[. Step back to {full_view}].",
     .fail = "Bending does not help: no stoop that keeps the face out of the heat shows {cook} "
             "{all_of_target}[. Step back to {full_view}].",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "sight.neck",
     .title = "Neck in the least stoop",
     .unit = Unit::Angle,
     .harm = Harm::Strain,
     .measures = "head over trunk in the least stoop; negative: tilted back",
     .against = "0 to 25 degrees",
     .source = "iso11226",
     .clause = "neck flexion",
     .basis = Basis::SecondHand,
     .words = "Head bent 0 to 25 degrees over the trunk is good; further, or tilted back, is not. "
              "The eyes are taken to look up to 40 degrees down by themselves (EN 1005-4).",
     .ok = "In that stoop {cook}'s neck stays easy.",
     .warn = "In that stoop {cook}'s neck is not easy: step back instead.",
     .fail = "",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "sight.gaze",
     .title = "How steeply the cook looks down",
     .unit = Unit::Angle,
     .harm = Harm::Strain,
     .measures = "steepest line of sight below the horizontal",
     .against = "40 degrees",
     .source = "en1005_4",
     .clause = "line of sight",
     .basis = Basis::SecondHand,
     .words = "A line of sight from level to 40 degrees down is easy to hold. Steeper is for short "
              "looks, less than twice a minute; above level is not for holding at all.",
     .ok = "{cook} looks down {measured} at the steepest: easy to hold.",
     .warn = "{cook} looks down {measured} at the near edge; past {limit} it is for short looks.",
     .fail = "{cook} would have to look up to see in: not a posture to hold.",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "sight.bending_hides",
     .title = "Bending at the hips hides more",
     .unit = Unit::None,
     .harm = Harm::Sight,
     .measures = "",
     .against = "",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "A bend at the hips lowers the eye and brings it nearer the mouth. At 20 degrees it "
              "drops about 43 mm and comes forward about 243 mm (stature 1750 mm), and being "
              "nearer can hide more than being lower shows.",
     .ok = "A small bend at the hips shows {cook} more, not less.",
     .warn = "Leaning in hides more from {cook}: the eye comes nearer the mouth faster than it "
             "drops. Step back instead.",
     .fail = "",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "sight.cold_trial",
     .title = "The cold trial",
     .unit = Unit::Length,
     .harm = Harm::Sight,
     .measures = "farthest tape mark seen in the cold oven",
     .against = "the mark that this page expects",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The farthest point that the sight lines reach on the middle line, against the mark "
              "read off a tape. The input that explains the gap with the fewest of its own "
              "standard errors is the one most likely off.",
     .ok = "In the cold trial {cook} saw the {measured} mark; {limit} was expected. They agree.",
     .warn =
         "In the cold trial {cook} saw the {measured} mark, {margin} {farther} than the {limit} "
         "expected[. Most likely off: {likely}][; {corrected} would explain it][; {unexplained}].",
     .fail = "In the cold trial {cook} saw the {measured} mark, but nothing should have been seen "
             "from there: check who looked, from where, and the sizes of the oven.",
     .unknown = "Not known from what height the {measured} mark was seen: type the height of the "
                "trial.|Not "
                "tried yet. Block the cold oven up to this height, lay a tape on its floor, and "
                "type the farthest mark that shows.",
     .inputs = "sight.cold_trial sight.pizza_share"},
    {.id = "sight.floor_above_eye",
     .title = "Oven floor below the eye",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "height of the oven's floor",
     .against = "height of the eye",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "A floor at or above the eye cannot be looked onto at all.",
     .ok = "The oven's floor is {margin} below {cook}'s eye.",
     .warn = "The oven's floor at {measured} is close under {cook}'s eye at {limit}: little shows.",
     .fail = "The oven's floor at {measured} is not below {cook}'s eye at {limit}: no part of it "
             "can be seen.",
     .unknown = "",
     .inputs = "sight.pizza_share height.hand_ceiling"},
};

}  // namespace hs::rules
