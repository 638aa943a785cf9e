#pragma once
// Rules about the ground under the station, the base cut to it and what holds it there.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kSurveyRows[] = {
    {.id = "survey.readings",
     .title = "Readings of the ground",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "widest gap between two readings under a panel that shows",
     .against = "24 in (600 mm)",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "Between two readings the ground is taken to be straight. Read the line of each "
              "panel at both ends, at every joint and high spot, and at least every 24 in "
              "(600 mm). A point within 2 3/8 in (60 mm) of a panel's line is on it; a reading "
              "within 4 3/4 in (120 mm) of an end stands for the end.",
     .ok = "The ground under the base is read at least every {measured}.",
     .warn = "Under the {where} two readings are {measured} apart: a high spot between them would "
             "keep the panel off the ground. Read every joint, and at least every {limit}.",
     .fail = "",
     .unknown = "The ground under the {where} is not known: read it at both of its ends and at "
                "every joint between.|Some points have no reading yet.",
     .inputs = "survey.readings"},
    {.id = "survey.closing",
     .title = "Level lines that agree",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "closing error of the worst loop between level lines",
     .against = "what readings by tape explain",
     .source = "common_practice",
     .clause = "levelling with several instrument heights",
     .basis = Basis::CommonPractice,
     .words = "Points read from two level lines join them, by least squares. Going from one line "
              "to the other over one such point and back over another, or round three lines, must "
              "lead back to where it began; what is left is the closing error. Allowed: twice a "
              "standard error of half of a reading's plus or minus, times the root of the number "
              "of readings in the loop.",
     .ok = "The level lines agree: the loop closes to {measured}; {limit} is explained by reading.",
     .warn = "The level lines do not agree: the loop closes to {measured}, and reading explains "
             "{limit}. Something moved, or a reading is wrong: take the shared points again.",
     .fail = "",
     .unknown = "Of the level lines {where}. Read two points from both.",
     .inputs = "survey.closing survey.accuracy"},
    {.id = "survey.doubtful",
     .title = "Readings that stand out",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "how far the point is off the plane of the rest, or its readings off each other",
     .against = "",
     .source = "rousseeuw1984",
     .clause = "least median of squares",
     .basis = Basis::Memory,
     .words = "The plane through three of the points with the least median of squared distances is "
              "the ground's; a single reading farther from it than 2.5 of the scale that this "
              "median gives, and than 3/8 in (10 mm), is doubtful. Where all or most lie "
              "on one line, that line is judged first, by a straight line through two of its "
              "points, then what is beside it. Fewer than six points, or fewer than three beside "
              "such a line, say nothing. Doubtful, too, is a point whose own "
              "readings differ by more than 5/32 in (4 mm). Two readings that agree are believed, "
              "wherever they lie, and so are feet that are off alike, to 3/8 in (10 mm): they "
              "stand by a step. The six farthest off are told. A doubtful reading still counts "
              "in a panel's profile: read it "
              "again before cutting.",
     .ok = "No reading stands out[; the farthest is {measured} off the plane of the ground].",
     .warn = "{point_high} is {measured} higher than the other points have it: a slip, or a stone "
             "that is really there. Read it again before cutting; two readings that agree are "
             "believed.|{point_low} is {measured} lower than the other points have it: a slip, or "
             "a hole that is really there. Read it again before cutting; two readings that agree "
             "are believed.|{points_apart} are readings of one place, and {measured} apart: one is "
             "wrong. Read the place once more, and remove the one of the three that stands alone.",
     .fail = "",
     .unknown = "Whether a reading is a slip we cannot tell yet: {where}.",
     .inputs = "survey.doubtful"},
    {.id = "survey.accuracy",
     .title = "What a reading is worth",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "plus or minus, of one reading",
     .against = "",
     .source = "common_practice",
     .clause = "",
     .basis = Basis::CommonPractice,
     .words = "A tape read at a line is 1 to 2 mm (1/16 in) at best: 2 mm is used. To it is added, "
              "as squares, what the line itself is worth: a laser as its maker states it over "
              "10 m (33 ft), a hose 2 mm, a board with a level on it 0.5 mm for each metre (from "
              "memory). The arithmetic after it is exact. The promise is one cut and perhaps a "
              "trim.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "survey.accuracy",
     .finding = false},
    {.id = "survey.feet",
     .title = "Ground at the cooks' feet",
     .unit = Unit::Length,
     .harm = Harm::Strain,
     .measures = "between the highest and the lowest ground where feet stand",
     .against = "3/8 in (10 mm)",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "A counter's height is above the finished ground at the feet on its working side, "
              "not above its base. The mean of the points read there is nought for every height "
              "here. Nothing is said of how even it is before every point set out there, and two "
              "at least, are read.",
     .ok = "Where the cooks stand the ground is even, to {measured}: heights are above it.",
     .warn = "Where the cooks stand the ground differs by {measured}: one of them works at a "
             "counter that much higher or lower than it seems.",
     .fail = "",
     .unknown = "Whether the ground is even where the cooks stand we cannot tell yet: "
                "{feet_missing} to read there. Heights are above the mean of what is read there."
                "|The ground at the cooks' feet is not read: read it at {feet_least}. Heights are "
                "above the point nearest to the middle of the front until it is.",
     .inputs = "survey.feet"},
    {.id = "survey.drainage",
     .title = "Fall of the ground as read",
     .unit = Unit::Share,
     .harm = Harm::Fall,
     .measures = "steepest fall of the plane of the ground",
     .against = "2 % for a hard surface, 5 % for bare ground, within 10 ft of a house",
     .source = "irc",
     .clause = "R401.3 and its exception",
     .basis = Basis::SecondHand,
     .words = "The plane closest to all readings but the doubtful ones, by least squares. Its "
              "steepest fall is held against what is asked for near a house, where it must lead "
              "away from the house. Water stands where there is less, and rots a base's foot.",
     .ok = "The ground as read falls {measured}[, to the {downhill}]; {limit} is asked for near a "
           "house, away from it.",
     .warn = "The ground as read falls {measured}[, to the {downhill}]: too little near a house, "
             "where {limit} is asked for, away from it. Water stands at the base: keep its foot "
             "off the ground.",
     .fail = "",
     .unknown = "How the ground falls is not known: read at least three points that are not on one "
                "line.",
     .inputs = "survey.drainage weather.drainage"},
    {.id = "survey.base",
     .title = "Boards of the base reach the ground",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "tallest board needed, at the lowest ground",
     .against = "height of the boards",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The base's top is level. Where the ground is lowest a panel is as high as the top "
              "above it. Boards are measured, not nominal: a dry 1x6 is 5 1/2 in (139.7 mm) high, "
              "a softwood 1x8 7 1/4 in (184 mm) (PS 20).",
     .ok = "At the lowest ground, under the {where}, the base needs {measured} of board; there is "
           "{limit}.",
     .warn = "",
     .fail = "At the lowest ground, under the {where}, the base needs a board of {measured}, and "
             "it is {limit}: take taller boards, a lower base, shims under it, legs, or have the "
             "ground relevelled.",
     .unknown = "",
     .inputs = "survey.base survey.least"},
    {.id = "survey.board",
     .title = "Boards that the ground asks for",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "lowest board that suits some height of the base",
     .against = "height of the boards",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "From the highest to the lowest ground under the base, and what must stay of a board "
              "where it is highest. Another height of the base moves both by the same.",
     .ok = "",
     .warn = "",
     .fail = "Whatever the base's height, this ground asks for boards of {measured}, and they are "
             "{limit}: take taller boards or high spots down, stand it on legs or shims, or have "
             "the ground "
             "relevelled. Cut nothing before.",
     .unknown = "",
     .inputs = "survey.board survey.base survey.least"},
    {.id = "survey.inside",
     .title = "Ground within the base",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "from the highest ground within the base to the base's top",
     .against = "what must stay of a board",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "Boards that carry, and the boxes, stand over the ground between the base's boards "
              "as well. Every point read there counts, and as much must be free above it as must "
              "stay of a board.",
     .ok = "Within the base the ground is highest at {where}: {measured} under the boxes; {limit} "
           "is needed.",
     .warn = "",
     .fail = "Within the base the ground at {where} leaves {measured} under the boxes, and {limit} "
             "is needed: raise the base, or take the high spot down.",
     .unknown = "",
     .inputs = "survey.inside survey.least"},
    {.id = "survey.least",
     .title = "Board left at the highest ground",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "board that stays at the highest ground",
     .against = "what must stay",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "Where the ground is highest most is cut away. What stays must hold two screws above "
              "each other: 2 in (50 mm) unless you say otherwise.",
     .ok = "At the highest ground, under the {where}, {measured} of board stays; {limit} must.",
     .warn = "",
     .fail = "At the highest ground, under the {where}, only {measured} of board would stay, and "
             "{limit} must: raise the base, or take the high spot down.",
     .unknown = "",
     .inputs = "survey.least survey.base"},
    {.id = "survey.method",
     .title = "Cut, shims or legs",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "largest fall of the ground under one panel",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "Up to 1/4 in (6 mm) under a panel, shims that do not rot, with the gap left open "
              "for water, are quicker than a cut and can be set again when stones move. More than "
              "2 3/8 in (60 mm), or more than the board has, is for legs, taller boards or a "
              "mason. Between them a panel is cut once.",
     .ok = "The ground falls up to {measured} under a panel: cut each panel once to its heights, "
           "and expect a trim at most.",
     .warn = "The ground falls up to {measured} under a panel, {where}.",
     .fail = "",
     .unknown = "",
     .inputs = "survey.method survey.base"},
    {.id = "survey.ordinates",
     .title = "Heights of a cut",
     .unit = Unit::Length,
     .harm = Harm::Note,
     .measures = "",
     .against = "",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "At each place of a panel: the base's top less the ground there, straight between "
              "readings. By compass instead: shim the panel level so that it touches its highest "
              "ground, set the compass to the height given, and draw once along it with the "
              "compass upright. Both are the same line.",
     .ok = "",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "survey.ordinates survey.base",
     .finding = false},
    {.id = "survey.heights",
     .title = "Counters above feet and above base",
     .unit = Unit::Length,
     .harm = Harm::Strain,
     .measures = "farthest that the ground under the base is above or below the feet",
     .against = "",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "Every height on this page is above the ground at the cooks' feet. At the base the "
              "ground is higher or lower; the same top measures otherwise there.",
     .ok = "A height here is above the feet, not above the base. The {height} is {above_feet} "
           "above the feet: {above_base} above the base's top, {above_high} above the highest and "
           "{above_low} above the lowest ground under the base.",
     .warn = "",
     .fail = "",
     .unknown = "",
     .inputs = "survey.heights survey.base height.compromise"},
    {.id = "survey.weeps",
     .title = "Weeps in the base",
     .unit = Unit::None,
     .harm = Harm::Nuisance,
     .measures = "",
     .against = "",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "A base cut tight to the ground all round is a dam for rain and a bowl for gas, "
              "which is heavier than air. Leave openings at the lowest ground: 2 in (50 mm) wide "
              "and 3/8 in (10 mm) high every 24 in (600 mm) is our judgement for rain.",
     .ok = "Rain runs out at the low side, under the {where}.",
     .warn = "The base dams rain: cut weeps where the ground is lowest, under the {where}.",
     .fail = "",
     .unknown = "Nobody has said whether the base has weeps; they belong where the ground is "
                "lowest, under the {where}.",
     .inputs = "survey.weeps survey.base"},
    {.id = "survey.gas_vent",
     .title = "Gas bay's floor opening and the base",
     .unit = Unit::None,
     .harm = Harm::Fire,
     .measures = "",
     .against = "",
     .source = "z21_58",
     .clause = "enclosure for cylinders, as manuals give it",
     .basis = Basis::SecondHand,
     .words = "A closed space for a gas cylinder needs an opening at its floor that lets gas out. "
              "Under a cabinet whose base is tight to the ground that opening leads nowhere: the "
              "base needs openings at its low side at least as large.",
     .ok = "The gas bay's floor opening leads out under the base.",
     .warn = "",
     .fail = "The gas bay's floor opening leads into a closed base: gas stays under the cabinet. "
             "Open the base at its low side, as wide as that opening at least.",
     .unknown = "Nobody has said whether the gas bay's floor opening leads out under the base; a "
                "base tight to the ground keeps gas in.",
     .inputs = "survey.gas_vent clearance.cylinder"},
    {.id = "survey.anchor",
     .title = "Anchors and edges",
     .unit = Unit::Length,
     .harm = Harm::Fall,
     .measures = "nearest anchor to an edge or joint",
     .against = "5 diameters",
     .source = "anchor_rule",
     .clause = "edge distance",
     .basis = Basis::SecondHand,
     .words = "Locate buried cable, gas and irrigation before any hole. Screw cleats to the ground "
              "and the base to the cleats, so that it lifts off; broad washers under heads in soft "
              "board. An anchor stays 5 of its diameters from an edge, its maker's own table comes "
              "first. Mortar joints and loose pavers hold nothing that may be counted on.",
     .ok = "The nearest anchor is {measured} from an edge; {limit} is asked for. Locate buried "
           "cable, gas and irrigation first.",
     .warn = "Of what it stands on: {where}. Locate buried cable, gas and irrigation before any "
             "hole.",
     .fail = "An anchor {measured} from an edge breaks it out: {limit} is asked for.",
     .unknown = "What holds the base to the ground is not known: say what it stands on, how thick "
                "the anchors are and how far from an edge. Locate buried cable, gas and irrigation "
                "before any hole.",
     .inputs = "survey.anchor"},
    {.id = "survey.anchor_spacing",
     .title = "Anchors and each other",
     .unit = Unit::Length,
     .harm = Harm::Fall,
     .measures = "nearest two anchors",
     .against = "10 diameters",
     .source = "anchor_rule",
     .clause = "spacing",
     .basis = Basis::SecondHand,
     .words = "Anchors nearer to each other than 10 diameters share the same ground and hold less. "
              "Their maker's own table comes first.",
     .ok = "The anchors are {measured} apart; {limit} is asked for.",
     .warn = "",
     .fail = "Anchors {measured} apart weaken each other: {limit} is asked for.",
     .unknown = "How far apart the anchors are is not known; {limit} is asked for.",
     .inputs = "survey.anchor_spacing"},
};

}  // namespace hs::rules
