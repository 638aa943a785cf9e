#pragma once
// Rules about rain, drips, ground water, wind and smoke.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kWeatherRows[] = {
    {.id = "weather.rain_counter",
     .title = "Rain on the counter",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "depth of counter that rain reaches, from its front edge",
     .against = "none of it",
     .source = "gunn_kinzer1949",
     .clause = "table 2, drops of 2 mm",
     .basis = Basis::SecondHand,
     .words = "Rain comes in under the cover's edge by the height of the edge above the counter, "
              "times the wind, over the drops' fall speed (6.49 m/s for 2 mm, moderate rain), less "
              "what the edge is in front of the counter. Wind straight at the front; gusts, "
              "drizzle and splashes come farther.",
     .ok = "In that wind the cover keeps rain off the counter.",
     .warn = "Rain reaches the front {measured} of the counter.|Nothing keeps rain off the "
             "counter.",
     .fail = "",
     .unknown = "How far rain comes in on the counter is not known: say how the cover reaches over "
                "it and how the wind blows in rain.",
     .inputs = "weather.rain_counter clearance.cover height.cover_ceiling"},
    {.id = "weather.rain_face",
     .title = "Rain on the cabinet's face",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "how far down the face stays dry, from the counter's top",
     .against = "the whole face, to the toe space",
     .source = "gunn_kinzer1949",
     .clause = "table 2, drops of 2 mm",
     .basis = Basis::SecondHand,
     .words = "Below an overhang a face stays dry for the overhang times the drops' fall speed "
              "over the wind; the counter's own edge and the cover's each keep off what they can. "
              "The face ends 100 mm (4 in) above the ground, a usual toe space. Doors and hinges "
              "below that line want a finish and fittings for rain.",
     .ok = "In that wind all of the cabinet's face stays dry.",
     .warn = "In that wind the cabinet's face stays dry for {measured} below the counter's top; "
             "below that rain beats on doors and joints.",
     .fail = "",
     .unknown = "How far down the cabinet's face stays dry is not known: say how the wind blows in "
                "rain.",
     .inputs = "weather.rain_face weather.rain_counter reach.nearest_standoff"},
    {.id = "weather.drop_air",
     .title = "Size of drops in the air",
     .unit = Unit::None,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "best1950",
     .clause = "his law's middle",
     .basis = Basis::Computed,
     .words = "Half of the water in the air is in drops larger than 1.105 x rain^0.232 mm, rain in "
              "mm an hour.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "-",
     .finding = false},
    {.id = "weather.drop_landing",
     .title = "Size of drops that land",
     .unit = Unit::None,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "laws_parsons1943",
     .clause = "median drop",
     .basis = Basis::SecondHand,
     .words = "Half of the water that lands is in drops larger than 1.24 x rain^0.182 mm, rain in "
              "mm an hour: large drops fall faster, so more of them land.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "-",
     .finding = false},
    {.id = "weather.driving_rain",
     .title = "Rain driven onto an upright face",
     .unit = Unit::None,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "iso15927_3",
     .clause = "Lacy's factor, in the open",
     .basis = Basis::SecondHand,
     .words = "0.222 s/m x wind x rain, straight at the face and with nothing before it. Half way "
              "up a sheltered front a third of that.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "weather.rain_face",
     .finding = false},
    {.id = "weather.drip",
     .title = "Drip edge of the counter",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "overhang of the counter",
     .against = "1 in (25 mm), with a groove underneath",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "Water runs back along a flat underside. An overhang of at least 1 in (25 mm) with a "
              "groove under it, or a turned-down edge, lets it fall clear of doors and face.",
     .ok = "Water drips clear of the cabinet's face.",
     .warn = "Water runs back under the counter onto the cabinet's face: it overhangs {measured}; "
             "{limit} with a groove underneath is usual.",
     .fail = "",
     .unknown = "Nobody has said whether there is a groove under the counter's edge; without one "
                "water runs back onto the cabinet's face.",
     .inputs = "weather.drip reach.nearest_standoff"},
    {.id = "weather.drainage",
     .title = "Fall of the ground",
     .unit = Unit::Share,
     .harm = Harm::Fall,
     .measures = "fall of the ground away from the house",
     .against = "2 % for a hard surface, 5 % for bare ground, within 10 ft of a house",
     .source = "irc",
     .clause = "R401.3 and its exception",
     .basis = Basis::SecondHand,
     .words = "Within 10 ft (3 m) of a house hard surfaces fall at least 2 %, bare ground 6 in in "
              "the first 10 ft (5 %), away from it. 1/4 in per ft is 2.083 %. Standing water is "
              "slippery where hot things are carried, and rots a cabinet's foot.",
     .ok = "The ground falls {measured}; {limit} is asked for near a house.",
     .warn =
         "The ground falls {measured}: not enough; {limit} is asked for near a house. Water stands "
         "where hot things are carried.",
     .fail = "The ground falls towards the house: water goes into it.",
     .unknown =
         "What the ground is and how it falls must both be said, and one is not: lay a level "
         "and a tape on it.",
     .inputs = "weather.drainage"},
    {.id = "weather.wind_mouth",
     .title = "Wind and the mouth",
     .unit = Unit::None,
     .harm = Harm::Burn,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "The direction only: wind within 45 degrees of straight into the mouth drives the "
              "flame back, then out, and blows out gas. Walls, roofs and people turn the wind "
              "round; no strength is worked out.",
     .ok = "The usual wind does not blow into the mouth.",
     .warn = "The usual wind blows into the mouth: flames come out of it in gusts, and a gas flame "
             "can blow out. Turn the station, or shelter it.",
     .fail = "",
     .unknown = "Nobody has said where the wind usually comes from; into the mouth it drives "
                "flames out.",
     .inputs = "weather.wind_mouth"},
    {.id = "weather.smoke",
     .title = "Smoke and the cooks",
     .unit = Unit::None,
     .harm = Harm::Strain,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "The direction only: smoke leaves with the wind. From behind the oven it drifts to "
              "whoever stands at the mouth. Eddies round a wall or the cook do as they like; no "
              "amount is worked out.",
     .ok = "The usual wind carries smoke away from the mouth's cooks.",
     .warn = "The usual wind carries smoke and hot air from the oven towards whoever stands at the "
             "mouth.",
     .fail = "",
     .unknown = "Nobody has said where the wind usually comes from; from behind the oven it "
                "carries smoke to the cooks.",
     .inputs = "weather.wind_mouth"},
};

}  // namespace hs::rules
