#pragma once
// What the engine has to say about one rule at one place. Numbers only: the words come from the
// rule's row (engine/rules), put together in engine/report, so that a drag builds no sentences.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace hs {

enum class Verdict : std::uint8_t { Ok, Warn, Fail, Unknown };

constexpr std::string_view verdict_name(Verdict v) {
  switch (v) {
    case Verdict::Ok:
      return "ok";
    case Verdict::Warn:
      return "warn";
    case Verdict::Fail:
      return "fail";
    case Verdict::Unknown:
      return "unknown";
  }
  return "";
}

// How loud a verdict is: what fails, then what nobody knows, then what to mind, then what is well.
constexpr int badness(Verdict v) {
  switch (v) {
    case Verdict::Ok:
      return 0;
    case Verdict::Warn:
      return 1;
    case Verdict::Unknown:
      return 2;
    case Verdict::Fail:
      return 3;
  }
  return 0;
}

struct Finding {
  std::string_view rule;  // id of a row of engine/rules: "height.hand_ceiling"
  Verdict verdict = Verdict::Unknown;
  std::optional<std::size_t> cook = {};  // index, when it is about one cook
  std::optional<double> measured = {};   // in the rule's unit
  std::optional<double> limit = {};
  std::optional<double> margin = {};  // positive: room left; negative: how far past the limit
  std::string_view where = {};        // a literal: "left side"; empty: the rule says it all
};

}  // namespace hs
