// The boxes and a face frame before them.

#include <algorithm>

#include "engine/frame/stock.h"
#include "engine/frame/work.h"

namespace hs::frame {
namespace {

constexpr double kStretcher_mm = 100;
constexpr double kShelfPlay_mm = 1;    // each side
constexpr double kShelfBack_mm = 20;   // behind the front
constexpr double kShelfFrom_mm = 450;  // an opening this high gets a shelf
constexpr double kPinRow_mm = 37;      // the 32 mm system: first row, pitch, hole
constexpr double kPinPitch_mm = 32, kPin_mm = 5, kPinDeep_mm = 13, kPinLeaves_mm = 4;
constexpr int kPins = 7;
constexpr double kDrawerOver_mm = 160;  // of an opening, for the drawer over doors

// What stands beside a run's end is lower or shallower, or is not there: its side is seen.
bool side_seen(const Work& work, const Run& run, bool is_free) {
  if (is_free) return true;
  for (const Run& other : work.out.runs) {
    if (other.oven == run.oven) continue;
    return other.top_mm < run.top_mm - 1 || other.boxes.far_mm < run.boxes.far_mm - 1;
  }
  return false;  // a pier stands there
}

bool has_shelf(const Bay& bay) {
  double high_mm = bay.opening.height_mm();
  if (bay.holds == config::Holds::DrawerAndDoors) high_mm -= kDrawerOver_mm;
  const bool takes = bay.holds == config::Holds::Doors || bay.holds == config::Holds::Open ||
                     bay.holds == config::Holds::DrawerAndDoors;
  return takes && high_mm >= kShelfFrom_mm;
}

// Height of a shelf's pins: half way up the box, or up what doors close under a drawer.
double pins_mm(const Bay& bay) {
  if (bay.holds != config::Holds::DrawerAndDoors) return (bay.box.bottom_mm + bay.box.top_mm) / 2;
  return (bay.opening.bottom_mm + bay.opening.top_mm - kDrawerOver_mm) / 2;
}

}  // namespace

double face_frame_mm(const Work& work) { return work.face_frame() ? kOneBy_mm : 0; }

double box_near_mm(const Work& work, const Run& run) {
  const double front_mm = work.inset() ? 0 : work.build().front_mm + kBumper_mm;
  return run.face_mm + front_mm + face_frame_mm(work);
}

double bottom_lift_mm(const Work& work) {
  return work.face_frame() ? std::max(0.0, work.style().rail_mm - work.build().sheet_mm) : 0;
}

Piece panel(Kind kind, const Run& run, int bay, const Block& place, Axis thick, Axis grain,
            Coat wide, Edge edge) {
  Piece piece;
  piece.kind = kind;
  piece.oven = run.oven;
  piece.bay = bay;
  piece.place = place;
  piece.thick = thick;
  piece.grain = grain;
  for (std::size_t f = 0; f < piece.surfaces.size(); ++f) {
    const bool is_wide = axis_of(static_cast<Face>(f)) == thick;
    piece.surfaces[f] = is_wide ? Surface{wide, Edge::None} : Surface{Coat::Sealed, edge};
  }
  return piece;
}

void add_piece(Work& work, Piece piece) { work.out.pieces.push_back(std::move(piece)); }

void add_boxes(Work& work, const Run& run) {
  const double sheet_mm = work.build().sheet_mm, lift_mm = bottom_lift_mm(work);
  // Behind a face frame no edge is seen.
  const Surface seen =
      work.face_frame() ? Surface{Coat::Sealed, Edge::Sealed} : Surface{Coat::Body, Edge::Filled};
  const int last = static_cast<int>(run.bays.size()) - 1;
  for (int i = 0; i <= last; ++i) {
    const Bay& bay = run.bays[static_cast<std::size_t>(i)];
    const Block& box = bay.box;
    const bool shelf = has_shelf(bay);
    // An inset front stands in the box, or in the face frame and what it is thicker than that.
    const double front_mm =
        box.near_mm + (work.inset()
                           ? std::max(0.0, work.build().front_mm - face_frame_mm(work)) + kBumper_mm
                           : 0);
    Block inside = box;
    inside.left_mm += sheet_mm;
    inside.right_mm -= sheet_mm;
    inside.far_mm -= sheet_mm;
    for (const bool right : {false, true}) {
      Block place = box;
      (right ? place.left_mm : place.right_mm) = right ? inside.right_mm : inside.left_mm;
      Piece side = panel(Kind::Side, run, i, place, Axis::X, Axis::Z, Coat::Inside, Edge::Sealed);
      side.nth = right ? 1 : 0;
      const bool end = right ? i == last : i == 0;
      const bool outside = end && side_seen(work, run, right ? run.free_right : run.free_left);
      side.at(right ? Face::Right : Face::Left).coat = outside ? Coat::Body : Coat::Sealed;
      side.at(Face::Near) = seen;
      if (shelf) {
        const double first_mm = pins_mm(bay) - box.bottom_mm - kPinPitch_mm * (kPins / 2);
        for (const double y : {front_mm + kPinRow_mm, inside.far_mm - kPinRow_mm}) {
          side.holes.push_back({HoleUse::ShelfPin, right ? Face::Left : Face::Right,
                                y - box.near_mm, first_mm, true, kPin_mm, kPin_mm,
                                std::min(kPinDeep_mm, sheet_mm - kPinLeaves_mm), kPins,
                                kPinPitch_mm, false});
        }
      }
      add_piece(work, std::move(side));
    }
    Block place = inside;
    place.bottom_mm = box.bottom_mm + lift_mm;
    place.top_mm = place.bottom_mm + sheet_mm;
    Piece bottom = panel(Kind::Bottom, run, i, place, Axis::Z, Axis::X, Coat::Inside, Edge::Sealed);
    bottom.at(Face::Below).coat = Coat::Sealed;
    bottom.at(Face::Near) = seen;
    add_piece(work, std::move(bottom));
    place = inside;
    place.near_mm = inside.far_mm;
    place.far_mm = box.far_mm;
    Piece back = panel(Kind::Back, run, i, place, Axis::Y, Axis::Z, Coat::Inside, Edge::Sealed);
    back.at(Face::Far).coat = Coat::Body;
    add_piece(work, std::move(back));
    place = inside;
    place.bottom_mm = box.top_mm - sheet_mm;
    // The oven and a gas bay want a closed top; a narrow box has no room for two strips.
    const bool deck =
        run.oven || bay.holds == config::Holds::Gas || inside.depth_mm() < 2 * kStretcher_mm + 20;
    if (deck) {
      Piece piece = panel(Kind::Deck, run, i, place, Axis::Z, Axis::X, Coat::Inside, Edge::Sealed);
      piece.at(Face::Above).coat = Coat::Sealed;
      piece.at(Face::Near) = seen;
      add_piece(work, std::move(piece));
    } else {
      for (const bool rear : {false, true}) {
        Block strip = place;
        (rear ? strip.near_mm : strip.far_mm) =
            rear ? inside.far_mm - kStretcher_mm : inside.near_mm + kStretcher_mm;
        Piece piece =
            panel(Kind::Stretcher, run, i, strip, Axis::Z, Axis::X, Coat::Inside, Edge::Sealed);
        piece.nth = rear ? 1 : 0;
        if (!rear) piece.at(Face::Near) = seen;
        add_piece(work, std::move(piece));
      }
    }
    if (!shelf) continue;
    place = inside;
    place.left_mm += kShelfPlay_mm;
    place.right_mm -= kShelfPlay_mm;
    place.near_mm = front_mm + kShelfBack_mm;
    place.bottom_mm = pins_mm(bay) + kPin_mm / 2;
    place.top_mm = place.bottom_mm + sheet_mm;
    Piece piece = panel(Kind::Shelf, run, i, place, Axis::Z, Axis::X, Coat::Inside, Edge::Sealed);
    piece.at(Face::Near) = {Coat::Inside, Edge::Filled};
    add_piece(work, std::move(piece));
  }
}

void add_face_frame(Work& work, const Run& run) {
  const double rail_mm = work.style().rail_mm;
  const Block& boxes = run.boxes;
  const Block all{boxes.left_mm, boxes.right_mm,  boxes.near_mm - kOneBy_mm,
                  boxes.near_mm, boxes.bottom_mm, boxes.top_mm};
  const auto add = [&](Kind kind, int nth, const Block& place, Axis grain) {
    Piece piece = panel(kind, run, kWholeRun, place, Axis::Y, grain, Coat::Body, Edge::Eased);
    piece.material = Material::FaceBoard;
    piece.nth = nth;
    for (Surface& surface : piece.surfaces) surface.coat = Coat::Body;
    piece.at(Face::Far).coat = Coat::Sealed;
    add_piece(work, std::move(piece));
  };
  int stiles = 0;
  const auto stile = [&](double left_mm, double bottom_mm, double top_mm) {
    Block place = all;
    place.left_mm = left_mm;
    place.right_mm = left_mm + rail_mm;
    place.bottom_mm = bottom_mm;
    place.top_mm = top_mm;
    add(Kind::Stile, stiles++, place, Axis::Z);
  };
  stile(all.left_mm, all.bottom_mm, all.top_mm);
  stile(all.right_mm - rail_mm, all.bottom_mm, all.top_mm);
  for (std::size_t i = 0; i + 1 < run.bays.size(); ++i) {
    stile(run.bays[i].box.right_mm - rail_mm / 2, all.bottom_mm + rail_mm, all.top_mm - rail_mm);
  }
  for (const bool upper : {false, true}) {
    Block place = all;
    place.left_mm += rail_mm;
    place.right_mm -= rail_mm;
    (upper ? place.bottom_mm : place.top_mm) =
        upper ? all.top_mm - rail_mm : all.bottom_mm + rail_mm;
    add(Kind::Rail, upper ? 1 : 0, place, Axis::X);
  }
}

}  // namespace hs::frame
