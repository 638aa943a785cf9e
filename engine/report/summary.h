#pragma once
// The few sentences of the first screen, in one person's units. Views print them as they are.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/finding.h"
#include "engine/base/number_text.h"
#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"

namespace hs::report {

enum class Units : std::uint8_t { Inch, Millimetre };

// The same choice where single numbers are read and written.
constexpr Unit unit_of(Units units) { return units == Units::Inch ? Unit::Inch : Unit::Mm; }

// To what someone with these units marks a height: 1/4 in or 5 mm.
constexpr evaluate::Marks marks_of(Units units) {
  return units == Units::Inch ? evaluate::Marks::QuarterInch : evaluate::Marks::FiveMillimetres;
}

// "41 3/8 in" (nearest 1/16) or "1051 mm"; typographic fractions when pretty.
std::string plain_length(double mm, Units units, bool pretty);

struct Headline {
  std::string_view id;   // "oven_counter" or "dough_counter"
  std::string label;     // "Oven counter", "Dough counter"; "Oven floor" for masonry
  std::string value;     // "42 1/2 in", the recommended height; a dash when there is none
  std::string yours;     // "yours: 47 1/4 in, 4 3/4 in above"; empty: as recommended, or not given
  std::string band;      // "about as good: 41 3/4 to 42 1/2 in"; empty: none
  std::string note;      // "recommended: the best balance", "recommended; 2 in too low for Ana"
  std::string_view why;  // rule id
  Verdict verdict = Verdict::Ok;  // of yours, where there is one
};

struct CookLine {
  std::string name;
  // Worst first: "dough 2 in too low; sees 76 % of the pizza; all of it from 35 in away".
  std::string line;
  Verdict verdict = Verdict::Ok;
};

struct Summary {
  std::vector<Headline> headlines;  // oven, then dough
  std::vector<CookLine> cooks;
  std::string worst;  // the one worst caution, a sentence
  Verdict worst_verdict = Verdict::Ok;
  std::string_view worst_rule;
};

Summary summary(const config::Config& config, const evaluate::Evaluation& evaluation, Units units);

// What only the document says, so that the first picture does not wait for its code. Where the toes
// are, "Toes 18 in from the counter's edge"; empty with nobody at the oven.
std::string feet_line(const evaluate::Evaluation& evaluation, Units units);
// The summary in two sentences without typographic marks, for a screen reader.
std::string spoken(const Summary& summary);

// One finding in plain words with its numbers; ends in a full stop.
std::string sentence(const Finding& finding, const config::Config& config,
                     const evaluate::Evaluation& evaluation, Units units);

}  // namespace hs::report
