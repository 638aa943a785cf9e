#include "engine/evaluate/check.h"

#include <algorithm>
#include <utility>

#include "engine/config/validate.h"
#include "engine/evaluate/dates.h"
#include "engine/frame/as_built.h"
#include "engine/oven/oven.h"

namespace hs::evaluate {
namespace {

void append(std::vector<Problem>& all, std::vector<Problem> more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

bool about_the_oven(const Problem& problem) {
  return problem.path.empty() || problem.path.starts_with("oven");
}

}  // namespace

std::vector<Problem> check(const config::Config& config) {
  std::vector<Problem> problems = config::validate(config);
  // A shape is only judged once its numbers are finite and in range.
  if (std::none_of(problems.begin(), problems.end(), about_the_oven)) {
    append(problems, oven::impossible(config.oven));
  }
  append(problems, frame::as_built_problems(config.frame.as_built));
  append(problems, date_problems(config.plan));
  return problems;
}

std::vector<Problem> check(const config::Reading& reading) {
  std::vector<Problem> problems = reading.problems;
  append(problems, config::validate_read(reading));
  if (std::none_of(problems.begin(), problems.end(), about_the_oven)) {
    append(problems, oven::impossible(reading.config.oven));
  }
  append(problems, frame::as_built_problems(reading.config.frame.as_built));
  append(problems, date_problems(reading.config.plan));
  return capped(std::move(problems));
}

Result<config::Config> read(std::string_view json) {
  config::Reading reading = config::read_fields(json);
  std::vector<Problem> problems = check(reading);
  if (!problems.empty()) return problems;
  return std::move(reading.config);
}

}  // namespace hs::evaluate
