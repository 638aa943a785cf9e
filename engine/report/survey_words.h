#pragma once
// The survey of the ground as a reader meets it: report key, tables, words.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/json_writer.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::report {

// "front", "back left": where water runs, as the cook sees it from in front of the counter; empty
// on the level (below 0.1 %).
std::string_view downhill(const survey::Slope& slope);

// "straight", "shim", "scribe", "legs".
std::string_view way_name(survey::Way way);

// The same as advice.
std::string_view way_words(survey::Way way);

// A length that is cut: "4 7/32 in", "107.2 mm". Finer than a tape can be read, so that rounding
// adds nothing to what the tape is off.
std::string cut_length(double mm, Units units);

// "point 4", "points 4 and 12": of readings by their index.
std::string point_list(const std::vector<std::size_t>& readings);

// "Do not cut yet: point 4 is doubtful"; empty where this panel may be cut.
std::string do_not_cut(const evaluate::SurveyResult& survey, std::size_t panel);

// "4 1/8 in above the cooks' feet", and that it was measured where it was.
std::string base_top(const evaluate::SurveyResult& survey, Units units);

// What stands under the report's "survey" where somebody has read the ground.
void put_survey(JsonWriter& out, const evaluate::SurveyResult& survey);

}  // namespace hs::report
