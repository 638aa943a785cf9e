#pragma once
// A value or the list of everything that is wrong with the input it was to be made from.
// Mimics std::expected, which neither of our compilers has in C++20.

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace hs {

// One thing wrong with what someone typed or sent. Reading reports all of them at once.
struct Problem {
  std::string path;     // "cooks.1.stature_mm"; empty: the input as a whole
  std::string given;    // what was there, shortened; never echoed whole
  std::string allowed;  // what would be right, with unit and range

  bool operator==(const Problem&) const = default;
};

// "cooks.1.stature_mm: 3000 mm is not allowed; give 800 to 2300 mm" - one line, no line break.
// Without a given: the path and `allowed` as it stands ("format: missing; give ...").
std::string sentence(const Problem& problem);

// The first 50, then one that says how many more there are. For the last step before showing them.
std::vector<Problem> capped(std::vector<Problem> problems);

template <typename T>
class [[nodiscard]] Result {
 public:
  Result(T value) : value_(std::move(value)) {}  // NOLINT: implicit like std::expected
  Result(std::vector<Problem> problems) : problems_(std::move(problems)) {}
  Result(Problem problem) : problems_{std::move(problem)} {}

  bool has_value() const { return value_.has_value(); }
  explicit operator bool() const { return has_value(); }
  const T& value() const { return *value_; }
  T& value() { return *value_; }
  const T& operator*() const { return value(); }
  const T* operator->() const { return &value(); }
  const std::vector<Problem>& error() const { return problems_; }  // empty when there is a value

 private:
  std::optional<T> value_;
  std::vector<Problem> problems_;
};

}  // namespace hs
