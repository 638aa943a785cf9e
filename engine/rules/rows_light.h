#pragma once
// Rules about the light on the pizza, and on the counters beside the oven.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kLightRows[] = {
    {.id = "light.pizza",
     .title = "Light on the pizza",
     .unit = Unit::Lux,
     .harm = Harm::Sight,
     .measures = "light on the pizza, mean, its shadows counting as none",
     .against = "work with food",
     .source = "food_code",
     .clause = "6-303.11(C)",
     .basis = Basis::Seen,
     .words =
         "The lamp's lumens spread evenly over its beam, by the inverse-square cosine law at 19 "
         "points of the pizza, each with the shadow of the mouth's edge. 540 lx (50 "
         "foot-candles) where people work with food and knives; 300 lx is usual on a worktop "
         "at home (second-hand). Nothing shines back from the walls, so it is rather more. A "
         "fixed light that nobody holds: common practice, no source.",
     .ok = "The lamp puts {measured} on the pizza; {limit} is asked where people work with food.",
     .warn =
         "The lamp puts {measured} on the pizza, enough for a worktop at home; {limit} is asked "
         "where people work with food.",
     .fail = "The lamp puts only {measured} on the pizza; {limit} is asked where people work with "
             "food.",
     .unknown = "Nobody has said what lights the pizza after dark: a fixed lamp that nobody holds, "
                "outside the hot zone.",
     .inputs = "light.pizza light.neck sight.pizza_share"},
    {.id = "light.neck",
     .title = "Length of the lamp's neck",
     .unit = Unit::Length,
     .harm = Harm::Sight,
     .measures = "neck that the lamp's place needs",
     .against = "this lamp's neck",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "From where the neck is fixed straight to the head, and 15 % for its bend (our "
              "judgement). Heads are tried every 50 mm in front of the mouth: light on nine tenths "
              "of the pizza, out of every cook's eye, of the peel's way with 50 mm to spare, of "
              "the hot zone, and where no more than 1 kW/m2, the midday sun's heat, reaches them "
              "(all our judgement).",
     .ok = "The lamp's neck reaches: {measured} of {limit}.",
     .warn = "",
     .fail = "The lamp's neck must be {measured}, {margin} longer than this one.|With a neck of "
             "{limit} this lamp lights the pizza from nowhere that is cool and out of the way[: it "
             "needs {measured}]. Fix it elsewhere.",
     .unknown = "",
     .inputs = "light.pizza light.neck heat.face sight.pizza_share"},
    {.id = "light.head",
     .title = "Where the lamp's head is",
     .unit = Unit::None,
     .harm = Harm::Burn,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words =
         "Out of the hot zone and of more heat than the midday sun's, 1 kW/m2; out of the peel's "
         "way and every cook's eye; at least five times its own size from the pizza, where "
         "the inverse-square law holds (IES practice, second-hand).",
     .ok = "The lamp's head is cool enough, out of the way, and lights the pizza.",
     .warn = "",
     .fail = "The lamp's head is {where}: move it.",
     .unknown = "",
     .inputs = "light.head light.pizza heat.face sight.pizza_share"},
    {.id = "light.prep",
     .title = "Light on the dough counter",
     .unit = Unit::Lux,
     .harm = Harm::Sight,
     .measures = "light at the dough counter's end",
     .against = "work with food",
     .source = "food_code",
     .clause = "6-303.11(C)",
     .basis = Basis::Seen,
     .words =
         "A lamp over the middle of the dough counter, its lumens spread evenly over a cone of "
         "120 degrees (our judgement), at the counter's end, where it is darkest: candela x "
         "height / distance^3.",
     .ok = "The dough counter has {measured} at its end; {limit} is asked where people work with "
           "knives.",
     .warn = "The dough counter has {measured} at its end, enough at home; {limit} is asked where "
             "people work with knives.",
     .fail = "The dough counter has only {measured} at its end; {limit} is asked where people work "
             "with knives.",
     .unknown = "What lights the dough counter after dark is not known; {limit} is asked where "
                "people work with knives.",
     .inputs = "light.prep reach.prep_area"},
    {.id = "light.landing",
     .title = "Light on the landing",
     .unit = Unit::Lux,
     .harm = Harm::Sight,
     .measures = "light in the middle of a landing beside the dough counter",
     .against = "work with food",
     .source = "food_code",
     .clause = "6-303.11(C)",
     .basis = Basis::Seen,
     .words =
         "The same lamp, 191 mm (7 1/2 in) beyond the dough counter's end: the middle of a 15 in "
         "landing.",
     .ok = "The landing has {measured}; {limit} is asked where people cut and serve.",
     .warn = "The landing has {measured}, enough at home; {limit} is asked where people cut and "
             "serve.",
     .fail = "The landing has only {measured}; {limit} is asked where people cut and serve.",
     .unknown =
         "What lights the landing after dark is not known; {limit} is asked where people cut "
         "and serve.",
     .inputs = "light.prep reach.prep_area"},
};

}  // namespace hs::rules
