#include "web/pictures/fit_picture.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "web/app/widgets.h"

namespace hs::web {
namespace {

constexpr int kColumns = 96;
constexpr int kRows = 64;
constexpr float kLabel = kTextSmall;

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

// Where the map lies on the screen.
struct Frame {
  const evaluate::FitMap& map;
  Rect area;
  float x_of(double floor_mm) const {
    const double part = (floor_mm - map.floor_low_mm) / (map.floor_high_mm - map.floor_low_mm);
    return area.x + area.w * static_cast<float>(std::clamp(part, 0.0, 1.0));
  }
  float y_of(double standoff_mm) const {
    const double part =
        (standoff_mm - map.standoff_low_mm) / (map.standoff_high_mm - map.standoff_low_mm);
    return area.bottom() - area.h * static_cast<float>(std::clamp(part, 0.0, 1.0));
  }
  double floor_at(float x) const {
    return map.floor_low_mm +
           static_cast<double>((x - area.x) / area.w) * (map.floor_high_mm - map.floor_low_mm);
  }
  double standoff_at(float y) const {
    return map.standoff_low_mm + static_cast<double>((area.bottom() - y) / area.h) *
                                     (map.standoff_high_mm - map.standoff_low_mm);
  }
  // The samples stand on the corners of the grid; each is shown as the cell around it.
  Rect cells(int column, int count, int row) const {
    const float cw = area.w / static_cast<float>(map.columns);
    const float ch = area.h / static_cast<float>(map.rows);
    return {area.x + cw * static_cast<float>(column),
            area.bottom() - ch * static_cast<float>(row + 1), cw * static_cast<float>(count), ch};
  }
  // The shade under a point of the screen inside the area.
  std::size_t shade_at(float x, float y) const;
  std::size_t index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(map.columns) +
           static_cast<std::size_t>(column);
  }
};

std::size_t Frame::shade_at(float x, float y) const {
  const auto cell = [](float part, int count) {
    return std::clamp(static_cast<int>(part * static_cast<float>(count)), 0, count - 1);
  };
  const int column = cell((x - area.x) / area.w, map.columns);
  const int row = cell((area.bottom() - y) / area.h, map.rows);
  return shade_of(map.share[index(column, row)]);
}

// Long lines over the whole map, each drawn where the shade under it asks for it, so that the hatch
// has no seams.
void draw_hatch(const Ui& ui, const Frame& frame) {
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
      const int every = kShades[frame.shade_at(here, sum - here)].every;
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

void draw_shades(const Ui& ui, const Frame& frame) {
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
Edges edges_of(const Frame& frame) {
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

// Returns the right edge of the good places, 0 where there are none.
float draw_good(const Ui& ui, const Frame& frame) {
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

// Below this line it is too hot for a face to linger, at the least.
void draw_heat(const Ui& ui, const Frame& frame) {
  const Rect& a = frame.area;
  const std::size_t count = frame.map.heat_limit_mm.size();
  const auto point = [&](std::size_t i) {
    return ImVec2(a.x + a.w * static_cast<float>(i) / static_cast<float>(count - 1),
                  frame.y_of(static_cast<double>(frame.map.heat_limit_mm[i])));
  };
  for (std::size_t i = 0; i + 1 < count; ++i) {
    const ImVec2 from = point(i);
    const ImVec2 to = point(i + 1);
    ui.line(from.x, from.y, to.x, to.y, Tone::Fail, 2.5F);
  }
  const float y = point(0).y;
  if (a.bottom() - y > 22) {
    ui.text(a.x + 8, y + 11, "too hot to linger", kLabel, Tone::Ink, true);
  }
}

// Round numbers along an axis, in the person's unit, `least` px apart.
double tick_step(double low, double high, float length, float least, report::Units units) {
  const bool inches = units == report::Units::Inch;
  const double base = inches ? 25.4 : 50.0;
  constexpr double kMultiples[] = {1, 2, 4, 6, 12, 24};
  for (const double multiple : kMultiples) {
    const double px = static_cast<double>(length) * base * multiple / (high - low);
    if (px >= static_cast<double>(least)) return base * multiple;
  }
  return base * 48;
}

std::string tick_text(double mm, report::Units units) {
  return units == report::Units::Inch ? trimmed(mm / 25.4, 1) : trimmed(mm, 0);
}

void draw_axes(const Ui& ui, const Frame& frame, report::Units units) {
  const Rect& a = frame.area;
  const evaluate::FitMap& map = frame.map;
  const std::string unit = units == report::Units::Inch ? "in" : "mm";
  const double across = tick_step(map.floor_low_mm, map.floor_high_mm, a.w, 52, units);
  for (double n = std::ceil(map.floor_low_mm / across); n * across <= map.floor_high_mm; n += 1) {
    const float x = frame.x_of(n * across);
    ui.line(x, a.bottom(), x, a.bottom() + 4, Tone::Ink, 1.5F);
    ui.text(x, a.bottom() + 12, tick_text(n * across, units), kLabel, Tone::Ink, false,
            Side::Centre);
  }
  const double up = tick_step(map.standoff_low_mm, map.standoff_high_mm, a.h, 30, units);
  for (double n = std::ceil(map.standoff_low_mm / up); n * up <= map.standoff_high_mm; n += 1) {
    const float y = frame.y_of(n * up);
    ui.line(a.x - 4, y, a.x, y, Tone::Ink, 1.5F);
    ui.text(a.x - 7, y, tick_text(n * up, units), kLabel, Tone::Ink, false, Side::Right);
  }
  ui.frame({a.x - 1, a.y - 1, a.w + 2, a.h + 2}, Tone::Ink, 1.5F, 0);
  ui.text(a.middle_x(), a.bottom() + 27, "oven floor height, " + unit, kLabel, Tone::Ink, true,
          Side::Centre);
  ui.text(a.x - 36, a.y - 12, "distance, " + unit, kLabel, Tone::Ink, true);
}

void draw_key(const Ui& ui, const Frame& frame) {
  // Shade and hatch in words, on the axis' own line.
  const Rect& a = frame.area;
  const float y = a.y - 12;
  const std::string_view words = "all in view, hands easy";
  const float wide = ui.width(words, kLabel);
  const float x = a.right() - wide;
  ui.fill({x - 20, y - 6, 14, 12}, Tone::GoodWash, 2);
  ui.frame({x - 20, y - 6, 14, 12}, Tone::Good, 2.5F, 2);
  ui.text(a.right(), y, words, kLabel, Tone::Ink, false, Side::Right);
}

}  // namespace

void FitPicture::refresh(const config::Config& config, bool dragging) {
  config::Config key = config;
  key.station.oven_base_height_mm.reset();
  key.station.counter_height_mm.reset();
  // The map's own range grows with a far watching distance, and only then depends on it.
  key.view.standoff_mm = held_ && key_
                             ? key_->view.standoff_mm
                             : std::max(1300.0, std::ceil(key.view.standoff_mm / 100) * 100);
  if (key_ && *key_ == key && (!coarse_ || dragging)) return;
  coarse_ = dragging;
  map_ = evaluate::fit_map(key, dragging ? kColumns / 2 : kColumns, dragging ? kRows / 2 : kRows);
  key_ = std::move(key);
  ++computed_;
}

void FitPicture::draw(Ui& ui, const Rect& rect, const config::Config& config,
                      const evaluate::Evaluation& evaluation, const View& view, bool dragging,
                      Intents& intents) {
  refresh(config, dragging);
  if (map_.columns < 2) {
    ui.paragraph(rect.inset(16), "Nobody works at the oven, so there is nothing to map.", kText,
                 kTextSmall, 3, Tone::Ink, false, Side::Centre);
    return;
  }
  const Frame frame{map_, {rect.x + 42, rect.y + 26, rect.w - 52, rect.h - 64}};
  draw_shades(ui, frame);
  draw_hatch(ui, frame);
  const float good_right = draw_good(ui, frame);
  if (good_right > 0 && frame.area.right() - good_right > 70) {
    ui.paragraph({good_right + 6, frame.area.y + 6, frame.area.right() - good_right - 12, 34},
                 "too high for the hands", kLabel, kLabel, 2, Tone::Ink, false, Side::Centre);
    ui.line(good_right, frame.area.y, good_right, frame.area.bottom(), Tone::Good, 2);
  }
  draw_heat(ui, frame);
  draw_axes(ui, frame, view.units);
  draw_key(ui, frame);

  if (!evaluation.used.oven_floor_mm) return;
  const float x = frame.x_of(*evaluation.used.oven_floor_mm);
  const float y = frame.y_of(config.view.standoff_mm);
  // The target stays inside the picture even where the point is at its edge.
  const float half = kTarget / 2;
  const Rect around{std::clamp(x - half, rect.x, rect.right() - kTarget),
                    std::clamp(y - half, rect.y, rect.bottom() - kTarget), kTarget, kTarget};
  const std::string value = "[" + trimmed(*evaluation.used.oven_floor_mm, 1) + "," +
                            trimmed(config.view.standoff_mm, 1) + "]";
  const Touch touch =
      ui.target("action:fit_point", "Oven floor height and watching distance", around, value);
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  double floor_mm = *evaluation.used.oven_floor_mm;
  double standoff_mm = config.view.standoff_mm;
  const double step = view.units == report::Units::Inch ? 6.35 : 5;
  bool moved = false;
  if (touch.began) {
    held_ = true;
    grab_x_ = pointer.x - x;
    grab_y_ = pointer.y - y;
  } else if (touch.held && held_ && ImGui::IsMousePosValid()) {
    const float px = std::clamp(pointer.x - grab_x_, frame.area.x, frame.area.right());
    const float py = std::clamp(pointer.y - grab_y_, frame.area.y, frame.area.bottom());
    moved = std::abs(px - x) > 1 || std::abs(py - y) > 1;
    if (moved) {
      floor_mm = frame.floor_at(px);
      standoff_mm = frame.standoff_at(py);
    }
  }
  switch (touch.key) {
    case KeyAction::Less:
    case KeyAction::More:
      floor_mm += touch.key == KeyAction::More ? step : -step;
      moved = true;
      break;
    case KeyAction::MuchLess:
    case KeyAction::MuchMore:
      standoff_mm += touch.key == KeyAction::MuchMore ? 4 * step : -4 * step;
      moved = true;
      break;
    case KeyAction::None:
    case KeyAction::Least:
    case KeyAction::Most:
    case KeyAction::Press:
    case KeyAction::Closer:
    case KeyAction::Farther:
      break;
  }
  if (moved) {
    // What stands on marks is the height that is built, not the floor inside the oven.
    const auto drag = [&intents](std::string_view path, double mm, double step_mm) {
      const config::Field* field = config::find_field(path);
      if (field == nullptr) return;
      intents.push_back(
          {Ask::Drag, std::string(path), snapped(mm, step_mm, field->min, field->max)});
    };
    drag("station.oven_base_height_mm", floor_mm - config.oven.floor_above_base_mm, step);
    drag("view.standoff_mm", standoff_mm, 2 * step);
    if (!touch.held) intents.push_back({Ask::DragEnd, {}, 0});
  }
  if (touch.ended && held_) {
    held_ = false;
    intents.push_back({Ask::DragEnd, {}, 0});
  }
  if (touch.hovered || touch.held) ui.cursor = "move";
  ui.line(x, frame.area.y, x, frame.area.bottom(), Tone::Ink, 1);
  ui.line(frame.area.x, y, frame.area.right(), y, Tone::Ink, 1);
  ui.draw->AddCircleFilled(ImVec2(x, y), 13, ui.colour(Tone::Card), 32);
  ui.draw->AddCircleFilled(ImVec2(x, y), 10, ui.colour(Tone::Accent), 32);
  ui.draw->AddCircleFilled(ImVec2(x, y), 3.5F, ui.colour(Tone::OnAccent), 16);
}

}  // namespace hs::web
