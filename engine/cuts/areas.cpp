#include "engine/cuts/areas.h"

#include <algorithm>

namespace hs::cuts {
namespace {

Areas::Type type_of(const SheetJob& job, const SheetPart& part) {
  Areas::Type type{part.width + job.kerf, part.height + job.kerf};
  if (job.turn && type.w < type.h) std::swap(type.w, type.h);
  return type;
}

bool is_before(const Areas::Type& a, const Areas::Type& b) {
  const std::int64_t a_area = a.w * a.h, b_area = b.w * b.h;
  if (a_area != b_area) return a_area > b_area;
  return a.w != b.w ? a.w > b.w : a.h > b.h;
}

// Functions f from 0..whole to 0..top with: what fits beside each other adds up to no more than top
// after f as well.
struct Scale {
  enum class Kind : std::uint8_t { Plain, Kth, Split } kind = Kind::Plain;
  std::int64_t value = 0;  // k, or the size that smaller ones count for nothing at

  std::int64_t top(std::int64_t whole) const { return kind == Kind::Kth ? value * whole : whole; }
  std::int64_t of(std::int64_t size, std::int64_t whole) const {
    switch (kind) {
      case Kind::Plain:
        return size;
      case Kind::Kth: {
        const std::int64_t scaled = (value + 1) * size;
        return scaled % whole == 0 ? value * size : scaled / whole * whole;
      }
      case Kind::Split:
        if (size > whole - value) return whole;
        return size < value ? 0 : size;
    }
    return size;
  }
};

std::vector<Scale> scales_of(std::vector<std::int64_t> sizes, std::int64_t whole) {
  constexpr std::int64_t kMostKths = 6;
  constexpr std::size_t kMostSplits = 24;
  std::vector<Scale> scales{{}};
  for (std::int64_t k = 1; k <= kMostKths; ++k) scales.push_back({Scale::Kind::Kth, k});
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
  std::size_t splits = 0;
  for (const std::int64_t size : sizes) {
    if (2 * size > whole || splits == kMostSplits) continue;
    scales.push_back({Scale::Kind::Split, size});
    ++splits;
  }
  return scales;
}

}  // namespace

Areas areas_of(const SheetJob& job) {
  Areas areas;
  areas.w = job.width - 2 * job.trim + job.kerf;
  areas.h = job.height - 2 * job.trim + job.kerf;
  areas.turn = job.turn;
  std::vector<Areas::Type> all;
  for (const SheetPart& part : job.parts) all.push_back(type_of(job, part));
  std::sort(all.begin(), all.end(), is_before);
  for (const Areas::Type& type : all) {
    if (areas.types.empty() || is_before(areas.types.back(), type)) {
      areas.types.push_back(type);
      areas.demand.push_back(0);
    }
    ++areas.demand.back();
  }
  return areas;
}

int cut_off(Tiles& tiles, int tile, Pane::Kind kind, std::int64_t at) {
  Tile whole = tiles[static_cast<std::size_t>(tile)];
  const bool across = kind == Pane::Kind::Across;
  if ((across ? whole.w : whole.h) == at) return tile;
  Tile first = whole, second = whole;
  (across ? first.w : first.h) = at;
  (across ? second.w : second.h) -= at;
  whole.kind = kind;
  whole.first = static_cast<int>(tiles.size());
  whole.second = whole.first + 1;
  tiles[static_cast<std::size_t>(tile)] = whole;
  tiles.push_back(first);
  tiles.push_back(second);
  return whole.first;
}

void cut_part(Tiles& tiles, int tile, int type, std::int64_t w, std::int64_t h, Pane::Kind first) {
  if (first == Pane::Kind::Across) {
    tile = cut_off(tiles, cut_off(tiles, tile, Pane::Kind::Across, w), Pane::Kind::Along, h);
  } else {
    tile = cut_off(tiles, cut_off(tiles, tile, Pane::Kind::Along, h), Pane::Kind::Across, w);
  }
  tiles[static_cast<std::size_t>(tile)].kind = Pane::Kind::Part;
  tiles[static_cast<std::size_t>(tile)].type = type;
}

std::int64_t largest_offcut(const Layout& layout) {
  std::int64_t largest = 0;
  for (const Tiles& tiles : layout) {
    for (const Tile& tile : tiles) {
      if (tile.kind == Pane::Kind::Offcut) largest = std::max(largest, tile.w * tile.h);
    }
  }
  return largest;
}

std::vector<SheetCuts> sheets_of(const SheetJob& job, const Areas& areas, const Layout& layout) {
  // The parts of each type, first written first.
  std::vector<std::vector<std::size_t>> waiting(areas.types.size());
  for (std::size_t i = job.parts.size(); i-- > 0;) {
    const auto at = std::lower_bound(areas.types.begin(), areas.types.end(),
                                     type_of(job, job.parts[i]), is_before);
    waiting[static_cast<std::size_t>(at - areas.types.begin())].push_back(i);
  }
  std::vector<SheetCuts> sheets;
  for (const Tiles& tiles : layout) {
    SheetCuts cuts;
    for (const Tile& tile : tiles) {
      Pane pane;
      pane.kind = tile.kind;
      pane.width = std::max<std::int64_t>(0, tile.w - job.kerf);
      pane.height = std::max<std::int64_t>(0, tile.h - job.kerf);
      pane.first = static_cast<std::size_t>(tile.first);
      pane.second = static_cast<std::size_t>(tile.second);
      if (tile.kind == Pane::Kind::Part) {
        std::vector<std::size_t>& parts = waiting[static_cast<std::size_t>(tile.type)];
        pane.part = parts.back();
        parts.pop_back();
      } else if (tile.kind != Pane::Kind::Offcut) {
        const Tile& first = tiles[pane.first];
        pane.at = (tile.kind == Pane::Kind::Across ? first.w : first.h) - job.kerf;
      }
      cuts.push_back(pane);
    }
    sheets.push_back(std::move(cuts));
  }
  return sheets;
}

std::int64_t sheets_bound(const Areas& areas) {
  std::vector<std::int64_t> widths, heights;
  for (const Areas::Type& type : areas.types) {
    widths.push_back(type.w);
    heights.push_back(type.h);
  }
  if (areas.turn) {
    widths.insert(widths.end(), heights.begin(), heights.end());
    heights = widths;
  }
  std::int64_t bound = 0;
  const std::vector<Scale> across = scales_of(widths, areas.w), along = scales_of(heights, areas.h);
  for (const Scale& x : across) {
    for (const Scale& y : along) {
      const std::int64_t sheet = x.top(areas.w) * y.top(areas.h);
      std::int64_t sum = 0, whole = 0;
      for (std::size_t i = 0; i < areas.types.size(); ++i) {
        const Areas::Type& type = areas.types[i];
        const bool stands = type.w <= areas.w && type.h <= areas.h;
        const bool turns = areas.turn && type.h <= areas.w && type.w <= areas.h;
        std::int64_t own = stands ? x.of(type.w, areas.w) * y.of(type.h, areas.h) : sheet;
        if (turns) own = std::min(own, x.of(type.h, areas.w) * y.of(type.w, areas.h));
        // Whole sheets and their rest apart, so that long lists stay in range.
        for (int n = areas.demand[i]; n > 0; --n) {
          sum += own;
          whole += sum / sheet;
          sum %= sheet;
        }
      }
      bound = std::max(bound, whole + (sum > 0 ? 1 : 0));
    }
  }
  return bound;
}

}  // namespace hs::cuts
