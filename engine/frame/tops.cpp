// Sheets and metal on the boxes, and the block under the oven.

#include <algorithm>
#include <cmath>

#include "engine/frame/stock.h"
#include "engine/frame/work.h"

namespace hs::frame {
namespace {

constexpr double kRib_mm = 300;         // between a block's ribs
constexpr double kTailLeast_mm = 40;    // a shorter one is left to the bead: our judgement
constexpr double kMetalMost_mm = 2900;  // what a sheet of 120 in leaves for a folded top

// Where a length is parted: over a box's side, so that no part is longer than `most_mm` if that can
// be. From the left, or from the right, so that two layers are not parted at one place.
std::vector<double> parted(const Run& run, double from_mm, double to_mm, double most_mm,
                           bool from_right) {
  std::vector<double> joints;
  for (std::size_t i = 0; i + 1 < run.bays.size(); ++i) {
    const double at = run.bays[i].box.right_mm;
    if (at > from_mm + 1 && at < to_mm - 1) joints.push_back(at);
  }
  std::vector<double> out{from_mm, to_mm};
  if (from_right) std::reverse(joints.begin(), joints.end());
  double start_mm = from_right ? to_mm : from_mm;
  const double end_mm = from_right ? from_mm : to_mm;
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const double next = i + 1 < joints.size() ? joints[i + 1] : end_mm;
    if (std::abs(next - start_mm) <= most_mm + 0.05) continue;
    out.push_back(joints[i]);
    start_mm = joints[i];
  }
  std::sort(out.begin(), out.end());
  return out;
}

// The turned-down edges of a cap: its front and back over the whole width, its ends between them.
std::vector<Block> folds_of(const Block& plate, double metal_mm, double down_to_mm, bool left,
                            bool right) {
  Block skirt = plate;
  skirt.bottom_mm = down_to_mm;
  skirt.top_mm = plate.bottom_mm;
  std::vector<Block> folds(2, skirt);
  folds[0].far_mm = plate.near_mm + metal_mm;
  folds[1].near_mm = plate.far_mm - metal_mm;
  skirt.near_mm += metal_mm;
  skirt.far_mm -= metal_mm;
  if (left) {
    folds.push_back(skirt);
    folds.back().right_mm = plate.left_mm + metal_mm;
  }
  if (right) {
    folds.push_back(skirt);
    folds.back().left_mm = plate.right_mm - metal_mm;
  }
  return folds;
}

Piece cap(Kind kind, const Run& run, const Block& plate, double metal_mm, double down_to_mm,
          bool left, bool right) {
  Piece piece = panel(kind, run, kWholeRun, plate, Axis::Z, Axis::X, Coat::Polish, Edge::Folded);
  piece.material = Material::Metal;
  piece.folds = folds_of(plate, metal_mm, down_to_mm, left, right);
  for (Surface& surface : piece.surfaces) surface.coat = Coat::Polish;
  piece.at(Face::Below).coat = Coat::Bare;
  if (!left) piece.at(Face::Left).edge = Edge::Straight;
  if (!right) piece.at(Face::Right).edge = Edge::Straight;
  return piece;
}

}  // namespace

void add_top(Work& work, const Run& run) {
  const config::Materials& build = work.build();
  const double edge_mm = build.metal_mm + build.fit_mm;
  const std::string name = run.oven ? "oven.substrate" : "dough.substrate";
  // From the front edge, and from where another counter meets this one, or from the left.
  Block sheet;
  const double left_mm = run.counter.left_mm + (run.free_left ? edge_mm : kSeam_mm);
  const double right_mm = run.counter.right_mm - (run.free_right ? edge_mm : kSeam_mm);
  const double wide_mm = work.measure(name + ".width", right_mm - left_mm);
  const bool hold_right = run.free_left && !run.free_right;
  sheet.left_mm = hold_right ? right_mm - wide_mm : left_mm;
  sheet.right_mm = hold_right ? right_mm : left_mm + wide_mm;
  sheet.near_mm = run.counter.near_mm + edge_mm;
  sheet.far_mm =
      sheet.near_mm + work.measure(name + ".depth", run.counter.depth_mm() - 2 * edge_mm);
  sheet.bottom_mm = run.boxes.top_mm;
  sheet.top_mm = run.boxes.top_mm + run.sheets_mm;

  const int layers = build.layers == config::Layers::Two ? 2 : 1;
  const double most_mm = sheet.depth_mm() <= kSheetWide_mm ? kSheetLong_mm : kSheetWide_mm;
  int nth = 0;
  for (int layer = 0; layer < layers; ++layer) {
    const std::vector<double> at =
        parted(run, sheet.left_mm, sheet.right_mm, most_mm, layer % 2 == 1);
    for (std::size_t i = 0; i + 1 < at.size(); ++i) {
      Block place = sheet;
      place.left_mm = at[i];
      place.right_mm = at[i + 1];
      place.bottom_mm = sheet.bottom_mm + run.sheets_mm * layer / layers;
      place.top_mm = layer + 1 == layers ? sheet.top_mm
                                         : sheet.bottom_mm + run.sheets_mm * (layer + 1) / layers;
      Piece piece = panel(Kind::Substrate, run, kWholeRun, place, Axis::Z, Axis::X, Coat::Sealed,
                          Edge::Sealed);
      piece.nth = nth++;
      add_piece(work, std::move(piece));
    }
  }

  const double plate_mm = sheet.top_mm + build.bedding_mm;
  const Block plate{sheet.left_mm - (run.free_left ? edge_mm : 0),
                    sheet.right_mm + (run.free_right ? edge_mm : 0),
                    sheet.near_mm - edge_mm,
                    sheet.far_mm + edge_mm,
                    plate_mm,
                    plate_mm + build.metal_mm};
  const std::vector<double> at = parted(run, plate.left_mm, plate.right_mm, kMetalMost_mm, false);
  for (std::size_t i = 0; i + 1 < at.size(); ++i) {
    const bool first = i == 0, last = i + 2 == at.size();
    Block part = plate;
    part.left_mm = at[i] + (first ? 0 : kSeam_mm);
    part.right_mm = at[i + 1] - (last ? 0 : kSeam_mm);
    Piece piece = cap(Kind::MetalTop, run, part, build.metal_mm, sheet.bottom_mm - build.drip_mm,
                      first && run.free_left, last && run.free_right);
    piece.nth = static_cast<int>(i);
    add_piece(work, std::move(piece));
  }
}

void add_tails(Work& work) {
  const config::Materials& build = work.build();
  if (build.fit_mm < kSeam_mm) return;  // it would stand in the side of its own box
  std::vector<Piece>& pieces = work.out.pieces;
  for (Piece& piece : pieces) {
    if (piece.kind != Kind::MetalTop) continue;
    for (const Face side : {Face::Left, Face::Right}) {
      if (piece.at(side).edge != Edge::Straight) continue;
      const bool right = side == Face::Right;
      Block& plate = piece.place;
      const auto other = std::find_if(pieces.begin(), pieces.end(), [&](const Piece& one) {
        const double apart_mm =
            right ? one.place.left_mm - plate.right_mm : plate.left_mm - one.place.right_mm;
        return one.kind == Kind::MetalTop && one.oven != piece.oven && apart_mm > 0 &&
               apart_mm < 4 * kSeam_mm && std::abs(one.place.top_mm - plate.top_mm) < kSeam_mm;
      });
      if (other == pieces.end()) continue;
      const double from_mm = other->place.far_mm + 2 * kSeam_mm;
      if (plate.far_mm - from_mm < kTailLeast_mm) continue;
      const double out_mm = build.metal_mm + build.fit_mm, bottom_mm = piece.folds[0].bottom_mm;
      Block ledge = plate;
      ledge.near_mm = from_mm;
      ledge.left_mm = right ? plate.right_mm : plate.left_mm - out_mm;
      ledge.right_mm = right ? plate.right_mm + out_mm : plate.left_mm;
      Block skirt = ledge;
      skirt.bottom_mm = bottom_mm;
      skirt.top_mm = plate.bottom_mm;
      skirt.far_mm -= build.metal_mm;
      (right ? skirt.left_mm : skirt.right_mm) =
          right ? skirt.right_mm - build.metal_mm : skirt.left_mm + build.metal_mm;
      Block& back = piece.folds[1];
      (right ? back.right_mm : back.left_mm) += right ? out_mm : -out_mm;
      piece.folds.push_back(ledge);
      piece.folds.push_back(skirt);
      piece.tails.push_back({side, from_mm, out_mm, plate.top_mm - bottom_mm});
    }
  }
}

void add_riser(Work& work) {
  const auto oven = std::find_if(work.out.runs.begin(), work.out.runs.end(),
                                 [](const Run& run) { return run.oven; });
  if (oven == work.out.runs.end() || !work.out.places.riser) return;
  const config::Materials& build = work.build();
  Block all = *work.out.places.riser;
  all.bottom_mm = oven->top_mm;
  all.top_mm = all.bottom_mm + work.measure("riser.height", all.top_mm - oven->top_mm);
  if (all.height_mm() < least_riser_mm(build) - 0.05) {
    work.out.slab_mm = all.height_mm();
    if (all.height_mm() < 1) return;  // as built the counter is as high as the oven wants it
    // One that would be all bed lies as it is.
    if (all.height_mm() > build.bedding_mm + 1) all.bottom_mm += build.bedding_mm;
    Piece slab = panel(Kind::Slab, *oven, kWholeRun, all, Axis::Z, Axis::X, Coat::Bare, Edge::Cut);
    slab.material = Material::Slab;
    slab.has_grain = false;
    for (Surface& surface : slab.surfaces) surface.coat = Coat::Bare;
    add_piece(work, std::move(slab));
    return;
  }
  all.bottom_mm += build.bedding_mm;  // of the block itself, on the counter's top
  const double edge_mm = build.metal_mm + build.fit_mm, sheet_mm = build.sheet_mm;
  Block plate = all;
  plate.bottom_mm = all.top_mm - build.metal_mm;
  const Block inside{all.left_mm + edge_mm, all.right_mm - edge_mm,
                     all.near_mm + edge_mm, all.far_mm - edge_mm,
                     all.bottom_mm,         plate.bottom_mm - build.bedding_mm};
  Block top = inside;
  top.bottom_mm = inside.top_mm - sheet_mm;
  Block wall = inside;
  wall.top_mm = top.bottom_mm;
  const auto add = [&](Kind kind, int nth, const Block& place, Axis thick, Axis grain, Face outside,
                       bool shown) {
    Piece piece = panel(kind, *oven, kWholeRun, place, thick, grain, Coat::Sealed, Edge::Sealed);
    piece.nth = nth;
    if (shown) piece.at(outside).coat = Coat::Body;
    add_piece(work, std::move(piece));
  };
  Block place = wall;
  place.far_mm = wall.near_mm + sheet_mm;
  add(Kind::RiserFront, 0, place, Axis::Y, Axis::X, Face::Near, true);
  place = wall;
  place.near_mm = wall.far_mm - sheet_mm;
  add(Kind::RiserFront, 1, place, Axis::Y, Axis::X, Face::Far, true);
  Block across = wall;
  across.near_mm += sheet_mm;
  across.far_mm -= sheet_mm;
  place = across;
  place.right_mm = wall.left_mm + sheet_mm;
  add(Kind::RiserSide, 0, place, Axis::X, Axis::Y, Face::Left, true);
  place = across;
  place.left_mm = wall.right_mm - sheet_mm;
  add(Kind::RiserSide, 1, place, Axis::X, Axis::Y, Face::Right, true);
  const double clear_mm = wall.width_mm() - 2 * sheet_mm;
  const int ribs = std::max(0, static_cast<int>(std::ceil(clear_mm / kRib_mm - 1e-6)) - 1);
  for (int i = 0; i < ribs; ++i) {
    place = across;
    const double middle_mm = wall.left_mm + sheet_mm + clear_mm * (i + 1) / (ribs + 1);
    place.left_mm = middle_mm - sheet_mm / 2;
    place.right_mm = middle_mm + sheet_mm / 2;
    add(Kind::RiserRib, i, place, Axis::X, Axis::Y, Face::Left, false);
  }
  add(Kind::RiserTop, 0, top, Axis::Z, Axis::X, Face::Above, false);
  add_piece(work, cap(Kind::RiserCap, *oven, plate, build.metal_mm, top.bottom_mm - build.drip_mm,
                      true, true));
}

}  // namespace hs::frame
