#pragma once
// What must hold for any bytes whatever, shared by the fuzz target and the fixed-seed run in the
// suite. Returns the law that broke, or nothing.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/text.h"
#include "engine/config/setting.h"
#include "engine/config/validate.h"
#include "engine/evaluate/check.h"
#include "engine/share/link.h"
#include "engine/share/seal.h"
#include "tests/support/read_config.h"

namespace hs::test {

inline const char* broken_by_problems(const std::vector<Problem>& problems) {
  if (problems.empty()) return "refused without a reason";
  if (problems.size() > 51) return "more problems than anyone reads";
  for (const Problem& problem : problems) {
    const std::string text = sentence(problem);
    if (!is_printable(text)) return "a message that is not printable";
    if (text.size() > 1000) return "a message that echoes its input";
  }
  return nullptr;
}

inline const char* broken_by_config(const config::Config& config) {
  if (!config::validate(config).empty()) return "read, but not valid";
  const auto json = test::read_config(config::config_json(config));
  if (!json || !(*json == config)) return "JSON does not come back";
  const std::string text = share::to_link(config);
  const auto link = share::from_link(text);
  // Longer than every program carries it is refused: such a station goes as a file.
  if (link.has_value() != (text.size() <= share::kLongestLink))
    return "the link does not come back";
  if (link && !(*link == config)) return "the link is another station's";
  evaluate::check(config);
  return nullptr;
}

inline const char* broken_by_json(std::string_view bytes) {
  const auto config = test::read_config(bytes);
  return config ? broken_by_config(*config) : broken_by_problems(config.error());
}

inline const char* broken_by_link(std::string_view bytes) {
  const auto config = share::from_link(bytes);
  return config ? broken_by_config(*config) : broken_by_problems(config.error());
}

// The decoder behind the check digits, which random bytes would hardly ever pass.
inline const char* broken_by_sealed(std::string_view bytes) {
  std::string coded(1, share::kLinkVersion);
  coded += bytes;
  return broken_by_link(coded + share::check_digits(coded));
}

inline const char* broken_by_setting(std::string_view bytes) {
  const std::size_t equals = bytes.find('=');
  if (equals == std::string_view::npos) return nullptr;
  config::Config config;
  const auto problems =
      config::apply_setting(config, bytes.substr(0, equals), bytes.substr(equals + 1));
  if (!problems.empty())
    return config == config::Config{} ? broken_by_problems(problems) : "refused, yet changed";
  return config::validate(config).empty() ? broken_by_config(config) : nullptr;
}

inline const char* broken_by(std::string_view bytes) {
  for (const auto law : {broken_by_json, broken_by_link, broken_by_sealed, broken_by_setting}) {
    if (const char* broken = law(bytes)) return broken;
  }
  return nullptr;
}

}  // namespace hs::test
