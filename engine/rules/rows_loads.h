#pragma once
// Rules about what the cabinets carry, what may tip them, what people lift, and growth.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kLoadsRows[] = {
    {.id = "load.path",
     .title = "What carries the cabinets",
     .unit = Unit::None,
     .harm = Harm::Fall,
     .measures = "",
     .against = "",
     .source = "pvc_handbooks",
     .clause = "not load-bearing",
     .basis = Basis::Seen,
     .words = "Makers of cellular PVC board say that it carries no structural load. The weight of "
              "cabinets and oven goes down through treated lumber, levelling legs or masonry, and "
              "the PVC board stands before it as a face. A masonry oven stands on masonry or a "
              "slab, never on a cabinet.",
     .ok = "The weight goes down through {where}; the board round the base is a face and carries "
           "nothing.",
     .warn = "You chose {where} to carry the cabinets, but the drawings, the parts, the weights "
             "and the tipping still have treated lumber on shims there: leave that lumber out. "
             "How many supports there are, and on what plates they stand, whoever builds decides.",
     .fail = "The boards round the base are of cellular PVC and may carry nothing: put treated "
             "lumber, legs or masonry behind them.",
     .unknown = "",
     .inputs = ""},
    {.id = "load.feet",
     .title = "Where the oven's feet stand",
     .unit = Unit::Length,
     .harm = Harm::Fall,
     .measures = "the oven's feet, outside to outside",
     .against = "what they stand on, both ways from the oven's middle",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words =
         "Only where you say how far apart the feet are. The sheet of the block's top, a slab, "
         "the sheets of the oven's counter, or a pier must reach under the whole of every "
         "foot. Where it does not, sag and strength under the feet are not worked out.",
     .ok = "",
     .warn = "",
     .fail = "Outside to outside the oven's feet take {measured} {where}, and what they stand on "
             "has {limit}: a foot stands beside it. Measure the feet and the oven again, or widen "
             "what is under them.",
     .unknown = "",
     .inputs = "load.oven load.deck"},
    {.id = "load.deck",
     .title = "Sag under the oven's feet",
     .unit = Unit::Share,
     .harm = Harm::Nuisance,
     .measures = "sag under one foot, of span / 360",
     .against = "",
     .source = "awc_manual",
     .clause = "table M9.2-1, stiffness of plywood along its face grain",
     .basis = Basis::Seen,
     .words = "An oven on four feet may rock on two, so one foot bears half of it. It lies in the "
              "middle of the free span, or where you say that the feet are. A strip half as wide "
              "as the span bends as a beam; sheets lie loose on each other and share the load. "
              "L/360 is US practice for live load. Out of doors plywood is moist and has 0.85 of "
              "its stiffness (from memory).",
     .ok = "A foot of the oven bends the {where} by {measured} of what it may, span / 360.",
     .warn = "A foot of the oven bends the {where} by {measured} of what it may, span / 360: put "
             "stiffeners under it, or a plate under the feet.",
     .fail = "",
     .unknown = "",
     .inputs = "load.deck frame.sheet frame.bay"},
    {.id = "load.deck_years",
     .title = "Sag under the oven's feet after years",
     .unit = Unit::Share,
     .harm = Harm::Nuisance,
     .measures = "sag under one foot after years, of span / 240",
     .against = "",
     .source = "nds_stays",
     .clause = "section 3.5.2, creep of wood structural panels: twice the first sag",
     .basis = Basis::Memory,
     .words =
         "The oven stays where it is, and wood goes on giving way: twice the first sag. L/240 is "
         "US practice for all of a load. An oven that stands level at first may not after some "
         "winters: look once a year, and shim its feet.",
     .ok =
         "After years the oven's feet bend the {where} by {measured} of what they may, span / 240.",
     .warn = "After years the oven's feet bend the {where} by {measured} of what they may, span / "
             "240: put stiffeners under it, or a plate under the feet.",
     .fail = "",
     .unknown = "",
     .inputs = "load.deck frame.sheet frame.bay"},
    {.id = "load.deck_strength",
     .title = "Strength under the oven's feet",
     .unit = Unit::Share,
     .harm = Harm::Fall,
     .measures = "bending moment under one foot, of what the sheets may bear",
     .against = "",
     .source = "awc_manual",
     .clause = "table M9.2-1, strength; other ratings than 48/24 from memory",
     .basis = Basis::Memory,
     .words = "The same foot on the same strip as for its sag, face grain along the span. Moist "
              "plywood bears 0.75 of it, and 0.9 of that a load that stays (both from memory).",
     .ok = "A foot of the oven asks {measured} of what the {where} may bear.",
     .warn = "",
     .fail = "A foot of the oven asks {measured} of what the {where} may bear: more sheets, "
             "stiffeners, or a plate under the feet.",
     .unknown = "",
     .inputs = "load.deck_strength frame.sheet frame.bay"},
    {.id = "load.tip",
     .title = "Tipping with doors and drawers open",
     .unit = Unit::Factor,
     .harm = Harm::Fall,
     .measures = "what holds it over what tips it",
     .against = "factor of 1.5, common practice",
     .source = "geometry",
     .clause = "statics",
     .basis = Basis::Computed,
     .words = "Each run by itself on its carrying boards, every door at a right angle and every "
              "drawer out as far as it is deep, with what lies in it. Moments about the edge of "
              "what it stands on: the weight inside of it over the weight outside. Loose pavers "
              "hold no anchor that may be counted on.",
     .ok = "With all doors and drawers open the {where} holds by {measured}; {limit} is wanted.",
     .warn = "With all doors and drawers open the {where} holds by {measured} where {limit} is "
             "wanted: its {hold} must bear what the table says.",
     .fail = "With all doors and drawers open the {where} holds by only {measured}; {limit} is "
             "wanted. Tie it to a wall.",
     .unknown = "With all doors and drawers open the {where} holds by {measured}, and {limit} is "
                "wanted; nobody has said what holds it. Tie it to a wall.",
     .inputs = "load.tip survey.anchor frame.bay"},
    {.id = "load.child",
     .title = "A child on a door or drawer",
     .unit = Unit::Factor,
     .harm = Harm::Fall,
     .measures = "what holds it over what tips it",
     .against = "factor of 1.5, common practice",
     .source = "f2057",
     .clause = "test load of 60 lb (27 kg)",
     .basis = Basis::SecondHand,
     .words = "60 lb (27 kg) on the outermost edge of what is open, everything open; without doors "
              "or drawers on the counter's front edge. The standard is for clothes chests indoors: "
              "only its load is borrowed.",
     .ok = "With a child on what is open the {where} holds by {measured}; {limit} is wanted.",
     .warn = "With a child on what is open the {where} holds by {measured} where {limit} is "
             "wanted: its {hold} must bear what the table says.",
     .fail = "With a child on what is open the {where} holds by only {measured}; {limit} is "
             "wanted. Tie it to a wall.",
     .unknown = "With a child on what is open the {where} holds by {measured}, and {limit} is "
                "wanted; nobody has said what holds it. Tie it to a wall.",
     .inputs = "load.child survey.anchor frame.bay"},
    {.id = "load.pull",
     .title = "A pull at the top",
     .unit = Unit::Factor,
     .harm = Harm::Fall,
     .measures = "what holds it over what tips it",
     .against = "factor of 1.5, common practice",
     .source = "judgement",
     .clause = "50 lb (222 N) at the counter's edge",
     .basis = Basis::Judgement,
     .words = "50 lb (222 N) level at the counter's top, to the front: somebody who stumbles and "
              "holds on.",
     .ok = "Against a pull at its top the {where} holds by {measured}; {limit} is wanted.",
     .warn = "Against a pull at its top the {where} holds by {measured} where {limit} is wanted: "
             "its {hold} must bear what the table says.",
     .fail = "Against a pull at its top the {where} holds by only {measured}; {limit} is wanted. "
             "Tie it to a wall.",
     .unknown = "Against a pull at its top the {where} holds by {measured}, and {limit} is wanted; "
                "nobody has said what holds it. Tie it to a wall.",
     .inputs = "load.pull survey.anchor"},
    {.id = "load.wind",
     .title = "Wind on the cabinets",
     .unit = Unit::Factor,
     .harm = Harm::Fall,
     .measures = "what holds it over what tips it, in the strongest gust",
     .against = "factor of 1.5, common practice",
     .source = "asce7",
     .clause = "26.10-1; exposure and force coefficient from memory",
     .basis = Basis::Memory,
     .words = "0.613 x 0.85 x 0.85 x gust squared in N/m2 (open country, up to 15 ft, no hill), "
              "times 1.3 for a box, on the whole front or side, oven included. A cover catches far "
              "more wind and is not in it: footings and covers are for an engineer.",
     .ok = "In the strongest gust the {where} holds by {measured}; {limit} is wanted.",
     .warn = "In the strongest gust the {where} holds by {measured} where {limit} is wanted: its "
             "anchors must bear what the table says.",
     .fail = "In the strongest gust the {where} holds by only {measured}; {limit} is wanted. "
             "Anchor it, or take the oven in.",
     .unknown = "How hard the wind blows there at worst is not known.",
     .inputs = "load.wind survey.anchor"},
    {.id = "load.oven",
     .title = "Wind on the oven",
     .unit = Unit::Factor,
     .harm = Harm::Fall,
     .measures = "what holds it over what tips it, in the strongest gust",
     .against = "factor of 1.5, common practice",
     .source = "asce7",
     .clause = "26.10-1; exposure and force coefficient from memory",
     .basis = Basis::Memory,
     .words = "As for the cabinets, on the oven alone, which stands on its own feet and is held by "
              "nothing. Its weight is taken at half its height.",
     .ok = "In the strongest gust the oven stays on its feet by {measured}; {limit} is wanted.",
     .warn = "In the strongest gust the oven stays on its feet by {measured}, and {limit} is "
             "wanted: strap it to the counter as its manual allows, or take it in.",
     .fail = "",
     .unknown = "Whether wind tips the oven off its feet is not known: say how hard the gusts are "
                "there.",
     .inputs = "load.oven load.wind"},
    {.id = "load.pressure",
     .title = "Pressure on the ground",
     .unit = Unit::Share,
     .harm = Harm::Nuisance,
     .measures = "pressure under the most loaded support, of 1500 lb/ft2 (72 kPa)",
     .against = "",
     .source = "irc",
     .clause = "table R401.4.1, clay or silt; from memory",
     .basis = Basis::Memory,
     .words = "Shims every 400 mm (16 in) under the carrying boards, each bearing up to twice its "
              "share, on one small paver of 200 x 100 mm; under a masonry oven its pier at "
              "1900 kg/m3. What is put on a counter is not in it, and neither is frost.",
     .ok = "Under the {where} the ground bears {measured} of what it is taken to bear.",
     .warn = "Under the {where} the ground is asked for {measured} of what it is taken to bear: "
             "a slab, or wider pads under the supports.",
     .fail = "",
     .unknown = "What the ground is asked for under {where} is not known: whoever builds decides "
                "how many supports there are and on what they stand.|A deck bears what its joists "
                "bear: ask whoever built it, or an engineer, before "
                "the oven stands on it.",
     .inputs = "survey.anchor"},
    {.id = "load.lift",
     .title = "What people lift",
     .unit = Unit::Mass,
     .harm = Harm::Strain,
     .measures = "heaviest piece",
     .against = "what one person lifts",
     .source = "niosh",
     .clause = "load constant, 23 kg; for two people two thirds of both (HSE)",
     .basis = Basis::Memory,
     .words = "23 kg (51 lb) close to the body, from knee height to waist height, for most adults; "
              "two people together 31 kg (68 lb). Farther out, lower or higher it is less.",
     .ok = "The heaviest piece to lift is {where}, {measured}: one person lifts it.",
     .warn = "The heaviest piece to lift is {where}, {measured}; one person lifts {limit}, two "
             "people 31 kg (68 lb). Above that more hands, or a cart and a ramp.",
     .fail = "",
     .unknown = "",
     .inputs = "oven.masonry_base frame.sheet"},
    {.id = "load.growth_base",
     .title = "Base boards over the year",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "gaps that the longest base board needs together",
     .against = "",
     .source = "pvc_growth",
     .clause = "",
     .basis = Basis::Seen,
     .words = "Length times 0.0000576 for each degree C (3.2e-5 for each F; 2.7e-5 to 3.5e-5 "
              "elsewhere) from the day it is built to the hottest day. Screwed and glued boards "
              "move less than free ones. Fasten within 2 in (50 mm) of the ends; screws at the end "
              "in slots.",
     .ok = "Leave {measured} at the ends of the longest base board together when it is put up. "
           "Parts and base profiles are drawn without it: each board that meets another one at "
           "its right end, seen from outside, is cut shorter there when it is fitted.",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = ""},
    {.id = "load.growth_fronts",
     .title = "Doors over the year",
     .unit = Unit::Share,
     .harm = Harm::Nuisance,
     .measures = "growth of the largest door or drawer front, of the gap that is left for it",
     .against = "",
     .source = "pvc_growth",
     .clause = "",
     .basis = Basis::Seen,
     .words = "As for base boards. Two doors share one gap and each grows from its middle.",
     .ok = "By the hottest day the largest front has grown into {measured} of its gap.",
     .warn = "By the hottest day the largest front has grown into {measured} of its gap: doors "
             "will bind. Give more 'Gap', or smaller doors.",
     .fail = "",
     .unknown = "",
     .inputs = "load.growth_fronts frame.fronts"},
    {.id = "load.growth_metal",
     .title = "Metal top over the year",
     .unit = Unit::Share,
     .harm = Harm::Nuisance,
     .measures = "movement of one end of the longest top, of the fit that is left for it",
     .against = "",
     .source = "steel_sheets",
     .clause = "17.3e-6 for each degree C, 304",
     .basis = Basis::Seen,
     .words = "Length times 0.0000173 for each degree C, half of it at each end, against sheets "
              "that heat does not lengthen. Bed it on what stays soft, and fasten it in slots.",
     .ok = "Over the year each end of the longest metal top moves by {measured} of its fit.",
     .warn = "Over the year each end of the longest metal top moves by {measured} of its fit: give "
             "more 'Metal's fit', or part the top.",
     .fail = "",
     .unknown = "",
     .inputs = "load.growth_metal frame.metal"},
    {.id = "load.screws",
     .title = "Screws of a tie, and what their heads bear on",
     .unit = Unit::None,
     .harm = Harm::Fall,
     .measures = "",
     .against = "",
     .source = "nds",
     .clause = "withdrawal, 2850 G2 D for each inch",
     .basis = Basis::Seen,
     .words = "A #10 screw with 1 1/2 in of thread in a wall's framing of spruce (G 0.42, from "
              "memory) may be counted on for 143 lb. Through a cleat in the cabinet's back, never "
              "through cellular PVC or into siding alone. A washer spreads its head on plywood, "
              "which bears 360 lb/in2 on its face (from memory); soft board bears nothing that is "
              "published. In masonry the anchor maker's own table, 5 diameters from an edge and 10 "
              "apart. Locate cable, gas and water in wall and ground first.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "load.tip",
     .finding = false},
};

}  // namespace hs::rules
