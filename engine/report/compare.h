#pragma once
// Stations side by side: what differs between them, and how much is the same.

#include <span>
#include <string>
#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"
#include "engine/report/table.h"

namespace hs::report {

struct Compared {
  std::string name;  // the column's head
  const config::Config* config = nullptr;
  const evaluate::Evaluation* evaluation = nullptr;
};

struct Comparison {
  // Heights, who cooks, findings, answers: a row for each thing that is not the same in all, a
  // column for each station. Those without rows are left out.
  std::vector<Table> tables;
  std::string same;  // a sentence on all else
};

// Cooks are matched by name, findings by rule, place and cook, answers by field; of the ground's
// readings only how many there are. What a station has no word on is a dash. Any number of
// stations.
Comparison compare(std::span<const Compared> stations, Units units);

// {"tables": [{"caption", "columns", "rows"}], "same"}.
std::string compare_json(std::span<const Compared> stations, Units units);

}  // namespace hs::report
