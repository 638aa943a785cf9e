#include "engine/cuts/sheet_exact.h"

#include <algorithm>

namespace hs::cuts {

std::int64_t SheetExact::size_of(const Areas& areas) {
  std::int64_t splits = 1;
  for (const std::int64_t count : areas.demand) {
    splits *= (count + 1) * (count + 2) / 2;
    if (splits > kMostExact) return splits;
  }
  return splits;
}

SheetExact::SheetExact(const Areas& areas) : areas_(areas) {
  std::size_t choices = 1;
  for (const int count : areas.demand) {
    weight_.push_back(choices);
    choices *= static_cast<std::size_t>(count) + 1;
  }
  corners_.resize(choices);
  sheets_.assign(choices, 0);
  first_sheet_.assign(choices, 0);
}

// Every way to part a choice in two, each once: the smaller number first. Numbers of choices add up
// as the choices do.
template <typename Fn>
void SheetExact::each_split(std::size_t choice, Fn fn) const {
  const std::size_t types = weight_.size();
  std::vector<std::size_t> most(types), own(types, 0);
  for (std::size_t i = 0; i < types; ++i) {
    most[i] = choice / weight_[i] % (static_cast<std::size_t>(areas_.demand[i]) + 1);
  }
  std::size_t part = 0;
  for (;;) {
    std::size_t i = 0;
    while (i < types && own[i] == most[i]) {
      part -= own[i] * weight_[i];
      own[i++] = 0;
    }
    if (i == types) return;
    ++own[i];
    part += weight_[i];
    if (2 * part <= choice && fn(part, choice - part)) return;
  }
}

void SheetExact::put(Corners& corners, const Corner& corner) const {
  if (corner.w > areas_.w || corner.h > areas_.h) return;
  auto at = std::lower_bound(corners.begin(), corners.end(), corner,
                             [](const Corner& a, const Corner& b) { return a.w < b.w; });
  if (at != corners.begin() && (at - 1)->h <= corner.h) return;
  if (at != corners.end() && at->w == corner.w && at->h <= corner.h) return;
  auto end = at;
  while (end != corners.end() && end->h >= corner.h) ++end;
  at = corners.erase(at, end);
  corners.insert(at, corner);
}

// Beside each other and above each other. Of each only those are tried that can be corners: beside
// each other at every height that one of the two needs, and the narrowest the other has for it.
void SheetExact::join(const Corners& a, const Corners& b, Corners& out) const {
  for (std::size_t i = 0, k = 0; i < a.size() && k < b.size();) {
    // Both lists from the highest on: the higher of the two decides, and goes on.
    put(out, {a[i].w + b[k].w, std::max(a[i].h, b[k].h)});
    const std::int64_t height = std::max(a[i].h, b[k].h);
    const bool a_high = a[i].h == height, b_high = b[k].h == height;
    i += a_high;
    k += b_high;
  }
  for (std::size_t i = a.size(), k = b.size(); i > 0 && k > 0;) {
    // From the widest on.
    put(out, {std::max(a[i - 1].w, b[k - 1].w), a[i - 1].h + b[k - 1].h});
    const std::int64_t width = std::max(a[i - 1].w, b[k - 1].w);
    const bool a_wide = a[i - 1].w == width, b_wide = b[k - 1].w == width;
    i -= a_wide;
    k -= b_wide;
  }
}

bool SheetExact::advance(Meter& meter) {
  if (next_ >= corners_.size()) return false;
  const std::size_t choice = next_++;
  std::int64_t area = 0;
  for (std::size_t i = 0; i < weight_.size(); ++i) {
    const auto count = static_cast<std::int64_t>(choice / weight_[i] %
                                                 (static_cast<std::size_t>(areas_.demand[i]) + 1));
    area += count * areas_.types[i].w * areas_.types[i].h;
  }
  Corners corners;
  const auto single = std::find(weight_.begin(), weight_.end(), choice);
  if (single != weight_.end()) {
    const Areas::Type& type = areas_.types[static_cast<std::size_t>(single - weight_.begin())];
    put(corners, {type.w, type.h});
    if (areas_.turn) put(corners, {type.h, type.w});
  }
  const bool may_fit = area <= areas_.w * areas_.h;
  int sheets = static_cast<int>(areas_.types.size() * 100'000);
  std::size_t first = choice;
  each_split(choice, [&](std::size_t a, std::size_t b) {
    meter.work += 10;
    if (may_fit && !corners_[a].empty() && !corners_[b].empty()) {
      join(corners_[a], corners_[b], corners);
      meter.work += 15 * static_cast<std::int64_t>(corners_[a].size() + corners_[b].size());
    }
    const int together = sheets_[a] + sheets_[b];
    if (together < sheets) {
      sheets = together;
      first = a;
    }
    return false;
  });
  if (!corners.empty()) {
    sheets = 1;
    first = choice;
  }
  sheets_[choice] = sheets;
  first_sheet_[choice] = first;
  corners_[choice] = std::move(corners);
  return true;
}

void SheetExact::cut_up(Tiles& tiles, int tile, std::size_t choice) const {
  const Tile room = tiles[static_cast<std::size_t>(tile)];
  const auto fits = [](const Corner& corner, const Tile& in) {
    return corner.w <= in.w && corner.h <= in.h;
  };
  const auto single = std::find(weight_.begin(), weight_.end(), choice);
  if (single != weight_.end()) {
    const auto index = static_cast<std::size_t>(single - weight_.begin());
    for (const Corner& corner : corners_[choice]) {
      if (!fits(corner, room)) continue;
      const bool across = (room.w - corner.w) * room.h >= (room.h - corner.h) * room.w;
      cut_part(tiles, tile, static_cast<int>(index), corner.w, corner.h,
               across ? Pane::Kind::Across : Pane::Kind::Along);
      return;
    }
    return;
  }
  // The corner that leaves the largest offcut in one piece, then the split that made it.
  std::size_t a = 0, b = 0;
  Pane::Kind kind = Pane::Kind::Offcut;
  std::int64_t at = 0;
  each_split(choice, [&](std::size_t one, std::size_t two) {
    for (const Corner& p : corners_[one]) {
      for (const Corner& q : corners_[two]) {
        const bool beside = fits({p.w + q.w, std::max(p.h, q.h)}, room);
        if (!beside && !fits({std::max(p.w, q.w), p.h + q.h}, room)) continue;
        a = one;
        b = two;
        kind = beside ? Pane::Kind::Across : Pane::Kind::Along;
        at = beside ? p.w : p.h;
        return true;
      }
    }
    return false;
  });
  const int first = cut_off(tiles, tile, kind, at);
  cut_up(tiles, first, a);
  cut_up(tiles, first + 1, b);
}

Layout SheetExact::plan() const {
  Layout layout;
  // What each sheet holds, split after split.
  std::vector<std::size_t> open{corners_.size() - 1};
  while (!open.empty()) {
    const std::size_t choice = open.back();
    open.pop_back();
    if (first_sheet_[choice] != choice) {
      open.push_back(choice - first_sheet_[choice]);
      open.push_back(first_sheet_[choice]);
      continue;
    }
    // The smallest rectangle first, so that what is left of the sheet stays in one piece.
    Corner best;
    std::int64_t largest = -1;
    for (const Corner& corner : corners_[choice]) {
      const std::int64_t left =
          std::max((areas_.w - corner.w) * areas_.h, (areas_.h - corner.h) * areas_.w);
      if (left <= largest) continue;
      largest = left;
      best = corner;
    }
    Tiles tiles{{Pane::Kind::Offcut, areas_.w, areas_.h}};
    const bool across = (areas_.w - best.w) * areas_.h >= (areas_.h - best.h) * areas_.w;
    int tile = cut_off(tiles, 0, across ? Pane::Kind::Across : Pane::Kind::Along,
                       across ? best.w : best.h);
    tile = cut_off(tiles, tile, across ? Pane::Kind::Along : Pane::Kind::Across,
                   across ? best.h : best.w);
    cut_up(tiles, tile, choice);
    layout.push_back(std::move(tiles));
  }
  return layout;
}

}  // namespace hs::cuts
