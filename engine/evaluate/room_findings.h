#pragma once
// Findings about the room around the oven and the cook, and the small builder all findings use.

#include <cmath>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {

// The child-free zone and an 18 in standing place beside it.
inline constexpr double kChildRun_mm = clearance::kChildFree_mm + 460;

using reach::kLanding_mm;

// Compared at the quantum of a length, so that the last bit never decides a verdict.
inline constexpr double kTolerance = 0.05;

struct Findings {
  std::vector<Finding> list;

  void add(const Finding& finding) { list.push_back(finding); }

  void at_most(std::string_view rule, double measured, double limit, Verdict otherwise,
               std::optional<std::size_t> cook, std::string_view where = {}) {
    add({rule, measured <= limit + kTolerance ? Verdict::Ok : otherwise, cook, measured, limit,
         limit - measured, where});
  }
  void at_least(std::string_view rule, double measured, double limit, Verdict otherwise,
                std::optional<std::size_t> cook, std::string_view where = {}) {
    add({rule, measured >= limit - kTolerance ? Verdict::Ok : otherwise, cook, measured, limit,
         measured - limit, where});
  }
  // A thing nobody has measured yet.
  void at_least(std::string_view rule, const std::optional<double>& measured, double limit,
                Verdict otherwise, std::optional<std::size_t> cook, std::string_view where = {}) {
    if (measured) {
      at_least(rule, *measured, limit, otherwise, cook, where);
    } else {
      add({rule, Verdict::Unknown, cook, {}, limit, {}, where});
    }
  }
};

// Face, hand, hot zone and stoop of a cook at the oven (engine/evaluate/heating.cpp).
void add_heat(Findings& out, const Evaluation& e, std::size_t i);

void add_clearances(Findings& out, const config::Config& config, const Evaluation& evaluation);
void add_room(Findings& out, const config::Config& config, const Evaluation& evaluation);

}  // namespace hs::evaluate
