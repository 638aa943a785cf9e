#pragma once
// Numbers as a person says them at the oven: heights to build to, lengths to read off, distances to
// stand at, shares and angles. Shared by the files of this folder.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/number_text.h"
#include "engine/height/height.h"
#include "engine/report/summary.h"
#include "engine/rules/rules.h"

namespace hs::report {

constexpr Fractions style_of(bool pretty) {
  return pretty ? Fractions::Typographic : Fractions::Ascii;
}

// What plain_length() writes to.
constexpr double plain_step_mm(Units units) { return units == Units::Inch ? 25.4 / 16 : 1; }

// A length to cut to: "412.5 mm", "16 1/4 in", to 0.1 mm or 1/32 in.
std::string shop_length(double mm, Units units, bool pretty);

// "35 to 39 1/2 in": ends rounded into the band at the marks, but never past `within`, so that a
// band always holds the height beside it. Only one height: that height.
std::string build_band(const height::Band& band, double within_mm, Units units, bool pretty);
// The same with its ends as they are.
std::string plain_band(const height::Band& band, Units units, bool pretty);

// A finding's number in its rule's unit, as it is read off; empty for a rule without one.
std::string in_unit(rules::Unit unit, double value, Units units);

// A place to stand: whole inches or 10 mm, nearest or never nearer than it is.
enum class Round : std::uint8_t { Nearest, Up };
std::string distance(double mm, Units units, Round round = Round::Nearest);

// "76 %". Never 100 % below sight::kAllSeen, never 0 % above nothing.
std::string percent(double share);
// The same with decimals, where whole ones would say that two shares are equal: "1.96 %".
std::string percent_apart(double share, double from);

// "1.42 kW/m²"; "540 lx".
std::string heat_flux(double kw_m2);
std::string lux(double lx);

// "1.32 times"; beyond 100 only that it is more.
std::string times(double factor);

// "23 kg (51 lb)", "51 lb (23 kg)": the reader's own first.
std::string mass(double kg, Units units);
// "222 N (50 lb)", "50 lb (222 N)".
std::string force(double newtons, Units units);

// "842 °F", "450 °C", to a whole degree; "19.5 °C" with one decimal, where metric readings have it.
std::string temperature(double celsius, Units units, int metric_decimals = 0);
// "22 mph", "9.8 m/s".
std::string speed(double m_s, Units units);

// "9 pairs", "1 can", "24": how many of a unit that is counted. Litres are turned from their own
// value: "4.74 qt", "4.49 l".
std::string quantity_words(double quantity, std::string_view unit, Units units);

// "34°".
std::string degrees(double deg);

// Where this cook sees all of the target: it does show from there, and it reads as farther than the
// watching distance where it is. nullopt: from nowhere.
std::optional<std::string> all_seen_from(const config::View& view, const evaluate::CookResult& cook,
                                         Units units);

// "one step back", "two steps back": our judgement, a step back is up to 400 mm.
std::string_view steps_back(double mm);

// "a drawer over doors": what is behind a cabinet's front.
std::string_view holds_words(config::Holds holds);

// Typographic fractions back to plain ones ("35½ in" to "35 1/2 in"), for what is read aloud.
std::string plain_marks(std::string_view text);

// First letter made large, where it is plain ASCII.
std::string capitalised(std::string text);
std::string lower_first(std::string text);

}  // namespace hs::report
