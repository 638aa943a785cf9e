#include "engine/evaluate/dates.h"

#include <algorithm>
#include <string>

#include "engine/base/text.h"

namespace hs::evaluate {
namespace {

constexpr std::string_view kOne = "a date as 2027-04-05, or leave it empty";
constexpr std::string_view kSome = "dates as 2027-04-05 with spaces between, or leave it empty";

std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

}  // namespace

std::optional<schedule::Date> date_from(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4)), month = digits(text.substr(5, 2)),
             day = digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const schedule::Date date{*year, *month, *day};
  if (!schedule::day_number(date)) return std::nullopt;
  return date;
}

std::optional<std::vector<schedule::Date>> dates_from(std::string_view text) {
  std::vector<schedule::Date> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (end > 0) {
      const auto date = date_from(text.substr(0, end));
      if (!date) return std::nullopt;
      out.push_back(*date);
    }
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

std::vector<Problem> date_problems(const config::Plan& plan) {
  std::vector<Problem> problems;
  const auto refuse = [&](const char* path, const std::string& given, std::string_view allowed) {
    problems.push_back({path, "\"" + shortened(given) + "\"", std::string(allowed)});
  };
  if (!plan.start.empty() && !date_from(plan.start)) refuse("plan.start", plan.start, kOne);
  if (!dates_from(plan.wet_days)) refuse("plan.wet_days", plan.wet_days, kSome);
  if (!dates_from(plan.off_days)) refuse("plan.off_days", plan.off_days, kSome);
  return problems;
}

}  // namespace hs::evaluate
