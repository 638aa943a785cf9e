#pragma once
// Rules about the oven's height, the dough counter's height, and a household's balance of both.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kHeightRows[] = {
    {.id = "height.hand_ceiling",
     .title = "Highest oven floor for these hands",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "height of the oven's floor",
     .against = "elbow + 100 mm",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words =
         "Oven floor at most elbow + 100 mm (4 in): the hand is 50 mm above the floor to clear "
         "the sill and may be at most 150 mm above the elbow, or a hot peel is held in lifted "
         "arms. The lowest elbow at the oven sets a hard ceiling that no weight averages away.",
     .ok = "{cook}'s hands are at ease: the oven's floor is {spare} under the highest that suits "
           "them.|The oven's floor is just as high as {cook}'s hands allow.",
     .warn = "The oven's floor at {measured} is the highest that {cook}'s hands allow.",
     .fail = "Too high for {cook}'s hands: the oven's floor is at {measured}, and {limit} is the "
             "highest at which the peel stays under control.",
     .unknown = "",
     .inputs = "height.hand_ceiling"},
    {.id = "height.upper_arm",
     .title = "How far the upper arm is raised",
     .unit = Unit::Angle,
     .harm = Harm::Strain,
     .measures = "upper arm from hanging, hand over the oven's sill",
     .against = "20 degrees good, to 60 less than twice a minute",
     .source = "en1005_4",
     .clause = "upper arm",
     .basis = Basis::SecondHand,
     .words = "Upper arm 0 to 20 degrees from hanging is good; 20 to 60 when it is less than twice "
              "a minute; more is not acceptable. A bent elbow hides a lifted hand, so this stands "
              "beside the hand's height and not in its place.",
     .ok = "{cook}'s upper arm is {measured} from hanging straight at the oven: easy.",
     .warn = "{cook} raises the upper arm {measured} at the oven: fine less than twice a minute.",
     .fail = "{cook} raises the upper arm {measured} at the oven, past the {limit} that is "
             "acceptable at all.",
     .unknown = "",
     .inputs = "height.hand_ceiling reach.prep_depth"},
    {.id = "height.cover_ceiling",
     .title = "Highest oven under the cover",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "height of what the oven stands on",
     .against = "cover height - oven height - clearance asked for above",
     .source = "oven_manual",
     .clause = "clearance above",
     .basis = Basis::SecondHand,
     .words =
         "What the oven stands on may be at most the cover's height less the oven's own height "
         "less the free room that its manual, or a local rule, asks for above it.",
     .ok = "The cover leaves {margin} more than the oven needs above it.",
     .warn = "The cover leaves only {margin} more than the oven needs above it.",
     .fail = "Too high under the cover: the oven stands at {measured} and the room asked for above "
             "it allows {limit}.|The cover is too low for this oven at any height.",
     .unknown =
         "There is a cover, but nobody has said how much room this oven needs above it: find "
         "it in its manual.",
     .inputs = "height.cover_ceiling clearance.above"},
    {.id = "height.full_view",
     .title = "Lowest oven floor that shows it all",
     .unit = Unit::Length,
     .harm = Harm::Sight,
     .measures = "height of the oven's floor",
     .against = "lowest floor height that shows all that must be seen from the watching distance",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "On the middle line: floor height at least eye height - mouth height x (1 + distance "
              "/ depth of what must be seen). Where hands allow more than sight needs, sight sets "
              "the height, and going higher gains nothing.",
     .ok =
         "From {standoff} {cook} sees {all_of_target} with the oven's floor at {limit} or higher; "
         "it is at {measured}.",
     .warn = "To show {cook} {all_of_target} from {standoff} the oven's floor would have to be at "
             "{limit}, {margin} higher.",
     .fail = "No height shows {cook} {all_of_target} from {standoff}.",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "height.compromise",
     .title = "The household's balance",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "height of what the oven stands on",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "Under the hands' hard ceiling, the height with the least cost: what each cook does "
              "not see, hands off their easy range and dough off its band, weighted by share of "
              "cooking and by the weights, half the mean and half the worst-off cook.",
     .ok = "No single height is best for everyone; {measured} loses the household least.",
     .warn = "No single height is best for everyone; {measured} loses the household least, and "
             "{cook} most.|No single height is best for everyone; {measured} loses the household "
             "least.",
     .fail = "",
     .unknown = "",
     .inputs = "height.compromise height.hand_ceiling sight.pizza_share height.dough_band"},
    {.id = "height.given",
     .title = "Your own height",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "the height you gave",
     .against = "the height this page recommends",
     .source = "household",
     .clause = "",
     .basis = Basis::Judgement,
     .words =
         "The page judges the height that you gave and keeps its own recommendation beside it.",
     .ok = "The {where} is at your own {measured}[; {limit} is recommended].",
     .warn =
         "The {where} is at your own {measured}, {margin} {from_limit} the recommended {limit}.",
     .fail = "",
     .unknown = "",
     .inputs = "height.given"},
    {.id = "height.riser",
     .title = "The riser under the oven",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "height of what the oven stands on",
     .against = "height of the dough counter that the riser stands on",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "A riser stands on the dough counter and lifts the oven. It cannot lower it.",
     .ok = "The riser is {margin} high.",
     .warn = "",
     .fail = "The oven at {measured} would be {margin} below the counter at {limit} that its riser "
             "stands on: choose two levels, or lower the dough counter.",
     .unknown = "",
     .inputs = "height.given"},
    {.id = "height.dough_band",
     .title = "Dough counter for this cook",
     .unit = Unit::Length,
     .harm = Harm::Strain,
     .measures = "how far the dough counter is below the elbow",
     .against = "the nearer edge of the band, board included",
     .source = "bodyspace",
     .clause = "heavy work with downward force, which lists kneading",
     .basis = Basis::SecondHand,
     .words = "Dough is worked 150 to 250 mm (6 to 10 in) below the elbow: where the bands for "
              "heavy work of Pheasant and Haslegrave (100 to 250), Grandjean and AUVA (150 to 400) "
              "and CCOHS (200 to 400) overlap or nearly. The counter is lower by the board.",
     .ok = "The dough counter at {counter} suits {cook}: {measured} below the elbow.",
     .warn = "The dough counter at {counter} is {margin} {too} for {cook}[; {band} is right].",
     .fail = "The dough counter at {counter} is {margin} {too} for {cook}: not for a whole batch[; "
             "{band} is right].",
     .unknown = "",
     .inputs = "height.dough_band"},
    {.id = "height.light_band",
     .title = "Counter for topping and light work",
     .unit = Unit::Length,
     .harm = Harm::Strain,
     .measures = "how far the counter is below the elbow",
     .against = "the nearer edge of the band, board included",
     .source = "bodyspace",
     .clause = "light work",
     .basis = Basis::SecondHand,
     .words = "Light work such as topping is done 50 to 100 mm (2 to 4 in) below the elbow "
              "(Pheasant and Haslegrave, CCOHS, AUVA). Dough wants it lower; a board under the "
              "topping makes up the difference.",
     .ok = "The counter at {counter} suits {cook} for topping.",
     .warn = "For topping, the counter at {counter} is {margin} {too} for {cook}.",
     .fail = "",
     .unknown = "",
     .inputs = "height.dough_band"},
    {.id = "height.kitchen_counter",
     .title = "Beside an ordinary kitchen counter",
     .unit = Unit::Share,
     .harm = Harm::Note,
     .measures = "share of the pizza that the worst-placed cook sees with the oven on a 914 mm (36 "
                 "in) counter",
     .against = "all of it, taken as 99.9 %",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "A kitchen counter of 914 mm (36 in) hides the back of a low-mouthed oven from a "
              "standing adult. Common practice says so; the share is computed for this oven and "
              "this cook.",
     .ok = "On an ordinary kitchen counter, 36 in (914 mm), everyone at this oven would see all of "
           "the pizza.",
     .warn = "On an ordinary kitchen counter, 36 in (914 mm), the worst-placed cook would see "
             "{measured} of the pizza.",
     .fail = "",
     .unknown = "",
     .inputs = "sight.pizza_share"},
    {.id = "height.existing_counter",
     .title = "The cabinet that is already there",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "height of the existing cabinet",
     .against = "height of what the oven stands on, as in use",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The height in use less the cabinet's: a block under the oven when it is too "
              "low. When it is too high, a fixed platform for the cooks is the last resort.",
     .ok = "The cabinet at {measured} needs a block {block} high under the oven.|The cabinet at "
           "{measured} is right for the oven as it is.",
     .warn = "The cabinet at {measured} is {margin} too high for the oven: lower it, or as a last "
             "resort stand the cooks on a fixed platform of {margin}, full width and deep enough "
             "to step back on.",
     .fail = "The cabinet at {measured} is {margin} too high for the oven.",
     .unknown = "",
     .inputs = "height.existing_counter"},
    {.id = "height.platform",
     .title = "A platform to stand on",
     .unit = Unit::Length,
     .harm = Harm::Fall,
     .measures = "height of the platform",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "The height by which the oven's floor is over the ceiling of this cook's hands. A "
              "platform beside a hot oven is the last resort: fixed, the full width of the "
              "counter, and deep enough to step back on.",
     .ok = "{cook} needs no platform.",
     .warn = "At this height {cook} would need a platform {measured} high: the last resort, fixed, "
             "full width, and deep enough to step back on.",
     .fail = "At this height {cook} would need a platform {measured} high: too much of a step "
             "beside a hot oven. Lower the oven instead.",
     .unknown = "",
     .inputs = "height.hand_ceiling"},
    {.id = "height.fits_adults",
     .title = "Guests this station would suit",
     .unit = Unit::Share,
     .harm = Harm::Note,
     .measures = "share of adults in the survey",
     .against = "",
     .source = "ansur2",
     .clause = "raw file: stature, eye and elbow of each person",
     .basis = Basis::Seen,
     .words =
         "The share of the surveyed adults, in 25 mm (1 in) shoes, whose hands are under their "
         "ceiling at this oven, who see all that must be seen from at most two steps (800 mm) "
         "behind the recommended distance, and for whom the dough counter lies between their "
         "light-work and heavy-work bands. Men and women count half each: our judgement.",
     .ok = "{measured} of adults could work at this oven.",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "sight.pizza_share height.hand_ceiling",
     .finding = false},
    {.id = "height.sensitivity",
     .title = "How far the answer moves",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "change of the recommended height",
     .against = "",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "Each estimated height is moved by one standard error up and down and the whole "
              "answer worked out again. The largest move names the one measurement worth taking.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "cook.survey_adult cook.survey_child",
     .finding = false},
};

}  // namespace hs::rules
