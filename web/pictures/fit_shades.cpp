#include "web/pictures/fit_shades.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "engine/sight/sight.h"

namespace hs::web {
namespace {

// Shades by what is hidden: darker and closer hatched the less is seen.
struct Shade {
  float below;  // share seen
  Tone tone;
  int every;  // hatched by each n-th line; 0: not
};
constexpr Shade kShades[] = {
    {0.25F, Tone::FailWash, 1},
    {0.50F, Tone::FailWash, 2},
    {0.75F, Tone::WarnWash, 3},
    {0.90F, Tone::WarnWash, 6},
    {static_cast<float>(sight::kAllSeen), Tone::WarnWash, 0},
    {2.0F, Tone::Card, 0},
};
constexpr float kHatchSpacing = 5;

std::size_t shade_of(float share) {
  std::size_t i = 0;
  while (share >= kShades[i].below) ++i;
  return i;
}

// The shade under a point of the screen inside the area.
std::size_t shade_at(const FitFrame& frame, float x, float y) {
  const Rect& a = frame.area;
  const auto cell = [](float part, int count) {
    return std::clamp(static_cast<int>(part * static_cast<float>(count)), 0, count - 1);
  };
  const int column = cell((x - a.x) / a.w, frame.map.columns);
  const int row = cell((a.bottom() - y) / a.h, frame.map.rows);
  return shade_of(frame.map.share[frame.index(column, row)]);
}

// The same hatch inside one box.
void hatch_box(const Ui& ui, const Rect& box, int every) {
  if (every == 0) return;
  const float spacing = kHatchSpacing * static_cast<float>(every);
  for (float sum = std::ceil((box.x + box.y) / spacing) * spacing; sum < box.right() + box.bottom();
       sum += spacing) {
    const float from = std::max(box.x, sum - box.bottom());
    const float to = std::min(box.right(), sum - box.y);
    if (to > from) {
      ui.draw->AddLine(ImVec2(from, sum - from), ImVec2(to, sum - to), ui.colour(Tone::Hidden),
                       1.2F);
    }
  }
}

// Long lines over the whole map, each drawn where the shade under it asks for it, so that the hatch
// has no seams.
void draw_hatch(const Ui& ui, const FitFrame& frame) {
  const Rect& a = frame.area;
  const ImU32 colour = ui.colour(Tone::Hidden);
  constexpr float kStep = 1.5F;
  int n = static_cast<int>(std::ceil((a.x + a.y) / kHatchSpacing));
  for (; static_cast<float>(n) * kHatchSpacing < a.right() + a.bottom(); ++n) {
    const float sum = static_cast<float>(n) * kHatchSpacing;
    const float last = std::min(a.right(), sum - a.y);
    float start = -1;
    for (float x = std::max(a.x, sum - a.bottom());; x += kStep) {
      const bool over = x >= last;
      const float here = over ? last : x;
      const int every = kShades[shade_at(frame, here, sum - here)].every;
      const bool on = !over && every > 0 && n % every == 0;
      if (on && start < 0) start = here;
      if (!on && start >= 0) {
        ui.draw->AddLine(ImVec2(start, sum - start), ImVec2(here, sum - here), colour, 1.2F);
        start = -1;
      }
      if (over) break;
    }
  }
}

void draw_cells(const Ui& ui, const FitFrame& frame) {
  ui.draw->AddRectFilled(ImVec2(frame.area.x, frame.area.y),
                         ImVec2(frame.area.right(), frame.area.bottom()), ui.colour(Tone::Card));
  for (int row = 0; row < frame.map.rows; ++row) {
    int start = 0;
    std::size_t shade = shade_of(frame.map.share[frame.index(0, row)]);
    for (int column = 1; column <= frame.map.columns; ++column) {
      const std::size_t here = column == frame.map.columns
                                   ? std::size_t{99}
                                   : shade_of(frame.map.share[frame.index(column, row)]);
      if (here == shade) continue;
      const Rect run = frame.cells(start, column - start, row);
      // Half a pixel over the row below, or hairlines would show between them.
      ui.draw->AddRectFilled(ImVec2(run.x, run.y), ImVec2(run.right(), run.bottom() + 0.5F),
                             ui.colour(kShades[shade].tone));
      start = column;
      shade = here;
    }
  }
}

// The good places of each row from left to right, where each row has one run of them and the rows
// follow each other; empty otherwise.
struct Edges {
  int first_row = 0;
  std::vector<float> left, right;  // CSS px
};
Edges edges_of(const FitFrame& frame) {
  const evaluate::FitMap& map = frame.map;
  Edges edges;
  bool ended = false;
  for (int row = 0; row < map.rows; ++row) {
    int first = -1;
    int last = -1;
    int runs = 0;
    for (int column = 0; column < map.columns; ++column) {
      if (map.good[frame.index(column, row)] == 0) continue;
      if (last != column - 1 || first < 0) ++runs;
      if (first < 0) first = column;
      last = column;
    }
    if (first < 0) {
      ended = !edges.left.empty();
      continue;
    }
    if (runs > 1 || ended) return {};
    if (edges.left.empty()) edges.first_row = row;
    const Rect run = frame.cells(first, last - first + 1, row);
    edges.left.push_back(run.x);
    edges.right.push_back(run.right());
  }
  return edges;
}

// Each value as the mean of its neighbours': takes the steps of the grid out of a slope.
std::vector<float> smoothed(const std::vector<float>& values) {
  std::vector<float> out(values.size());
  const int count = static_cast<int>(values.size());
  for (int i = 0; i < count; ++i) {
    const int reach = std::min({4, i, count - 1 - i});
    float sum = 0;
    for (int j = i - reach; j <= i + reach; ++j) sum += values[static_cast<std::size_t>(j)];
    out[static_cast<std::size_t>(i)] = sum / static_cast<float>(2 * reach + 1);
  }
  return out;
}

}  // namespace

float draw_good(const Ui& ui, const FitFrame& frame) {
  const evaluate::FitMap& map = frame.map;
  const Edges edges = edges_of(frame);
  if (edges.left.size() >= 2) {
    const std::vector<float> left = smoothed(edges.left);
    const std::vector<float> right = smoothed(edges.right);
    std::vector<ImVec2> shape;
    const auto level = [&](std::size_t i, float part) {
      const Rect row = frame.cells(0, 1, edges.first_row + static_cast<int>(i));
      return row.bottom() - part * row.h;
    };
    const std::size_t count = left.size();
    for (std::size_t i = 0; i < count; ++i) {
      shape.push_back(ImVec2(left[i], level(i, i + 1 == count ? 1.0F : i == 0 ? 0.0F : 0.5F)));
    }
    for (std::size_t i = count; i-- > 0;) {
      shape.push_back(ImVec2(right[i], level(i, i + 1 == count ? 1.0F : i == 0 ? 0.0F : 0.5F)));
    }
    ui.draw->AddConcavePolyFilled(shape.data(), static_cast<int>(shape.size()),
                                  ui.colour(Tone::GoodWash));
    ui.draw->AddPolyline(shape.data(), static_cast<int>(shape.size()), ui.colour(Tone::Good),
                         ImDrawFlags_Closed, 3);
    return *std::max_element(right.begin(), right.end());
  }
  // Scattered places: each cell by itself.
  float rightmost = 0;
  for (int row = 0; row < map.rows; ++row) {
    for (int column = 0; column < map.columns; ++column) {
      if (map.good[frame.index(column, row)] == 0) continue;
      const Rect cell = frame.cells(column, 1, row);
      ui.draw->AddRectFilled(ImVec2(cell.x, cell.y), ImVec2(cell.right(), cell.bottom()),
                             ui.colour(Tone::Good));
      rightmost = std::max(rightmost, cell.right());
    }
  }
  return rightmost;
}

void draw_shades(const Ui& ui, const FitFrame& frame) {
  draw_cells(ui, frame);
  draw_hatch(ui, frame);
}

namespace {

// A number stands between the shades that it parts.
constexpr std::string_view kNumbers[] = {"0", "25", "50", "75", "90", "all"};
constexpr std::size_t kSwatches = std::size(kNumbers) - 1;
constexpr float kKeyGap = 4, kLeastSwatch = 14;

float numbers_width(const Ui& ui) {
  float wide = 0;
  for (const std::string_view number : kNumbers) wide += ui.width(number, kTextSmall) + 2 * kKeyGap;
  return wide;
}
float caption_width(const Ui& ui, std::string_view caption) {
  return ui.width(caption, kTextSmall) + 2 * kKeyGap;
}

}  // namespace

bool shade_key_fits(const Ui& ui, std::string_view caption, float room) {
  return caption_width(ui, caption) + numbers_width(ui) + kSwatches * kLeastSwatch <= room;
}

void draw_shade_key(const Ui& ui, std::string_view caption, float x, float y, float room) {
  constexpr float kGap = kKeyGap, kHigh = 14;
  const bool one_line = shade_key_fits(ui, caption, room);
  const float before = one_line ? caption_width(ui, caption) : 0;
  const float wide = std::clamp((room - before - numbers_width(ui)) / static_cast<float>(kSwatches),
                                kLeastSwatch, 40.0F);
  ui.text(x, one_line ? y : y - kShadeKeyLine, caption, kTextSmall, Tone::Ink);
  x += before;
  for (std::size_t i = 0; i < std::size(kNumbers); ++i) {
    ui.text(x, y, kNumbers[i], kTextSmall, Tone::Ink);
    x += ui.width(kNumbers[i], kTextSmall) + kGap;
    if (i == kSwatches) break;
    const Rect box{x, y - kHigh / 2, wide, kHigh};
    ui.fill(box, kShades[i].tone, 0);
    hatch_box(ui, box.inset(1.5F), kShades[i].every);
    ui.frame(box, Tone::Ink, 1, 0);
    x += wide + kGap;
  }
}

}  // namespace hs::web
