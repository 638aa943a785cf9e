#pragma once
// One sheet for the page: {"title", "description", "svg", "table"?}.

#include <cstdint>
#include <string>
#include <string_view>

#include "engine/report/sheet.h"

namespace hs::report {

enum class SheetUse : std::uint8_t {
  Sun,  // shown by the page, as wide as its place
  Dusk,
  File,  // saved: true to scale, and it dresses itself
};

// "{}" for a name that there is none of.
std::string sheet_json(std::string_view name, const config::Config& config,
                       const evaluate::Evaluation& evaluation, const SheetView& view, SheetUse use);

}  // namespace hs::report
