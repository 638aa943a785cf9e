#include "engine/cuts/sheet_quick.h"

#include <algorithm>

namespace hs::cuts {
namespace {

struct Random {
  std::uint32_t state;
  std::uint32_t next() {
    state ^= state << 13;
    state ^= state >> 17;
    state ^= state << 5;
    return state;
  }
};

std::int64_t key(const Areas::Type& type, QuickWay::Order order) {
  switch (order) {
    case QuickWay::Order::Area:
      return type.w * type.h;
    case QuickWay::Order::Height:
      return type.h * 4'000'000 + type.w;
    case QuickWay::Order::Width:
      return type.w * 4'000'000 + type.h;
    case QuickWay::Order::Longest:
      return std::max(type.w, type.h) * 4'000'000 + std::min(type.w, type.h);
    case QuickWay::Order::Around:
      return type.w + type.h;
  }
  return 0;
}

std::vector<int> parts_in_order(const Areas& areas, const std::vector<int>& demand,
                                const QuickWay& way) {
  std::vector<int> parts;
  for (std::size_t type = 0; type < demand.size(); ++type) {
    parts.insert(parts.end(), static_cast<std::size_t>(demand[type]), static_cast<int>(type));
  }
  std::stable_sort(parts.begin(), parts.end(), [&](int a, int b) {
    return key(areas.types[static_cast<std::size_t>(a)], way.order) >
           key(areas.types[static_cast<std::size_t>(b)], way.order);
  });
  if (way.shuffle == 0) return parts;
  // Some parts change place with one a little further on.
  Random random{way.shuffle * 2654435761u | 1u};
  for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
    if (random.next() % 4 != 0) continue;
    std::swap(parts[i], parts[std::min(parts.size() - 1, i + 1 + random.next() % 6)]);
  }
  return parts;
}

// Which of the two cuts around a part comes first.
Pane::Kind first_cut(const Tile& offcut, std::int64_t w, std::int64_t h, QuickWay::Split split) {
  const std::int64_t right = offcut.w - w, above = offcut.h - h;
  // The larger of what is left when the sheet is cut across first, or along.
  const std::int64_t across = std::max(right * offcut.h, w * above);
  const std::int64_t along = std::max(above * offcut.w, h * right);
  switch (split) {
    case QuickWay::Split::Across:
      return Pane::Kind::Across;
    case QuickWay::Split::Along:
      return Pane::Kind::Along;
    case QuickWay::Split::LargerOffcut:
      return across > along ? Pane::Kind::Across : Pane::Kind::Along;
    case QuickWay::Split::SmallerOffcut:
      return across > along ? Pane::Kind::Along : Pane::Kind::Across;
  }
  return Pane::Kind::Across;
}

struct Offcut {
  std::size_t sheet = 0;
  int tile = 0;
};

}  // namespace

QuickWay quick_way(std::uint32_t number) {
  constexpr QuickWay::Order kOrders[] = {QuickWay::Order::Area, QuickWay::Order::Height,
                                         QuickWay::Order::Width, QuickWay::Order::Longest,
                                         QuickWay::Order::Around};
  constexpr QuickWay::Choice kChoices[] = {
      QuickWay::Choice::First, QuickWay::Choice::SmallestOffcut, QuickWay::Choice::TightestSide};
  constexpr QuickWay::Split kSplits[] = {QuickWay::Split::Across, QuickWay::Split::Along,
                                         QuickWay::Split::LargerOffcut,
                                         QuickWay::Split::SmallerOffcut};
  return {kOrders[number / 12 % 5], kChoices[number / 4 % 3], kSplits[number % 4],
          number / kQuickWays};
}

Layout quick_plan(const Areas& areas, const std::vector<int>& demand, const QuickWay& way,
                  Meter& meter) {
  Layout layout;
  std::vector<Offcut> offcuts;  // those that may still hold a part
  std::int64_t smallest = areas.w + areas.h;
  for (std::size_t i = 0; i < areas.types.size(); ++i) {
    if (demand[i] > 0) smallest = std::min({smallest, areas.types[i].w, areas.types[i].h});
  }
  for (const int type : parts_in_order(areas, demand, way)) {
    const Areas::Type& part = areas.types[static_cast<std::size_t>(type)];
    constexpr auto kNone = static_cast<std::size_t>(-1);
    std::size_t chosen = kNone;
    std::int64_t least = 0, w = 0, h = 0;
    const auto look_at = [&](std::size_t i) {
      const Tile& tile = layout[offcuts[i].sheet][static_cast<std::size_t>(offcuts[i].tile)];
      for (const bool turned : {false, true}) {
        if (turned && (!areas.turn || part.w == part.h)) break;
        const std::int64_t right = tile.w - (turned ? part.h : part.w);
        const std::int64_t above = tile.h - (turned ? part.w : part.h);
        if (right < 0 || above < 0) continue;
        const std::int64_t loss = way.choice == QuickWay::Choice::SmallestOffcut
                                      ? tile.w * tile.h
                                      : std::min(right, above);
        if (chosen != kNone && loss >= least) continue;
        chosen = i;
        least = loss;
        w = tile.w - right;
        h = tile.h - above;
      }
    };
    for (std::size_t i = 0; i < offcuts.size(); ++i) {
      look_at(i);
      if (way.choice == QuickWay::Choice::First && chosen != kNone) break;
    }
    meter.work += 20 + static_cast<std::int64_t>(offcuts.size()) * 2;
    if (chosen == kNone) {
      layout.push_back({{Pane::Kind::Offcut, areas.w, areas.h}});
      offcuts.push_back({layout.size() - 1, 0});
      look_at(offcuts.size() - 1);
    }
    const Offcut taken = offcuts[chosen];
    Tiles& tiles = layout[taken.sheet];
    const auto before = static_cast<int>(tiles.size());
    cut_part(tiles, taken.tile, type, w, h,
             first_cut(tiles[static_cast<std::size_t>(taken.tile)], w, h, way.split));
    offcuts.erase(offcuts.begin() + static_cast<std::ptrdiff_t>(chosen));
    // New ones stand where the old one stood, the later cut's first.
    for (int tile = before; tile < static_cast<int>(tiles.size()); ++tile) {
      const Tile& left = tiles[static_cast<std::size_t>(tile)];
      if (left.kind != Pane::Kind::Offcut || std::min(left.w, left.h) < smallest) continue;
      offcuts.insert(offcuts.begin() + static_cast<std::ptrdiff_t>(chosen), {taken.sheet, tile});
    }
  }
  return layout;
}

Layout strip_plan(const Areas& areas, Pane::Kind kind, bool upright, Meter& meter) {
  const bool flat = kind == Pane::Kind::Along;
  const std::int64_t sheet_length = flat ? areas.w : areas.h;
  const std::int64_t sheet_height = flat ? areas.h : areas.w;
  struct Cut {
    std::int64_t length, height;
    int type;
  };
  std::vector<Cut> parts;
  for (std::size_t i = 0; i < areas.types.size(); ++i) {
    const Areas::Type& type = areas.types[i];
    Cut cut{flat ? type.w : type.h, flat ? type.h : type.w, static_cast<int>(i)};
    if (areas.turn) {
      const bool fits_turned = cut.height <= sheet_length && cut.length <= sheet_height;
      const bool fits = cut.length <= sheet_length && cut.height <= sheet_height;
      const bool wants = upright != (cut.height >= cut.length);
      if (fits_turned && (wants || !fits)) std::swap(cut.length, cut.height);
    }
    parts.insert(parts.end(), static_cast<std::size_t>(areas.demand[i]), cut);
  }
  std::stable_sort(parts.begin(), parts.end(), [](const Cut& a, const Cut& b) {
    return a.height != b.height ? a.height > b.height : a.length > b.length;
  });
  struct Strip {
    std::size_t sheet;
    int rest;  // the offcut at its end
  };
  std::vector<Strip> strips;
  std::vector<int> tops;  // the offcut above the strips of each sheet
  Layout layout;
  const auto length_of = [&](const Tile& tile) { return flat ? tile.w : tile.h; };
  const auto height_of = [&](const Tile& tile) { return flat ? tile.h : tile.w; };
  const Pane::Kind end_cut = flat ? Pane::Kind::Across : Pane::Kind::Along;
  for (const Cut& part : parts) {
    meter.work += 20 + static_cast<std::int64_t>(strips.size());
    const auto tile_of = [&](std::size_t sheet, int tile) -> const Tile& {
      return layout[sheet][static_cast<std::size_t>(tile)];
    };
    auto strip = std::find_if(strips.begin(), strips.end(), [&](const Strip& open) {
      const Tile& rest = tile_of(open.sheet, open.rest);
      return open.rest >= 0 && length_of(rest) >= part.length && height_of(rest) >= part.height;
    });
    if (strip == strips.end()) {
      std::size_t sheet = 0;
      while (sheet < layout.size() &&
             (tops[sheet] < 0 || height_of(tile_of(sheet, tops[sheet])) < part.height)) {
        ++sheet;
      }
      if (sheet == layout.size()) {
        layout.push_back({{Pane::Kind::Offcut, areas.w, areas.h}});
        tops.push_back(0);
      }
      const int own = cut_off(layout[sheet], tops[sheet], kind, part.height);
      tops[sheet] = own == tops[sheet] ? -1 : own + 1;
      strips.push_back({sheet, own});
      strip = strips.end() - 1;
    }
    Tiles& tiles = layout[strip->sheet];
    const int own = cut_off(tiles, strip->rest, end_cut, part.length);
    strip->rest = own == strip->rest ? -1 : own + 1;
    cut_part(tiles, own, part.type, flat ? part.length : part.height,
             flat ? part.height : part.length, kind);
  }
  return layout;
}

}  // namespace hs::cuts
