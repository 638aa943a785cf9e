#include "engine/report/sheet.h"

#include "engine/report/plots.h"

namespace hs::report {
namespace {

constexpr SheetKind kKinds[] = {
    {"section",
     "Side section",
     "Heights, the line of sight under the mouth's edge, and what stays hidden.",
     {},
     section_sheet},
    {"elevation",
     "Front elevation",
     "The mouth's true shape, every height and width, and every cook to scale.",
     {},
     elevation_sheet},
    {"plan",
     "Plan",
     "Where people stand, what must stay free, where a hot pizza goes, what the peel needs.",
     {},
     plan_sheet},
    {"share", "How much of the pizza each sees",
     "The oven's height against what shows of the pizza.", "arrangements", share_plot},
    {"oven-comfort", "Easy hands at the oven",
     "The oven's height against where each cook's hands are easy.", "arrangements",
     oven_comfort_plot},
    {"dough-comfort", "Easy hands in dough",
     "The dough counter's height against where each cook's hands are easy.", "arrangements",
     dough_comfort_plot},
    {"moves", "What each estimate can move",
     "How far the heights move when an estimate is off by one standard error.", "sensitivity",
     moves_plot},
    {"base-profile", "Cut of the base",
     "The ground under each panel of the base, and the bottom that is cut to it.", "ground",
     base_profile_plot},
};

}  // namespace

std::span<const SheetKind> sheet_kinds() { return kKinds; }

const SheetKind* find_sheet(std::string_view name) {
  for (const SheetKind& kind : kKinds) {
    if (kind.name == name) return &kind;
  }
  return nullptr;
}

}  // namespace hs::report
