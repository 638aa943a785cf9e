#pragma once
// A walker that saws a sheet plan and knows nothing of the planner, and plans to compare with.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "engine/cuts/sheets.h"

namespace hs::test {

// A part where the saw left it.
struct Sawn {
  std::int64_t left = 0, low = 0, right = 0, high = 0;
};

struct SheetWalk {
  const cuts::SheetJob& job;
  const cuts::SheetCuts& cuts;
  std::vector<int>& seen;
  std::vector<Sawn> sawn = {};
  std::size_t visited = 0;
  std::string broken = {};

  // The piece from (left, low) to (right, high), as the saw sees it: what is said must be so.
  void piece(std::size_t at, std::int64_t left, std::int64_t low, std::int64_t right,
             std::int64_t high) {
    if (at >= cuts.size() || ++visited > cuts.size()) {
      broken = "a piece that is not there";
      return;
    }
    const cuts::Pane& pane = cuts[at];
    if (pane.width != std::max<std::int64_t>(0, right - left) ||
        pane.height != std::max<std::int64_t>(0, high - low)) {
      broken = "a piece of another size than it says";
    }
    const std::size_t before = sawn.size();
    switch (pane.kind) {
      case cuts::Pane::Kind::Offcut:
        return;
      case cuts::Pane::Kind::Part: {
        const cuts::SheetPart& part = job.parts[pane.part];
        const bool straight = pane.width == part.width && pane.height == part.height;
        const bool turned = pane.width == part.height && pane.height == part.width;
        if (!straight && !(job.turn && turned)) broken = "a part of another size";
        if (++seen[pane.part] > 1) broken = "a part twice";
        sawn.push_back({left, low, right, high});
        return;
      }
      case cuts::Pane::Kind::Across:
        if (pane.at <= 0 || left + pane.at >= right) broken = "a cut beside its piece";
        piece(pane.first, left, low, left + pane.at, high);
        if (sawn.size() == before) broken = "a cut's first piece without a part";
        piece(pane.second, left + pane.at + job.kerf, low, right, high);
        return;
      case cuts::Pane::Kind::Along:
        if (pane.at <= 0 || low + pane.at >= high) broken = "a cut beside its piece";
        piece(pane.first, left, low, right, low + pane.at);
        if (sawn.size() == before) broken = "a cut's first piece without a part";
        piece(pane.second, left, low + pane.at + job.kerf, right, high);
        return;
    }
  }
};

// What is wrong with a plan; empty: every cut goes through its piece, every part once, of its size,
// inside the trimmed sheet, a saw cut away from every other, and what is claimed is so.
inline std::string broken_by(const cuts::SheetJob& job, const cuts::SheetPlan& plan) {
  std::vector<int> seen(job.parts.size(), 0);
  for (const cuts::SheetCuts& cuts : plan.sheets) {
    SheetWalk walk{job, cuts, seen};
    walk.piece(0, job.trim, job.trim, job.width - job.trim, job.height - job.trim);
    if (!walk.broken.empty()) return walk.broken;
    if (walk.visited != cuts.size()) return "a piece that nothing leads to";
    if (walk.sawn.empty()) return "an empty sheet";
    for (std::size_t i = 0; i < walk.sawn.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        const Sawn &a = walk.sawn[i], &b = walk.sawn[k];
        if (a.left < b.right + job.kerf && b.left < a.right + job.kerf &&
            a.low < b.high + job.kerf && b.low < a.high + job.kerf) {
          return "no room for the cut";
        }
      }
    }
  }
  for (const int times : seen) {
    if (times != 1) return "a part is missing";
  }
  const auto sheets = static_cast<std::int64_t>(plan.sheets.size());
  if (plan.lower_bound > sheets) return "the bound is above the answer";
  if (plan.proven != (plan.lower_bound == sheets)) return "proven without proof";
  return {};
}

// First fit, highest first: strips of full width, each part into the first strip that takes it, as
// written and not turned (turned only where it does not fit as written).
inline std::size_t first_fit_sheets(const cuts::SheetJob& job) {
  const std::int64_t width = job.width - 2 * job.trim + job.kerf;
  const std::int64_t height = job.height - 2 * job.trim + job.kerf;
  std::vector<cuts::SheetPart> parts;
  for (cuts::SheetPart part : job.parts) {
    part = {part.width + job.kerf, part.height + job.kerf};
    if (part.width > width || part.height > height) std::swap(part.width, part.height);
    parts.push_back(part);
  }
  std::stable_sort(parts.begin(), parts.end(),
                   [](const auto& a, const auto& b) { return a.height > b.height; });
  struct Strip {
    std::int64_t height, left;
  };
  std::vector<Strip> strips;
  std::vector<std::int64_t> left;  // above the strips of each sheet
  for (const cuts::SheetPart& part : parts) {
    const auto strip = std::find_if(strips.begin(), strips.end(), [&](const Strip& open) {
      return open.height >= part.height && open.left >= part.width;
    });
    if (strip != strips.end()) {
      strip->left -= part.width;
      continue;
    }
    const auto sheet = std::find_if(left.begin(), left.end(),
                                    [&](std::int64_t rest) { return rest >= part.height; });
    if (sheet == left.end()) {
      left.push_back(height - part.height);
    } else {
      *sheet -= part.height;
    }
    strips.push_back({part.height, width - part.width});
  }
  return left.size();
}

}  // namespace hs::test
