#pragma once
// The one page that a household hangs beside the oven: what must stay free and who says so, heat at
// each cook's face and hand, and what to do about fire, gas, ash, children and weather.
//
// Every line comes from the registry (engine/rules) or from a finding, with a number that leads to
// its source. What does not apply to this oven's fuel is left out; what nobody has said is as loud
// as what fails.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/finding.h"
#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/html.h"
#include "engine/report/summary.h"

namespace hs::report {

struct SafetyLine {
  std::optional<Verdict> verdict;  // how this station stands; absent: it holds for every station
  std::string head, words;         // head: a few words, may be empty
  std::size_t source = 0;          // place in SafetySheet::sources, from 1; 0: none
};

struct SafetyPart {
  std::string_view id, title;
  std::vector<SafetyLine> lines;
};

struct SafetySheet {
  std::string title, oven;  // the station's title; kind, fuel and floor temperature
  std::vector<SafetyPart> parts;
  std::vector<std::string> sources;
};

SafetySheet safety_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                         Units units);

// As a section of a document.
void put_safety_sheet(HtmlWriter& out, const SafetySheet& sheet);

// As a document of its own; `style` as for html_document().
std::string safety_html(const config::Config& config, const evaluate::Evaluation& evaluation,
                        Units units, std::string_view style);

}  // namespace hs::report
