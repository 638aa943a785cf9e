#include "engine/report/sheet.h"

namespace hs::report {
namespace {

constexpr SheetKind kKinds[] = {
    {"section", "Side section",
     "Heights, the line of sight under the mouth's edge, and what stays hidden.", section_sheet},
    {"elevation", "Front elevation",
     "The mouth's true shape, every height and width, and every cook to scale.", elevation_sheet},
    {"plan", "Plan",
     "Where people stand, what must stay free, where a hot pizza goes, what the peel needs.",
     plan_sheet},
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
