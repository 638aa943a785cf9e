#pragma once
// Saws a station's plans pass by pass and knows nothing of who made them: what lies on the bench
// after the last pass must be what the plan says comes out.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "engine/evaluate/cutting.h"

namespace hs::test {

inline constexpr double kSaw_mm = 0.051;  // plans are in tenths

struct OnBench {
  double x = 0, y = 0, right = 0, high = 0;
};

// Where the saw meets what lies on the bench: it must run through one piece from edge to edge, and
// takes a kerf beside its line.
inline std::string saw(std::vector<OnBench>& bench, const evaluate::SawPass& pass, double kerf_mm) {
  for (std::size_t i = 0; i < bench.size(); ++i) {
    const OnBench piece = bench[i];
    const double low = pass.along ? piece.y : piece.x, high = pass.along ? piece.high : piece.right;
    const double from = pass.along ? piece.x : piece.y, to = pass.along ? piece.right : piece.high;
    // The kerf may hang over an edge, but the saw must take something of the piece.
    if (pass.at_mm + kerf_mm <= low + kSaw_mm / 2 || pass.at_mm >= high - kSaw_mm / 2) continue;
    if (std::abs(pass.from_mm - from) > kSaw_mm || std::abs(pass.to_mm - to) > kSaw_mm) continue;
    OnBench first = piece, second = piece;
    (pass.along ? first.high : first.right) = pass.at_mm;
    (pass.along ? second.y : second.x) = pass.at_mm + kerf_mm;
    bench.erase(bench.begin() + static_cast<std::ptrdiff_t>(i));
    const auto keep = [&bench](const OnBench& part) {
      if (part.right - part.x > kSaw_mm && part.high - part.y > kSaw_mm) bench.push_back(part);
    };
    keep(first);
    keep(second);
    return {};
  }
  return "a pass that runs through no piece from edge to edge";
}

// What is wrong with a group's plans; empty: nothing.
inline std::string broken_by(const evaluate::CutGroup& group, double kerf_mm, double trim_mm) {
  using Kind = evaluate::SawnPiece::Kind;
  std::vector<int> seen(group.items.size(), 0);
  std::vector<int> used(group.stocks.size(), 0);
  for (const evaluate::CutStick& stick : group.sticks) {
    const evaluate::CutStock& stock = group.stocks[stick.stock];
    ++used[stick.stock];
    std::vector<OnBench> bench{{0, 0, stock.length_mm, stock.width_mm}};
    int number = 0;
    for (const evaluate::SawPass& pass : stick.passes) {
      if (pass.number != ++number) return "passes out of order";
      const std::string broken = saw(bench, pass, kerf_mm);
      if (!broken.empty()) return broken;
    }
    std::size_t parts = 0;
    for (const evaluate::SawnPiece& piece : stick.pieces) {
      if (piece.kind == Kind::Strip) continue;
      const auto at = std::find_if(bench.begin(), bench.end(), [&](const OnBench& one) {
        return std::abs(one.x - piece.x_mm) <= kSaw_mm && std::abs(one.y - piece.y_mm) <= kSaw_mm &&
               std::abs(one.right - one.x - piece.length_mm) <= kSaw_mm &&
               std::abs(one.high - one.y - piece.width_mm) <= kSaw_mm;
      });
      if (piece.kind != Kind::Part) {
        if (at != bench.end()) bench.erase(at);
        continue;
      }
      if (at == bench.end()) return "a part that is not on the bench";
      bench.erase(at);
      ++parts;
      if (piece.item >= group.items.size()) return "a part of nobody";
      const evaluate::CutItem& item = group.items[piece.item];
      if (++seen[piece.item] > 1) return "a part twice";
      const double length = piece.turned ? piece.width_mm : piece.length_mm,
                   width = piece.turned ? piece.length_mm : piece.width_mm;
      if (piece.turned && !stock.turn) return "a part turned against its grain";
      if (std::abs(length - item.length_mm) > kSaw_mm) return "a part of another length";
      if (group.sheets && std::abs(width - item.width_mm) > kSaw_mm) {
        return "a part of another width";
      }
      // Nothing of a factory edge, and nothing of a defect.
      if (piece.x_mm < trim_mm - kSaw_mm ||
          piece.x_mm + piece.length_mm > stock.length_mm - trim_mm + kSaw_mm) {
        return "a part with a factory end";
      }
      if (group.sheets && (piece.y_mm < trim_mm - kSaw_mm ||
                           piece.y_mm + piece.width_mm > stock.width_mm - trim_mm + kSaw_mm)) {
        return "a part with a factory edge";
      }
      if (stock.bad_to_mm > stock.bad_from_mm && piece.x_mm < stock.bad_to_mm - kSaw_mm &&
          piece.x_mm + piece.length_mm > stock.bad_from_mm + kSaw_mm) {
        return "a part with a defect";
      }
    }
    if (parts == 0) return "a board or sheet for nothing";
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const bool large =
        std::find(group.too_large.begin(), group.too_large.end(), i) != group.too_large.end();
    if (seen[i] != (large ? 0 : 1)) return "a part is missing";
  }
  for (std::size_t i = 0; i < used.size(); ++i) {
    if (group.stocks[i].used != used[i]) return "stock counted wrong";
    if (group.stocks[i].on_hand && used[i] > *group.stocks[i].on_hand) return "more than is there";
  }
  if (group.at_least > group.value + 1e-6) return "the bound is above the plan";
  return {};
}

}  // namespace hs::test
