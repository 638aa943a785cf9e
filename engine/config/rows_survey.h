#pragma once
// The part of the field table about the ground under the station and the base that is cut to it:
// tags 240 to 279. Without a point there is no survey, and nothing here is asked about.

#include <array>

#include "engine/config/field_row.h"

namespace hs::config {

namespace rows {
inline constexpr std::string_view kSetups[] = {"a", "b", "c", "d"};
inline constexpr std::string_view kPointKinds[] = {"panel", "joint", "feet", "other"};
inline constexpr std::string_view kLevelTools[] = {"laser", "water_level", "straightedge"};
inline constexpr std::string_view kFootings[] = {"slab", "set_pavers", "loose_pavers", "deck"};

inline constexpr auto kSurveyRows = std::to_array<Row>({

    // Readings ------------------------------------------------------------------------------------
    POINT(240, "survey.points[].x_mm", kLength, Absent::Default, -5000, 15000, 10, Words{},
          "survey.readings survey.base survey.heights", "Along the front",
          "How far along the counters' front is the point?",
          "From the counters' left end, to the right; negative: left of it.", &SurveyPoint::x_mm),
    POINT(241, "survey.points[].y_mm", kLength, Absent::Default, -5000, 15000, 10, Words{},
          "survey.readings survey.base survey.heights", "Back from the front",
          "How far behind the counters' front edge is the point?",
          "Negative: in front of it, where the feet stand.", &SurveyPoint::y_mm),
    POINT(242, "survey.points[].reading_mm", kLength, Absent::Unknown, 0, 3000, 1, Words{},
          "survey.readings survey.closing survey.doubtful survey.feet survey.drainage survey.base "
          "survey.least survey.board survey.inside survey.method survey.heights",
          "Reading", "How far is it from the level line down to the ground there?",
          "Tape or rule upright on the ground, read at the line; to 1/16 in or 1 mm.",
          &SurveyPoint::reading_mm),
    POINT(243, "survey.points[].setup", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kSetups},
          "survey.closing", "Level line", "From which level line was it read?",
          "A new one each time that the level, or its line, is moved. Read one or two points from "
          "both lines: they join them.",
          &SurveyPoint::setup),
    POINT(244, "survey.points[].kind", Quantity::Choice, Absent::Default, 0, 0, 0,
          Words{kPointKinds}, "survey.feet survey.base", "What is there", "What is at the point?",
          "panel: on the line of a base panel; joint: there too, where two stones meet; feet: "
          "where the cooks stand; other: anywhere on the ground.",
          &SurveyPoint::kind),
    STATION(250, "survey.tool", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kLevelTools},
            "survey.accuracy survey.closing", "Level line by", "What gives the level line?",
            "laser; water_level: a hose; straightedge: a board with a level on it.",
            &Config::survey, &Survey::tool),
    STATION(251, "survey.laser_mm", kLength, Absent::Unknown, 0.1, 20, 0.5, Words{},
            "survey.accuracy", "Laser's accuracy", "How exact is the laser, by its maker?",
            "Stated as plus or minus so much at 10 m (33 ft).", &Config::survey, &Survey::laser_mm),

    // The base ------------------------------------------------------------------------------------
    STATION(252, "survey.board_mm", kLength, Absent::Default, 40, 400, 5, Words{},
            "survey.base survey.board survey.method", "Base boards",
            "How high are the boards of the base?",
            "Measured, not nominal: a 1x6 board is 5 1/2 in (139.7 mm), a 1x8 of softwood 7 1/4 in "
            "(184 mm).",
            &Config::survey, &Survey::board_mm),
    STATION(253, "survey.base_mm", kLength, Absent::Unknown, 20, 400, 5, Words{},
            "survey.base survey.least survey.inside survey.heights frame.packing", "Base height",
            "How high is the top of the base above the ground at the cooks' feet?",
            "Left out: 4 in (100 mm), a usual toe space, or as near to it as the boards allow.",
            &Config::survey, &Survey::base_mm),
    STATION(254, "survey.least_mm", kLength, Absent::Default, 10, 200, 5, Words{},
            "survey.least survey.inside survey.base survey.board", "Least board left",
            "How much of a board must stay where the ground is highest?",
            "Enough for two screws above each other: 2 in (50 mm) is our judgement.",
            &Config::survey, &Survey::least_mm),
    STATION(255, "survey.step_mm", kLength, Absent::Default, 20, 500, 10, Words{},
            "survey.ordinates", "Between ordinates", "How far apart shall the cut's heights stand?",
            "4 in (100 mm) is usual; joints and readings always have their own.", &Config::survey,
            &Survey::step_mm),
    STATION(256, "survey.footing", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kFootings},
            "survey.anchor", "What it stands on", "What is under the base?",
            "slab: concrete in one piece; set_pavers: bricks or stones in mortar; loose_pavers: on "
            "sand or gravel; deck: boards on joists.",
            &Config::survey, &Survey::footing),
    STATION(257, "survey.weeps", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{}, "survey.weeps",
            "Weeps", "Has the base openings at its low side?",
            "Gaps under the panel, or holes at the ground, through which rain runs out.",
            &Config::survey, &Survey::weeps),
    STATION(258, "survey.gas_vent_open", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "survey.gas_vent", "Gas bay's floor vent",
            "Does the gas bay's floor opening lead out into the open?",
            "Through the base's low panel, not into a closed space under the cabinet.",
            &Config::survey, &Survey::gas_vent_open),
    STATION(260, "survey.anchor.diameter_mm", kLength, Absent::Unknown, 3, 30, 1, Words{},
            "survey.anchor survey.anchor_spacing", "Anchors", "How thick are the anchors?",
            "Diameter on their box: 1/4 in is 6.4 mm.", &Config::survey, &Survey::anchor,
            &Anchor::diameter_mm),
    STATION(261, "survey.anchor.spacing_mm", kLength, Absent::Unknown, 10, 3000, 10, Words{},
            "survey.anchor_spacing", "Between anchors",
            "How far apart are the nearest two anchors?", "Middle to middle.", &Config::survey,
            &Survey::anchor, &Anchor::spacing_mm),
    STATION(262, "survey.anchor.edge_mm", kLength, Absent::Unknown, 5, 3000, 5, Words{},
            "survey.anchor", "Anchor to edge",
            "How far is the nearest anchor from an edge or joint of what it is in?",
            "Middle of the anchor to the edge of the slab or brick.", &Config::survey,
            &Survey::anchor, &Anchor::edge_mm),
});
}  // namespace rows

}  // namespace hs::config
