#pragma once
// Rules about what stands near the hot oven: cover, posts, railings, house, grill, flue, cylinder.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kSurroundingsRows[] = {
    {.id = "clearance.cover",
     .title = "Oven under a cover",
     .unit = Unit::None,
     .harm = Harm::Fire,
     .measures = "",
     .against = "",
     .source = "oven_manual",
     .clause = "outdoor use, overhead construction",
     .basis = Basis::SecondHand,
     .words = "Whether an oven may stand under a roof, slats or an umbrella is for its manual to "
              "say, then a local rule. Where the manual is silent it has not been tried there: "
              "that is a warning, whatever the height, and whether or not the cover burns. Some "
              "listed grills may not stand under anything that burns.",
     .ok = "Nothing is over the oven, or its papers allow the cover that is.",
     .warn = "There is a cover over the oven, and nothing that you have entered says that this "
             "oven may stand under one: find it in its manual first.",
     .fail = "The oven may not stand under a cover, and there is one.",
     .unknown = "Nobody has said whether there is a cover over the oven: under one it needs its "
                "manual's word.",
     .inputs = "clearance.cover"},
    {.id = "clearance.open_sides",
     .title = "Open sides under the cover",
     .unit = Unit::None,
     .harm = Harm::Burn,
     .measures = "",
     .against = "two closed sides at most",
     .source = "as_nzs_5601",
     .clause = "outdoor areas, as an appliance manual gives it",
     .basis = Basis::SecondHand,
     .words = "Under a cover at most two sides may be closed; with more, at least a quarter of the "
              "whole wall and 30 % of the rest stays open. Written for gas appliances in another "
              "country. Carbon monoxide has no smell: with three sides closed watch it, with four "
              "it is indoors.",
     .ok = "The air can come and go: there is no cover, or at least two of its sides are open.",
     .warn = "Three sides under the cover are closed: smoke and carbon monoxide gather there.",
     .fail = "A cover closed on four sides is indoors: never burn anything in it.",
     .unknown = "There is a cover, and nobody has said how many sides are closed under it: carbon "
                "monoxide gathers where air cannot pass.",
     .inputs = "clearance.open_sides clearance.cover"},
    {.id = "clearance.post",
     .title = "Posts of the cover",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "gap between the oven's body and the nearest post",
     .against = "the largest room that the oven asks for at its sides and back",
     .source = "oven_manual",
     .clause = "clearance to combustibles",
     .basis = Basis::SecondHand,
     .words = "A post may be beside or behind the oven, so the larger of the two figures counts. A "
              "post that does not burn needs no room of its own.",
     .ok = "The nearest post does not burn, or is {measured} away; {limit} is asked for."
           "|The nearest post does not burn.",
     .warn = "",
     .fail = "The nearest post is only {measured} from the oven; {limit} is asked for.",
     .unknown = "The cover has posts; how far the nearest is from the oven, whether it burns, or "
                "how much room the oven asks for is not known.",
     .inputs = "clearance.post clearance.side clearance.back"},
    {.id = "clearance.railing",
     .title = "Railings, fences and branches",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "gap between the oven's body and the nearest thing that burns",
     .against = "3 ft (914 mm)",
     .source = "nfpa_tips",
     .clause = "",
     .basis = Basis::SecondHand,
     .words = "At least 3 ft (0.9 m) from railings, branches and anything that burns. The oven's "
              "own manual may ask for more.",
     .ok = "Railings and branches are {measured} away; {limit} is the least.",
     .warn = "",
     .fail = "Something that burns is only {measured} from the oven; {limit} is the least.",
     .unknown = "Nobody has said how far railings, fences and branches are from the oven; {limit} "
                "is the least.",
     .inputs = "clearance.railing"},
    {.id = "clearance.house",
     .title = "Distance from buildings",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "gap between the oven's body and the nearest building",
     .against = "10 ft (3048 mm)",
     .source = "ifc",
     .clause = "308.1.4",
     .basis = Basis::SecondHand,
     .words = "Open-flame cooking stays 10 ft (3 m) from anything built to burn. One- and "
              "two-family houses are left out, and so are sprinklered buildings; some towns leave "
              "nobody out. The number of the clause changes with the edition.",
     .ok = "The nearest building is {measured} away; {limit} is asked for in many places.",
     .warn = "The nearest building is {measured} away. Less than {limit} is forbidden in many "
             "places; one- and two-family houses are often left out: ask the fire service.",
     .fail = "The nearest building is only {measured} away, and it is not a one- or two-family "
             "house: {limit} is asked for.",
     .unknown = "The nearest building is {measured} away; whether that is enough depends on what "
                "it is: {limit} is asked for where more than two families live.|Nobody has said "
                "how far the nearest building is; {limit} is asked for in many places.",
     .inputs = "clearance.house"},
    {.id = "clearance.grill",
     .title = "Room between oven and grill",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "gap between the two bodies",
     .against = "the larger of what the two manuals ask for at the sides",
     .source = "oven_manual",
     .clause = "clearance to combustibles, sides, of both",
     .basis = Basis::SecondHand,
     .words = "Each is a hot body for the other, with hoses and knobs on its side. The larger "
              "figure counts, and only once both manuals have been read.",
     .ok = "Oven and grill are {measured} apart; {limit} is asked for.",
     .warn = "",
     .fail = "Oven and grill are only {measured} apart; {limit} is asked for.",
     .unknown = "How far oven and grill are apart, or what one of their manuals asks for at its "
                "side, is not known.",
     .inputs = "clearance.grill clearance.side"},
    {.id = "clearance.grill_cover",
     .title = "Grill under the cover",
     .unit = Unit::None,
     .harm = Harm::Fire,
     .measures = "",
     .against = "",
     .source = "oven_manual",
     .clause = "overhead construction, from the grill's manual",
     .basis = Basis::SecondHand,
     .words = "As for the oven: the grill's own manual speaks, and silence is a warning.",
     .ok = "The grill may stand under a cover.",
     .warn = "There is a cover over the grill, and nothing that you have entered says that this "
             "grill may stand under one: find it in its manual first.",
     .fail = "The grill may not stand under a cover, and there is one.",
     .unknown = "",
     .inputs = "clearance.grill clearance.cover"},
    {.id = "clearance.flue",
     .title = "Room round the flue",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "gap between the flue and the nearest thing that burns",
     .against = "its maker's figure; for a masonry chimney 2 in (51 mm) of air",
     .source = "irc",
     .clause = "R1003.18, masonry chimney; a metal flue's maker comes first",
     .basis = Basis::SecondHand,
     .words = "A metal flue keeps the distance that its maker gives; nothing replaces it. A "
              "masonry chimney keeps 2 in (51 mm) of air to framing, never filled.",
     .ok = "The flue keeps {measured} to what burns; {limit} is asked for.",
     .warn = "",
     .fail = "The flue is only {measured} from something that burns; {limit} is asked for.",
     .unknown = "The flue asks for {limit} to what burns; nobody has measured what there is.|How "
                "much room this flue needs is not known: its maker says, not this page.",
     .inputs = "clearance.flue"},
    {.id = "clearance.flue_top",
     .title = "Where the flue ends",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "height of the flue's top",
     .against = "3 ft above the roof it leaves, 2 ft above anything within 10 ft",
     .source = "irc",
     .clause = "R1003.9, and NFPA 211",
     .basis = Basis::SecondHand,
     .words = "The top is at least 3 ft (0.9 m) above the place where it leaves the roof and 2 ft "
              "(0.6 m) above anything within 10 ft (3 m). A flue that ends under a cover fills it "
              "with smoke and sparks.",
     .ok = "The flue ends at {measured}; {limit} is the lowest.",
     .warn = "",
     .fail = "The flue ends at {measured}; {limit} is the lowest.",
     .unknown = "Where the flue ends, what it passes or what stands within 10 ft (3 m) of it is "
                "not known.|Nobody has said whether this oven has a flue.",
     .inputs = "clearance.flue_top clearance.above"},
    {.id = "clearance.apron",
     .title = "Strip before the mouth",
     .unit = Unit::Length,
     .harm = Harm::Fire,
     .measures = "what does not burn before the mouth, on top and ground",
     .against = "16 or 20 in (406, 508 mm) by the size of the opening",
     .source = "irc",
     .clause = "R1001.10, hearth extension of a fireplace",
     .basis = Basis::SecondHand,
     .words = "Embers and hot pans land before the mouth. A fireplace keeps 16 in (406 mm) before "
              "an opening of less than 6 sq ft free of what burns, 20 in (508 mm) before a larger "
              "one. Borrowed: no clause was found for ovens at a counter. Behind a top that does "
              "not burn, stone or concrete ground goes on; a wooden deck does not.",
     .ok = "What embers can fall on before the mouth does not burn.",
     .warn = "Only {measured} before the mouth do not burn; a fireplace keeps {limit}: lay "
             "something down that does not burn.",
     .fail = "The top before the mouth burns, and embers land there; a fireplace keeps {limit} "
             "free of what burns.",
     .unknown = "Whether the top and the ground before the mouth burn is not known; a fireplace "
                "keeps {limit} free of what burns.",
     .inputs = "clearance.apron clearance.on_combustible reach.nearest_standoff"},
    {.id = "clearance.extinguisher",
     .title = "Place of the extinguisher",
     .unit = Unit::None,
     .harm = Harm::Burn,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "In reach of the cook on the way out, not behind the oven, where a fire stands "
              "between. 1-A:10-B:C is the usual least for a home; never water on burning fat.",
     .ok = "An extinguisher is in reach, and not behind the oven.",
     .warn = "The extinguisher is out of reach: hang it where the cook gets at it on the way out.",
     .fail = "There is no extinguisher to get at: a fire stands before one behind the oven.",
     .unknown = "Nobody has said where the extinguisher hangs: in reach, not behind the oven.",
     .inputs = "clearance.extinguisher"},
    {.id = "clearance.cylinder",
     .title = "Place of the gas cylinder",
     .unit = Unit::None,
     .harm = Harm::Fire,
     .measures = "",
     .against = "",
     .source = "z21_58",
     .clause = "enclosure for cylinders, as manuals give it",
     .basis = Basis::SecondHand,
     .words = "Never in one space with the burner. One whole side open, or openings of a closed "
              "space in two published forms: for grills and ovens two at the valve's height, 180 "
              "degrees apart, and two at the floor, each 1/2 sq in for each pound (7.1 cm2/kg) and "
              "at least 10 sq in (65 cm2); for fire features 1 sq in for each pound high and 1/2 "
              "low, in all. The higher counts unless the oven's manual says otherwise. Some "
              "manuals print 3.2 cm2/kg: that is wrong.",
     .ok = "The cylinder stands open on one whole side, or there is none.",
     .warn = "",
     .fail = "The cylinder is in one space with the burner: never.",
     .unknown = "Whether the gas cylinder has air enough is not known: leave one whole side of its "
                "space open, or measure the openings, high and low.",
     .inputs = "clearance.cylinder"},
};

}  // namespace hs::rules
