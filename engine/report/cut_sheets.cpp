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

// Of a part the number in the parts list and its size.
void label_piece(Drawing& d, const SawnPiece& piece, const std::string& number,
                 const std::string& size, double line) {
  const Spot middle{piece.x_mm + piece.length_mm / 2, piece.y_mm + piece.width_mm / 2};
  const double most = piece.length_mm - 0.4 * line;
  const bool two = piece.width_mm > 2.3 * line && text_width_mm(size, line) < most;
  const bool one = piece.width_mm > 1.05 * line;
  if (two) {
    d.text(Role::Heading, {middle.x_mm, middle.y_mm + 0.6 * line}, number, Align::Centre);
    d.text(Role::Label, {middle.x_mm, middle.y_mm - 0.6 * line}, size, Align::Centre);
  } else if (one && text_width_mm(number + "  " + size, line) < most) {
    d.text(Role::Heading, middle, number + "  " + size, Align::Centre);
  } else if (text_width_mm(number, line) < piece.length_mm) {
    d.text(Role::Heading, middle, number, Align::Centre);
  }
}

// Pass numbers stand outside the stock, in lines of their own where they would touch.
class Numbers {
 public:
  Numbers(Drawing& d, double line, double length, double width)
      : d_(d), line_(line), length_(length), width_(width) {}

  void put(const SawPass& pass, double kerf) {
    const double at = pass.at_mm + kerf / 2;
    const std::string number = std::to_string(pass.number);
    if (pass.along) {
      d_.line(Role::Limit, {pass.from_mm, at}, {pass.to_mm, at}, Weight::Normal, true);
      // To the nearer end, so that its line crosses as little as can be.
      const bool left = pass.from_mm <= length_ - pass.to_mm;
      const double way = left ? -1 : 1, edge = left ? 0 : length_;
      const double off = free_place(left ? left_ : right_, at);
      d_.line(Role::Dimension, {left ? pass.from_mm : pass.to_mm, at}, {edge + way * off, at},
              Weight::Thin);
      d_.text(Role::Key, {edge + way * off, at}, number, Align::Centre);
    } else {
      d_.line(Role::Limit, {at, pass.from_mm}, {at, pass.to_mm}, Weight::Normal, true);
      const bool low = pass.from_mm <= width_ - pass.to_mm;
      const double way = low ? -1 : 1, edge = low ? 0 : width_;
      const double off = free_place(low ? low_ : high_, at);
      d_.line(Role::Dimension, {at, low ? pass.from_mm : pass.to_mm}, {at, edge + way * off},
              Weight::Thin);
      d_.text(Role::Key, {at, edge + way * off}, number, Align::Centre);
    }
  }

 private:
  struct Taken {
    double at, off;
  };
  double free_place(std::vector<Taken>& taken, double at) const {
    double off = 1.1 * line_;
    const double apart = 1.25 * line_;
    for (bool moved = true; moved;) {
      moved = false;
      for (const Taken& other : taken) {
        if (std::abs(other.at - at) < apart && std::abs(other.off - off) < apart) {
          off += 1.45 * line_;
          moved = true;
        }
      }
    }
    taken.push_back({at, off});
    return off;
  }

  Drawing& d_;
  double line_, length_, width_;
  std::vector<Taken> left_, right_, low_, high_;
};

std::string piece_words(const CutGroup& group, const SawnPiece& piece, const SheetPen& pen) {
  const std::string size = pen.length(piece.length_mm) + " x " + pen.length(piece.width_mm);
  switch (piece.kind) {
    case SawnPiece::Kind::Part: {
      const evaluate::CutItem& item = group.items[piece.item];
      return "part " + std::to_string(item.part) + ", " + pen.length(item.length_mm) + " x " +
             pen.length(item.width_mm) +
             (item.rip_mm ? ", then ripped to " + pen.length(*item.rip_mm) : std::string());
    }
    case SawnPiece::Kind::Strip:
      return "a strip, sawn again: " + size;
    case SawnPiece::Kind::Leftover:
      return "kept: " + size;
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
  const double length = stock.length_mm, width = group.sheets ? stock.width_mm : group.width_mm;
  sheet.text_mm = line_of(view, std::clamp(length / 48, 6.0, 60.0));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units, true);
  d.polygon(Role::Ground, corners(0, 0, length, width));
  for (const SawnPiece& piece : stick.pieces) {
    const auto at = corners(piece.x_mm, piece.y_mm, piece.length_mm, piece.width_mm);
    if (piece.kind == SawnPiece::Kind::Part) {
      d.polygon(Role::Cabinet, at);
      d.outline(Role::Dimension, at, Weight::Normal);
    } else if (piece.kind == SawnPiece::Kind::Leftover) {
      d.polygon(Role::OvenInside, at);
      d.outline(Role::Landing, at, Weight::Normal, true);
    }
  }
  d.outline(Role::Dimension, corners(0, 0, length, width), Weight::Normal);
  Numbers numbers(d, line, length, width);
  for (const SawPass& pass : stick.passes) numbers.put(pass, cutting.kerf_mm);
  for (const SawnPiece& piece : stick.pieces) {
    if (piece.kind == SawnPiece::Kind::Part) {
      label_piece(d, piece, "part " + std::to_string(group.items[piece.item].part),
                  pen.length(piece.length_mm) + " x " + pen.length(piece.width_mm), line);
    } else if (piece.kind == SawnPiece::Kind::Leftover) {
      label_piece(d, piece, "kept",
                  pen.length(piece.length_mm) + " x " + pen.length(piece.width_mm), line);
    }
  }
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

Table pass_table(const evaluate::Evaluation& e, const SheetView& view, const CutSheet& which) {
  const evaluate::Cutting& cutting = e.packet->cutting;
  const CutGroup& group = cutting.groups[which.group];
  const CutStick& stick = group.sticks[which.stick];
  Drawing none;
  const SheetPen pen(none, 1, view.units, true);
  Table table{{}, {"Pass", "Saw", "Fence or stop", "Comes off"}, {}};
  for (const SawPass& pass : stick.passes) {
    table.rows.push_back(
        {std::to_string(pass.number),
         pass.trim ? (pass.along ? "along, takes an edge off" : "across, takes an end off")
                   : (pass.along ? "along" : "across"),
         pass.trim ? std::string() : pen.length(pass.fence_mm),
         pass.off && *pass.off < stick.pieces.size()
             ? piece_words(group, stick.pieces[*pass.off], pen)
             : std::string()});
  }
  return table;
}

}  // namespace hs::report
