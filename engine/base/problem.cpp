#include "engine/base/result.h"

namespace hs {
namespace {

// More would only hide the first ones, and 500 cooks with 13 faults each would fill a screen.
constexpr std::size_t kMostListed = 50;

}  // namespace

std::string sentence(const Problem& problem) {
  std::string out = problem.path;
  if (!out.empty()) out += ": ";
  if (problem.given.empty()) return out + problem.allowed;
  return out + problem.given + " is not allowed; give " + problem.allowed;
}

std::vector<Problem> capped(std::vector<Problem> problems) {
  if (problems.size() <= kMostListed) return problems;
  const std::size_t more = problems.size() - kMostListed;
  problems.resize(kMostListed);
  problems.push_back({"", "", "and " + std::to_string(more) + " more problems"});
  return problems;
}

}  // namespace hs
