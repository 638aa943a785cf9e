#include "engine/report/cut_sheets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

using evaluate::CutGroup;
using evaluate::CutStick;
using evaluate::SawnPiece;
using evaluate::SawPass;

constexpr double kSame_mm = 0.05;

bool near_by(double a, double b) { return std::abs(a - b) < kSame_mm; }

bool same(const CutGroup& group, const CutStick& a, const CutStick& b) {
  if (a.stock != b.stock || a.pieces.size() != b.pieces.size()) return false;
  for (std::size_t i = 0; i < a.pieces.size(); ++i) {
    const SawnPiece &p = a.pieces[i], &q = b.pieces[i];
    if (p.kind != q.kind || p.turned != q.turned || !near_by(p.x_mm, q.x_mm) ||
        !near_by(p.y_mm, q.y_mm) || !near_by(p.length_mm, q.length_mm) ||
        !near_by(p.width_mm, q.width_mm)) {
      return false;
    }
    if (p.kind == SawnPiece::Kind::Part && group.items[p.item].part != group.items[q.item].part) {
      return false;
    }
  }
  return true;
}

std::array<Spot, 4> corners(double x, double y, double wide, double high) {
  return {Spot{x, y}, Spot{x + wide, y}, Spot{x + wide, y + high}, Spot{x, y + high}};
}

// "29 1/4 x 22 3/16", the unit after it or not.
std::string size_text(double length_mm, double width_mm, const SheetPen& pen, bool unit) {
  const std::string length = pen.length(length_mm), width = pen.length(width_mm);
  const auto bare = [](const std::string& text) { return text.substr(0, text.rfind(' ')); };
  return bare(length) + " x " + (unit ? width : bare(width));
}

// What is written on the sheet, and the rings with the passes' numbers, each where nothing else
// stands.
class PlanLabels {
 public:
  PlanLabels(Drawing& d, const CutStick& stick, const SheetPen& pen, double kerf_mm, double trim_mm,
             double length_mm, double width_mm)
      : d_(d),
        line_(pen.line_mm()),
        kerf_(kerf_mm),
        edge_(trim_mm + 3 * kerf_mm),
        length_(length_mm),
        width_(width_mm) {
    for (const SawPass& pass : stick.passes) {
      const Spot from = spot(pass, pass.from_mm), to = spot(pass, pass.to_mm);
      lines_.push_back({from.x_mm, from.y_mm, to.x_mm, to.y_mm});
    }
  }

  // Of a part the number in the parts list and its size: both where there is room for them.
  void piece(const SawnPiece& piece, const std::string& number, const SheetPen& pen) {
    const Spot middle{piece.x_mm + piece.length_mm / 2, piece.y_mm + piece.width_mm / 2};
    const std::string size = size_text(piece.length_mm, piece.width_mm, pen, false);
    const std::size_t cross = size.find(" x ") + 2;
    const std::string longer = size.substr(0, cross), shorter = size.substr(cross + 1);
    const double wide = piece.length_mm - 0.4 * line_, high = piece.width_mm;
    const auto fits = [&](const std::string& text) { return text_width_mm(text, line_) < wide; };
    const auto put = [&](Role role, double lines_up, const std::string& text) {
      const Spot at{middle.x_mm, middle.y_mm + lines_up * line_};
      d_.text(role, at, text, Align::Centre);
      const double half = text_width_mm(text, line_) / 2;
      taken_.push_back(
          {at.x_mm - half, at.y_mm - 0.4 * line_, at.x_mm + half, at.y_mm + 0.4 * line_});
    };
    // Two lines, and between them and the edges the rings of passes.
    if (high > 3.2 * line_ && fits(size) && fits(number)) {
      put(Role::Heading, 0.6, number);
      put(Role::Label, -0.6, size);
    } else if (high > 1.05 * line_ && fits(number + "  " + size)) {
      put(Role::Heading, 0, number + "  " + size);
    } else if (high > 3.6 * line_ && fits(number) && fits(longer) && fits(shorter)) {
      put(Role::Heading, 1.1, number);
      put(Role::Label, 0, longer);
      put(Role::Label, -1.1, shorter);
    } else if (fits(number)) {
      put(Role::Heading, 0, number);
    }
  }

  // The number of a pass stands where its line ends at the stock's edge, or on the line: nothing
  // leads to it across what is sawn.
  void pass(const SawPass& pass) {
    d_.line(Role::Limit, spot(pass, pass.from_mm), spot(pass, pass.to_mm), Weight::Heavy);
    const double end = pass.along ? length_ : width_;
    const bool at_low = pass.from_mm <= edge_, at_high = pass.to_mm >= end - edge_;
    for (const double off : {1.0, 2.35}) {
      if (at_low && outside(pass, 0, -off * line_)) return;
      if (at_high && outside(pass, end, end + off * line_)) return;
    }
    const double span = pass.to_mm - pass.from_mm;
    for (const int asks : {2, 1, 0}) {
      for (const double part : {0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.07, 0.93}) {
        if (on_line(pass, pass.from_mm + part * span, asks)) return;
      }
    }
    // Nowhere on it: beyond the nearer edge, as far out as it takes.
    const bool low = pass.from_mm <= end - pass.to_mm;
    for (double off = 1; off < 12; off += 1.35) {
      const double at = low ? -off * line_ : end + off * line_;
      if (!free(ring(pass, at))) continue;
      lead(pass, low ? pass.from_mm : pass.to_mm, at);
      return;
    }
    lead(pass, low ? pass.from_mm : pass.to_mm, low ? -line_ : end + line_);
  }

 private:
  Spot spot(const SawPass& pass, double along_mm) const {
    const double at = pass.at_mm + kerf_ / 2;
    return pass.along ? Spot{along_mm, at} : Spot{at, along_mm};
  }
  Box ring(const SawPass& pass, double along_mm) const {
    const Spot at = spot(pass, along_mm);
    const double half = 0.58 * line_;
    return {at.x_mm - half, at.y_mm - half, at.x_mm + half, at.y_mm + half};
  }
  static bool lap(const Box& a, const Box& b) {
    return a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.bottom_mm < b.top_mm &&
           b.bottom_mm < a.top_mm;
  }
  bool free(const Box& box) const {
    return std::none_of(taken_.begin(), taken_.end(),
                        [&box](const Box& other) { return lap(box, other); });
  }
  // Its own line lies under it, no other may.
  bool crossed(const SawPass& pass, const Box& box) const {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (static_cast<int>(i) + 1 == pass.number) continue;
      const Box& l = lines_[i];
      if (l.left_mm <= box.right_mm && l.right_mm >= box.left_mm && l.bottom_mm <= box.top_mm &&
          l.top_mm >= box.bottom_mm) {
        return true;
      }
    }
    return false;
  }
  void number(const SawPass& pass, double along_mm) {
    taken_.push_back(ring(pass, along_mm));
    d_.text(Role::Key, spot(pass, along_mm), std::to_string(pass.number), Align::Centre);
  }
  void lead(const SawPass& pass, double from_mm, double along_mm) {
    d_.line(Role::Dimension, spot(pass, from_mm), spot(pass, along_mm), Weight::Thin, true);
    number(pass, along_mm);
  }
  // From the stock's edge; nothing stands on the way.
  bool outside(const SawPass& pass, double edge_mm, double along_mm) {
    const Box here = ring(pass, along_mm), there = ring(pass, edge_mm);
    Box way{std::min(here.left_mm, there.left_mm), std::min(here.bottom_mm, there.bottom_mm),
            std::max(here.right_mm, there.right_mm), std::max(here.top_mm, there.top_mm)};
    if (edge_mm == 0) (pass.along ? way.right_mm : way.top_mm) = -0.05 * line_;
    if (edge_mm > 0) (pass.along ? way.left_mm : way.bottom_mm) = edge_mm + 0.05 * line_;
    if (!free(way)) return false;
    lead(pass, edge_mm, along_mm);
    return true;
  }
  // `asks`: 1, that no other pass runs through the ring; 2, that nothing stands close to it.
  bool on_line(const SawPass& pass, double along_mm, int asks) {
    const Box box = ring(pass, along_mm);
    const double rim = asks > 1 ? 0.4 * line_ : 0;
    const Box wide{box.left_mm - rim, box.bottom_mm - rim, box.right_mm + rim, box.top_mm + rim};
    if (!free(wide) || (asks > 0 && crossed(pass, box))) return false;
    number(pass, along_mm);
    return true;
  }

  Drawing& d_;
  double line_, kerf_, edge_, length_, width_;
  std::vector<Box> taken_, lines_;
};

std::string piece_words(const CutGroup& group, const SawnPiece& piece, const SheetPen& pen) {
  switch (piece.kind) {
    case SawnPiece::Kind::Part: {
      const evaluate::CutItem& item = group.items[piece.item];
      return "part " + std::to_string(item.part) + ", " +
             size_text(item.length_mm, item.width_mm, pen, true) +
             (item.rip_mm ? ", then ripped to " + pen.length(*item.rip_mm) : std::string());
    }
    case SawnPiece::Kind::Strip:
      return "strip, " + size_text(piece.length_mm, piece.width_mm, pen, true);
    case SawnPiece::Kind::Leftover:
      return "kept, " + size_text(piece.length_mm, piece.width_mm, pen, true);
    case SawnPiece::Kind::Waste:
      return "waste";
  }
  return {};
}

}  // namespace

std::vector<CutSheet> cut_sheets(const evaluate::Cutting& cutting) {
  std::vector<CutSheet> all;
  for (std::size_t g = 0; g < cutting.groups.size(); ++g) {
    const CutGroup& group = cutting.groups[g];
    const std::size_t first = all.size();
    for (std::size_t s = 0; s < group.sticks.size(); ++s) {
      const auto alike = std::find_if(
          all.begin() + static_cast<std::ptrdiff_t>(first), all.end(), [&](const CutSheet& one) {
            return same(group, group.sticks[one.stick], group.sticks[s]);
          });
      if (alike != all.end()) {
        ++alike->alike;
      } else {
        all.push_back({g, s, 1});
      }
    }
  }
  return all;
}

Sheet cut_sheet(const config::Config& config, const evaluate::Evaluation& e, const SheetView& view,
                const CutSheet& which) {
  const evaluate::Cutting& cutting = e.packet->cutting;
  const CutGroup& group = cutting.groups[which.group];
  const CutStick& stick = group.sticks[which.stick];
  const evaluate::CutStock& stock = group.stocks[stick.stock];
  Sheet sheet;
  Drawing& d = sheet.drawing;
  const double length = stock.length_mm, width = stock.width_mm;
  sheet.text_mm = line_of(view, std::clamp(length / 48, 6.0, 60.0));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units, true);
  d.polygon(Role::Ground, corners(0, 0, length, width));
  for (const SawnPiece& piece : stick.pieces) {
    const auto at = corners(piece.x_mm, piece.y_mm, piece.length_mm, piece.width_mm);
    if (piece.kind == SawnPiece::Kind::Part) {
      d.polygon(Role::Cabinet, at);
      d.outline(Role::Dimension, at, Weight::Thin);
    } else if (piece.kind == SawnPiece::Kind::Leftover) {
      d.polygon(Role::OvenInside, at);
    }
  }
  d.outline(Role::Dimension, corners(0, 0, length, width), Weight::Normal);
  PlanLabels labels(d, stick, pen, cutting.kerf_mm,
                    group.sheets ? cutting.sheet_trim_mm : cutting.board_trim_mm, length, width);
  for (const SawnPiece& piece : stick.pieces) {
    if (piece.kind == SawnPiece::Kind::Part) {
      labels.piece(piece, "part " + std::to_string(group.items[piece.item].part), pen);
    } else if (piece.kind == SawnPiece::Kind::Leftover) {
      labels.piece(piece, "kept", pen);
    }
  }
  for (const SawPass& pass : stick.passes) labels.pass(pass);
  const Box inked = inked_box(d, line);
  pen.chain(std::array{0.0, length}, inked.bottom_mm - 1.2 * line, 0);
  if (group.sheets) {
    const double x = inked.left_mm - 1.2 * line;
    d.dimension({x, 0}, {x, width}, "");
    d.text(Role::Label, {x - 0.4 * line, width / 2}, pen.length(width), Align::Right);
  }
  const std::string kind = group.name + ": " + stock.name;
  describe(sheet, kind, config, "A cut plan with its saw passes numbered in their order.",
           pen.entries());
  return sheet;
}

std::string sawn_words(const evaluate::Evaluation& e, const SheetView& view,
                       const CutSheet& which) {
  const CutGroup& group = e.packet->cutting.groups[which.group];
  Drawing none;
  const SheetPen pen(none, 1, view.units, true);
  struct Kind {
    int part, count;
    std::string size;
  };
  std::vector<Kind> kinds;
  for (const SawnPiece& piece : group.sticks[which.stick].pieces) {
    if (piece.kind != SawnPiece::Kind::Part) continue;
    const evaluate::CutItem& item = group.items[piece.item];
    const auto same_part = std::find_if(
        kinds.begin(), kinds.end(), [&item](const Kind& kind) { return kind.part == item.part; });
    if (same_part != kinds.end()) {
      ++same_part->count;
    } else {
      kinds.push_back({item.part, 1, size_text(item.length_mm, item.width_mm, pen, true)});
    }
  }
  std::stable_sort(kinds.begin(), kinds.end(),
                   [](const Kind& a, const Kind& b) { return a.part < b.part; });
  std::string words, kept;
  for (const Kind& kind : kinds) {
    words += (words.empty() ? "Comes out: " : "; ") + std::to_string(kind.count) + " of part " +
             std::to_string(kind.part) + ", " + kind.size;
  }
  for (const SawnPiece& piece : group.sticks[which.stick].pieces) {
    if (piece.kind != SawnPiece::Kind::Leftover) continue;
    kept +=
        (kept.empty() ? " Kept: " : "; ") + size_text(piece.length_mm, piece.width_mm, pen, true);
  }
  return words + (words.empty() ? "" : ".") + kept + (kept.empty() ? "" : ".");
}

Table pass_table(const evaluate::Evaluation& e, const SheetView& view, const CutSheet& which) {
  const evaluate::Cutting& cutting = e.packet->cutting;
  const CutGroup& group = cutting.groups[which.group];
  const CutStick& stick = group.sticks[which.stick];
  Drawing none;
  const SheetPen pen(none, 1, view.units, true);
  // Many passes stand in two halves side by side, so that they fit on the plan's page.
  constexpr std::size_t kMostRows = 10;
  const std::size_t count = stick.passes.size(), rows = count > kMostRows ? (count + 1) / 2 : count;
  Table table{{}, {}, {}};
  table.rows.resize(rows);
  for (std::size_t i = 0; i < count; ++i) {
    const SawPass& pass = stick.passes[i];
    if (i % rows == 0) {
      for (const char* head : {"Pass", "Saw", "Fence or stop", "Comes off"}) {
        table.columns.emplace_back(head);
      }
    }
    auto& row = table.rows[i % rows];
    row.push_back(std::to_string(pass.number));
    row.emplace_back(pass.trim ? (pass.along ? "along, edge off" : "across, end off")
                               : (pass.along ? "along" : "across"));
    row.push_back(pass.trim ? std::string() : pen.length(pass.fence_mm));
    row.push_back(pass.off && *pass.off < stick.pieces.size()
                      ? piece_words(group, stick.pieces[*pass.off], pen)
                      : std::string());
  }
  for (auto& row : table.rows) row.resize(table.columns.size());
  return table;
}

}  // namespace hs::report
