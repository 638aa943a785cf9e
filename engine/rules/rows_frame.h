#pragma once
// Rules about the cabinets: what they need to be built at all, and why each default is what it is.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kFrameRows[] = {
    {.id = "frame.top_height",
     .title = "Top of the built counter",
     .unit = Unit::Length,
     .harm = Harm::Strain,
     .measures = "top of the counter as it is built, above the ground at the cook's feet",
     .against = "the height in use",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "Base, box, sheets, bed and metal, each as measured where it is built, as drawn "
              "elsewhere. The base takes up what is left; once it stands the boxes do.",
     .ok = "The counter {where} lands at {measured}, as it should.",
     .warn = "The counter {where} lands at {measured}; {limit} is wanted. Change a piece that is "
             "not built yet.",
     .fail = "",
     .unknown = "",
     .inputs = "frame.top_height frame.base frame.box frame.metal"},
    {.id = "frame.base",
     .title = "Base under the cabinets",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "height left for the base",
     .against = "what it must be",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "A toe space is usually 3 1/2 to 4 in (90 to 100 mm) high. Boxes are kept to whole "
              "10 mm and the base takes what is left, so that the top lands. Boards of treated "
              "lumber on shims carry the boxes; the board round the base hides them and carries "
              "nothing: makers of cellular PVC say that theirs must not. No board is wider than a "
              "1x12 (11 1/4 in, 285.8 mm).",
     .ok = "The base is {measured} high.",
     .warn = "The base is {measured} high, and its boards are cut to the ground for {limit} above "
             "the feet: set 'Base height' of the ground to {measured}.",
     .fail = "Only {measured} is left for the base {where}, and {limit} is the least: give less "
             "'Shims', make what is measured or cut for the base higher, or raise the counter.",
     .unknown = "",
     .inputs = ""},
    {.id = "frame.base_high",
     .title = "Base too high for a board",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "height left for the base",
     .against = "the widest board, a 1x12",
     .source = "ps20",
     .clause = "size table, dry",
     .basis = Basis::SecondHand,
     .words = "The base takes what boxes and top leave of the counter's height, and a board hides "
              "it. No board is wider than a 1x12 (11 1/4 in, 285.8 mm).",
     .ok = "",
     .warn = "",
     .fail = "{measured} is left for the base {where}, and no board is wider than {limit}: make "
             "what is measured or cut for the base lower, or lower the counter.",
     .unknown = "",
     .inputs = "frame.base"},
    {.id = "frame.box_given",
     .title = "Cabinet height that was given",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "the height given for the boxes",
     .against = "the nearest whole 10 mm that leaves a base which can be made",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The counter's height less top and box is the base's. It is no lower than 'Base at "
              "least' and what carries needs, and no higher than the widest board, 285.8 mm.",
     .ok = "",
     .warn = "",
     .fail = "Boxes {measured} high {where} are {too} for the counter's height: set 'Cabinet "
             "height' to {limit}, or leave it out.",
     .unknown = "",
     .inputs = "frame.base height.given"},
    {.id = "frame.box",
     .title = "Height of the cabinets",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "height left for a box",
     .against = "the least that is a cabinet",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "The counter's height less base, sheets, bed and metal. Below 200 mm (8 in) nothing "
              "opens under it: that is a slab or a pier.",
     .ok = "",
     .warn = "",
     .fail = "Only {measured} is left for a cabinet {where}, and {limit} is the least: make the "
             "counter higher or the base lower, or build a pier.",
     .unknown = "",
     .inputs = "frame.box frame.base height.given"},
    {.id = "frame.depth",
     .title = "Depth of the cabinets",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "depth left for a box, or for its base",
     .against = "the least",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "The counter's depth less overhang, fronts and the metal's turned edge behind. The "
              "base lies behind the toe space and holds two boards with room to screw.",
     .ok = "",
     .warn = "",
     .fail = "Only {measured} of depth is left {where}, and {limit} is the least: a deeper "
             "counter, or less overhang or toe space.",
     .unknown = "",
     .inputs = "reach.prep_depth reach.nearest_standoff frame.fronts"},
    {.id = "frame.overhang",
     .title = "Overhang over the fronts",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "overhang of the counter",
     .against = "metal, its fit, and 3 mm of air before the fronts",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The metal's turned-down edge hangs before the fronts. It must clear them.",
     .ok = "",
     .warn = "",
     .fail = "The counter overhangs {measured}; {limit} is needed for the metal's turned-down "
             "edge: give more 'Overhang'.",
     .unknown = "",
     .inputs = "frame.metal reach.nearest_standoff"},
    {.id = "frame.bay",
     .title = "Bays",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "clear width of a bay",
     .against = "the least",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "A run is shared out into equal boxes no wider than you say. 600 mm (24 in): one "
              "person lifts the box, one door is no wider, two backs come from a sheet. 450 mm "
              "(18 in) under the oven: its feet are never far from a box's side. Under the oven "
              "the usual bay is open: air gets in, and nothing is stored in the heat. Below 150 "
              "mm (6 in) nothing fits.",
     .ok = "",
     .warn = "",
     .fail = "A bay {where} would be {measured} wide inside; {limit} is the least: give a larger "
             "'Widest bay' or a wider counter.",
     .unknown = "",
     .inputs = "frame.bay reach.prep_area"},
    {.id = "frame.fronts",
     .title = "Doors and fronts",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "height or width left for a door",
     .against = "the least",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "Overlay doors on bare boxes are the usual choice outdoors: they still shut when "
              "they have grown, and keep rain off the edges. 1/8 in (3 mm) between doors when "
              "painted. A face frame is of 1x2 boards (3/4 x 1 1/2 in dressed), doors lie 1/2 in "
              "over it. A door wider than 600 mm is two. Hinge cups: 35 mm across, 22.5 mm from "
              "the edge, 100 mm from the ends; a third hinge from 900 mm, a fourth from 1600. A "
              "single door hangs on the side away from the oven.",
     .ok = "",
     .warn = "",
     .fail = "A door or drawer front {where} would be {measured}; {limit} is the least: fewer "
             "drawers, a smaller 'Gap', or a taller cabinet.",
     .unknown = "",
     .inputs = ""},
    {.id = "frame.door_slot",
     .title = "Slot over doors",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "open slot between a front's upper edge and the top of its opening",
     .against = "the gap round inset doors; none over overlay doors",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "Doors and drawer fronts swing out under the metal's turned-down edge, so they end "
              "one 'Gap' below it. Where it hangs below the top of the opening, they end below "
              "that too, and rain and insects find the slot.",
     .ok = "",
     .warn = "Fronts {where} end {measured} below the top of their opening, under the metal's "
             "turned-down edge: a slot stays open. Give less 'Drip' or less 'Gap', or a thicker "
             "'Sheet' or wider 'Face frame's boards'.",
     .fail = "",
     .unknown = "",
     .inputs = "frame.metal frame.fronts frame.sheet"},
    {.id = "frame.bay_missing",
     .title = "A bay that is not there",
     .unit = Unit::None,
     .harm = Harm::Nuisance,
     .measures = "",
     .against = "",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The dough counter is shared out into bays no wider than 'Widest bay'; they are "
              "counted from the oven.",
     .ok = "",
     .warn = "You say what the {where} under the dough counter holds, and there is no {where}: it "
             "is left out. Choose another bay for it, or a smaller 'Widest bay'.",
     .fail = "",
     .unknown = "",
     .inputs = "frame.bay"},
    {.id = "frame.drawer",
     .title = "Drawers",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "room left for a drawer's box",
     .against = "the least",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "Side slides take 1/2 in (12.7 mm) each side, come in steps of 50 mm of length, and "
              "want 5 mm behind. A drawer's box is 40 mm lower than its front and at least 50 mm "
              "high, 100 mm wide and 250 mm deep. Where a face frame narrows the opening, strips "
              "ripped off a 1x board pack the slides out to its edge; a strip is 5 mm at the "
              "least, and the drawer as much narrower (our judgement).",
     .ok = "",
     .warn = "",
     .fail = "A drawer {where} would have {measured}; {limit} is the least: choose doors there.",
     .unknown = "",
     .inputs = ""},
    {.id = "frame.sheet",
     .title = "Parts and sheets",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "a part's size",
     .against = "a sheet of 4 x 8 ft (1219 x 2438 mm)",
     .source = "ps1",
     .clause = "table of thickness tolerances; sizes of panels",
     .basis = Basis::SecondHand,
     .words = "A panel sold as 23/32 may be 0.688 to 0.750 in (17.5 to 19.1 mm), one as 15/32 "
              "0.438 to 0.500 in (11.1 to 12.7 mm): measure yours. The defaults are 23/32 in (18.3 "
              "mm) and 15/32 in (11.9 mm). Counters longer than a sheet are joined over a box's "
              "side.",
     .ok = "",
     .warn = "",
     .fail = "A part {where} is {measured} one way, more than a sheet's {limit}: a smaller bay or "
             "a shallower counter.",
     .unknown = "",
     .inputs = "frame.sheet frame.bay reach.prep_depth"},
    {.id = "frame.lumber",
     .title = "Sizes of boards",
     .unit = Unit::None,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "ps20",
     .clause = "size table, dry",
     .basis = Basis::SecondHand,
     .words = "Dressed dry softwood: 1x is 3/4 in thick, 5/4 is 1, 2x is 1 1/2; 2 to 7 are 1/2 in "
              "narrower than their name, 8 to 12 3/4 in. Cellular PVC boards are sold to the same "
              "widths (from memory).",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "-",
     .finding = false},
    {.id = "frame.metal",
     .title = "Metal top",
     .unit = Unit::None,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "us_gauge",
     .clause = "16 gauge of stainless: 0.0625 in",
     .basis = Basis::Seen,
     .words =
         "A folded cap of 1.6 mm, 16 gauge to a tenth, over two sheets: the build-up under it is "
         "usually 1 1/2 in. "
         "It is made from the primed sheets as measured, larger by the fit on each "
         "turned-down side, and hangs past them by the drip. Where counters meet it is not "
         "turned down; 1 mm each side is left for a bead. Its edges are hemmed or deburred, its "
         "corners rounded: bare ones cut.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "",
     .finding = false},
    {.id = "frame.rough",
     .title = "Rough sizes",
     .unit = Unit::None,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words =
         "Sheet parts are first cut 1/8 in (3 mm) larger both ways, boards 25 mm (1 in) longer, "
         "then to size.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "",
     .finding = false},
    {.id = "frame.as_built",
     .title = "Measured when built",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "what was measured",
     .against = "what is drawn",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "A piece that came out other than drawn is measured and named; what follows is made "
              "to it. More than 25 mm (1 in) from the drawing is more often a slip of the tape: "
              "such a measure is left out.",
     .ok = "",
     .warn = "Of what you measured, {where}: look at its name.",
     .fail =
         "[Of what you measured, {where}: ]{measured} is given, and {limit} is drawn. More than "
         "1 in (25 mm) apart is taken for a slip of the tape, so it is left out and all is "
         "made as drawn. Measure again; if it came out so, change the drawing.",
     .unknown = "",
     .inputs = ""},
    {.id = "frame.as_built_fits",
     .title = "Measured, and not possible",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "what was measured",
     .against = "what is drawn",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "What follows a piece is made to its measure. Where that leaves no room for what "
              "must follow, the measure is left out, and all is made as drawn.",
     .ok = "",
     .warn = "",
     .fail = "Of what you measured, {where}: with {measured} where {limit} is drawn the rest "
             "cannot be built, so it is left out and all is made as drawn. Measure again; if it "
             "came out so, change the drawing.",
     .unknown = "",
     .inputs = "frame.as_built"},
    {.id = "frame.masonry",
     .title = "Masonry oven and cabinets",
     .unit = Unit::None,
     .harm = Harm::Fall,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words =
         "An oven of brick or stone stands on masonry or a slab, never on a cabinet: it weighs "
         "hundreds of kilograms, cracks when its base moves, and heats what is under it.",
     .ok = "",
     .warn = "No cabinet is drawn under this oven: it stands on masonry or a slab, never on a "
             "cabinet. Its pier is not in the parts.",
     .fail = "",
     .unknown = "",
     .inputs = "oven.masonry_base"},
    {.id = "frame.riser",
     .title = "Block under the oven",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "height of the block",
     .against = "the least for a box with a metal cap",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "Metal, bed, one sheet, walls of 30 mm and the bed that they stand in. Ribs stand at "
              "most 300 mm apart under the "
              "oven.",
     .ok = "",
     .warn = "The block under the oven is {measured} high, too low for a box ({limit}): use one "
             "slab of stone, concrete or cement board.",
     .fail = "",
     .unknown = "",
     .inputs = "frame.metal height.given"},
    {.id = "frame.riser_thin",
     .title = "Oven hardly above the counter",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "the oven above the counter it stands on",
     .against = "the thinnest cement board sold, 1/4 in (6 mm)",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "What lifts the oven must bear it without breaking: stone, concrete or cement board. "
              "Thinner than 1/4 in (6 mm) none is sold.",
     .ok = "",
     .warn = "The oven is to stand {measured} above the counter, and no slab is thinner than "
             "{limit}: give both one height, or the oven at least {limit} more than the counter.",
     .fail = "",
     .unknown = "",
     .inputs = "height.given"},
    {.id = "frame.gas_bay",
     .title = "Openings of the gas bay",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "width that an opening needs, or the floor's height above the ground",
     .against = "what there is room for, or 2 in (51 mm)",
     .source = "z21_58",
     .clause = "enclosures for cylinders",
     .basis = Basis::SecondHand,
     .words = "Two published forms, both met: for grills, two openings opposite each other at the "
              "valve and two at the floor, each 1/2 sq in per lb of gas and at least 10 sq in; for "
              "fire features, within 5 in of the top 1 sq in per lb in all, at the floor half of "
              "that. Low ones start at the bay's floor and end within 5 in of it; the floor is at "
              "least 2 in above the ground. Gas is heavier than air: a closed bay is a bowl. The "
              "bay holds the cylinder alone, upright; its walls have no other hole but the "
              "gas fitter's. Mesh over an opening counts by its free area.",
     .ok = "The gas bay has openings high and low in its back and its front.",
     .warn = "",
     .fail = "The gas bay has no room for its openings: {measured} against {limit}. Give a wider "
             "bay or a higher base.",
     .unknown =
         "The gas bay's openings are drawn for 20 lb (9 kg): say how much gas a full cylinder "
         "holds.",
     .inputs = "frame.bay clearance.cylinder"},
    {.id = "frame.gas_room",
     .title = "Room for the cylinder",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "clear width, depth or height of the gas bay that is too small",
     .against = "the cylinder as it is sold, with 25 mm (1 in) round and above it",
     .source = "judgement",
     .clause = "sizes of cylinders from memory",
     .basis = Basis::Judgement,
     .words = "Taken as sold for that much gas: 20 lb (9 kg) 12 1/2 in across and 18 in high, 30 "
              "lb (14 kg) 12 1/2 and 24, 40 lb (18 kg) 14 3/4 and 30, 100 lb (45 kg) 15 and 48; "
              "with 25 mm (1 in) round it and above it. Measure yours: it must stand upright, "
              "come out without force, and its valve must be in reach.",
     .ok = "The gas bay has room for {cylinder}, upright.",
     .warn = "",
     .fail = "Under the dough counter the {where} is {measured}, and {cylinder} wants {limit}: "
             "give it a larger bay, or choose a smaller cylinder.",
     .unknown = "How large {cylinder} is, is not known here: measure it, and see that it stands "
                "upright in the gas bay with 25 mm (1 in) round it.",
     .inputs = "frame.bay clearance.cylinder"},
    {.id = "frame.gas_missing",
     .title = "Bay for the cylinder",
     .unit = Unit::None,
     .harm = Harm::Fire,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "A cylinder stands in a bay of its own with openings, or in the open; never in one "
              "space with the burner, never in a bay without openings.",
     .ok = "",
     .warn =
         "The cylinder is said to stand in a cabinet of its own, and no bay holds gas: give one "
         "bay to it, away from the oven.",
     .fail = "A bay under the oven holds the gas cylinder: never under a burner. Give it another "
             "bay.",
     .unknown = "",
     .inputs = "frame.bay clearance.cylinder"},
    {.id = "frame.grill",
     .title = "Grill beside the cabinets",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "free room between counter and grill; negative: they overlap",
     .against = "what the grill's manual asks for at its sides",
     .source = "oven_manual",
     .clause = "of the grill",
     .basis = Basis::SecondHand,
     .words = "From the oven's body to the grill's, less what our counter takes up on that side.",
     .ok = "{measured} is left between counter and grill.",
     .warn = "",
     .fail =
         "The grill is too near the counter: {measured} is left[, {limit} is asked for]. Move it "
         "away or make the counter narrower.",
     .unknown = "{measured} is left between counter and grill; what its manual asks for is not "
                "known.",
     .inputs = "clearance.grill reach.landing reach.prep_area"},
    {.id = "frame.grill_step",
     .title = "Grill's shelf beside the counter",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "grill's shelf above our counter; negative: below it",
     .against = "level",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "Trays are slid between level tops; up to 25 mm (1 in) nobody minds.",
     .ok = "The grill's shelf is level with the counter beside it.",
     .warn =
         "The grill's shelf is {measured} off the counter beside it: trays must be lifted over.",
     .fail = "",
     .unknown = "",
     .inputs = ""},
    {.id = "frame.knee_bay",
     .title = "Seated cook and cabinets",
     .unit = Unit::None,
     .harm = Harm::Strain,
     .measures = "",
     .against = "",
     .source = "ada2010",
     .clause = "306.3",
     .basis = Basis::Seen,
     .words = "A seated cook wants a bay without box or base, 30 in (760 mm) wide. The parts have "
              "none yet: leave one bay out and carry the top across.",
     .ok = "",
     .warn =
         "A cook works seated at the dough counter, and the parts fill all of it with cabinets: "
         "leave a bay of 30 in (760 mm) out.",
     .fail = "",
     .unknown = "",
     .inputs = "reach.knee_room"},
    {.id = "frame.packing",
     .title = "Under the boards that carry",
     .unit = Unit::Length,
     .harm = Harm::Fall,
     .measures = "from the lowest ground under the base to the underside of what carries",
     .against = "1 in (25 mm) of shims",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "Carrying boards are level: on the highest ground they stand on a pair of shims, and "
              "where it is lower on packing and shims. A stack of shims alone is kept to 1 in "
              "(25 mm). Packing is treated lumber as wide as the board is thick or wider, screwed "
              "to the board.",
     .ok = "Shims of up to {measured} fill what is left under the boards that carry.",
     .warn = "Up to {measured} are left under the boards that carry, and shims alone are kept to "
             "{limit}: under each of their supports screw a block of treated lumber to the board, "
             "and shim the rest.",
     .fail = "",
     .unknown = "",
     .inputs = "frame.packing survey.base"},
};

}  // namespace hs::rules
