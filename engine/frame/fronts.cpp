// Doors, drawers, the openings of a gas bay.

#include <algorithm>
#include <cmath>

#include "engine/frame/cylinder.h"
#include "engine/frame/stock.h"
#include "engine/frame/work.h"

namespace hs::frame {
namespace {

using config::Holds;

constexpr double kTiny = 0.05;
constexpr double kWidestDoor_mm = 600, kLowestDoor_mm = 150;
constexpr double kDrawerFront_mm = 230;  // drawers are shared out to about this
constexpr double kDrawerOver_mm = 160;   // a drawer over doors
constexpr double kCup_mm = 35, kCupDeep_mm = 13, kCupIn_mm = 22.5, kCupEnd_mm = 100;
constexpr double kCupFrom_mm = 15;  // a thinner door hangs on hinges that lie on its face
constexpr double kPull_mm = 5, kPullPitch_mm = 96, kPullIn_mm = 35, kPullEnd_mm = 70;
constexpr double kSlideStep_mm = 50, kSlideLeast_mm = 250, kSlideMost_mm = 600;
constexpr double kSlideBehind_mm = 5;
constexpr double kDrawerLeast_mm = 50, kDrawerNarrow_mm = 100;
constexpr double kPackerFrom_mm = 0.5, kPackerLeast_mm = 5;
constexpr double kWithin_mm = 127;   // 5 in
constexpr double kVentEdge_mm = 60;  // a door's rim beside its slots
constexpr double kVentTop_mm = 20;
constexpr double kGasLeast_mm = 300;  // below this openings high and low do not fit

// What the fronts of a bay cover.
struct Area {
  double left_mm, right_mm, bottom_mm, top_mm;
  double width_mm() const { return right_mm - left_mm; }
  double height_mm() const { return top_mm - bottom_mm; }
};

// Doors swing out under the metal's turned-down edge, so they end below it.
Area area_of(const Work& work, const Bay& bay) {
  const config::Materials& build = work.build();
  const Block& open = bay.opening;
  const double gap_mm = build.gap_mm, sheet_mm = build.sheet_mm;
  const double below_drip_mm = bay.box.top_mm - build.drip_mm - gap_mm;
  Area area{open.left_mm + gap_mm, open.right_mm - gap_mm, open.bottom_mm + gap_mm,
            open.top_mm - gap_mm};
  if (!work.inset() && !work.face_frame()) {
    area = {open.left_mm - sheet_mm + gap_mm / 2, open.right_mm + sheet_mm - gap_mm / 2,
            open.bottom_mm - sheet_mm, open.top_mm + sheet_mm};
  } else if (!work.inset()) {
    const double overlay_mm = work.style().overlay_mm;
    const auto over = [&](double room_mm) {
      return std::clamp(room_mm - gap_mm / 2, 0.0, overlay_mm);
    };
    area = {open.left_mm - over(open.left_mm - bay.box.left_mm),
            open.right_mm + over(bay.box.right_mm - open.right_mm),
            open.bottom_mm - over(open.bottom_mm - bay.box.bottom_mm),
            open.top_mm + over(bay.box.top_mm - open.top_mm)};
  }
  area.top_mm = std::min(area.top_mm, below_drip_mm);
  return area;
}

Piece front_piece(const Work& work, const Run& run, int bay, Kind kind, const Area& area) {
  const Block place{area.left_mm,   area.right_mm, run.face_mm, run.face_mm + work.build().front_mm,
                    area.bottom_mm, area.top_mm};
  Piece piece = panel(kind, run, bay, place, Axis::Y, Axis::Z, Coat::Front, Edge::Eased);
  piece.material = Material::Front;
  piece.has_grain = false;
  for (Surface& surface : piece.surfaces) surface.coat = Coat::Front;
  return piece;
}

Hole pull(double u_mm, double v_mm, double room_mm, bool along_u) {
  Hole hole{HoleUse::Pull, Face::Near, u_mm, v_mm,          true,   kPull_mm,
            kPull_mm,      0,          2,    kPullPitch_mm, along_u};
  if (room_mm < kPullPitch_mm + 2 * kPull_mm + 10) {
    hole.count = 1;
    (along_u ? hole.u_mm : hole.v_mm) += kPullPitch_mm / 2;
  }
  return hole;
}

bool big_enough(Work& work, const Run& run, const Area& area) {
  const double least_mm = std::min(area.width_mm(), area.height_mm());
  if (least_mm >= kLeastFront_mm - kTiny) return true;
  work.refuse("frame.fronts", least_mm, kLeastFront_mm, where_of(run));
  return false;
}

void add_doors(Work& work, const Run& run, int bay, const Area& area) {
  if (!big_enough(work, run, area)) return;
  if (area.height_mm() < kLowestDoor_mm) {
    work.refuse("frame.fronts", area.height_mm(), kLowestDoor_mm, where_of(run));
    return;
  }
  const double gap_mm = work.build().gap_mm;
  const bool two = area.width_mm() > kWidestDoor_mm + kTiny;
  const double each_mm = two ? (area.width_mm() - gap_mm) / 2 : area.width_mm();
  // The side away from the mouth, whose middle is 0.
  const bool right_of_mouth = area.left_mm + area.right_mm > 0;
  for (int i = 0; i < (two ? 2 : 1); ++i) {
    Area one = area;
    if (two && i == 0) one.right_mm = area.left_mm + each_mm;
    if (two && i == 1) one.left_mm = area.right_mm - each_mm;
    Piece door = front_piece(work, run, bay, Kind::Door, one);
    door.nth = i;
    const bool hinge_right = two ? i == 1 : right_of_mouth;
    const double high_mm = one.height_mm();
    const int hinges = high_mm < 900 ? 2 : high_mm < 1600 ? 3 : 4;
    const double end_mm = std::min(kCupEnd_mm, high_mm / 4);
    if (work.build().front_mm >= kCupFrom_mm - kTiny) {
      const double u_mm = hinge_right ? each_mm - kCupIn_mm : kCupIn_mm;
      door.holes.push_back({HoleUse::HingeCup, Face::Far, u_mm, end_mm, true, kCup_mm, kCup_mm,
                            kCupDeep_mm, hinges, (high_mm - 2 * end_mm) / (hinges - 1), false});
    }
    const double upper_mm = high_mm - kPullEnd_mm - kPullPitch_mm;
    const double v_mm = high_mm < 300 ? high_mm / 2 - kPullPitch_mm / 2 : upper_mm;
    door.holes.push_back(
        pull(hinge_right ? kPullIn_mm : each_mm - kPullIn_mm, v_mm, high_mm, false));
    add_piece(work, std::move(door));
  }
}

// Slides are sold by whole steps.
double slide_length_mm(double room_mm) {
  const double steps = std::floor((room_mm - kSlideBehind_mm) / kSlideStep_mm + 1e-6);
  return std::min(steps * kSlideStep_mm, kSlideMost_mm);
}

// How far a slide is packed out where the opening begins this far from the box's side. A strip much
// thinner splits at its screws and is no work for a saw, so the drawer is narrower instead.
double packed_mm(double from_side_mm) {
  return from_side_mm < kPackerFrom_mm ? 0 : std::max(from_side_mm, kPackerLeast_mm);
}

// Inner faces of a box's two sides.
Area inside_of(const Work& work, const Bay& bay) {
  const double sheet_mm = work.build().sheet_mm;
  return {bay.box.left_mm + sheet_mm, bay.box.right_mm - sheet_mm, bay.box.bottom_mm,
          bay.box.top_mm};
}

// Strips ripped off a 1x board: its thickness stands upright behind the slide's middle, and what it
// is ripped to fills the room between side and slide, behind an inset front.
void add_packers(Work& work, const Run& run, int bay, int nth, const Block& drawer) {
  const Bay& of = run.bays[static_cast<std::size_t>(bay)];
  const Area inside = inside_of(work, of);
  const double middle_mm = (drawer.bottom_mm + drawer.top_mm) / 2;
  const Block row{0,
                  0,
                  std::max(run.boxes.near_mm, drawer.near_mm),
                  drawer.far_mm,
                  middle_mm - kOneBy_mm / 2,
                  middle_mm + kOneBy_mm / 2};
  const auto add = [&](double left_mm, double right_mm) {
    if (right_mm - left_mm < kTiny) return;
    Block place = row;
    place.left_mm = left_mm;
    place.right_mm = right_mm;
    Piece piece =
        panel(Kind::SlidePacker, run, bay, place, Axis::Z, Axis::Y, Coat::Sealed, Edge::Sealed);
    piece.material = Material::FaceBoard;
    piece.nth = nth;
    add_piece(work, std::move(piece));
  };
  add(inside.left_mm, inside.left_mm + packed_mm(of.opening.left_mm - inside.left_mm));
  add(inside.right_mm - packed_mm(inside.right_mm - of.opening.right_mm), inside.right_mm);
}

void add_drawer(Work& work, const Run& run, int bay, int nth, const Area& area) {
  if (!big_enough(work, run, area)) return;
  Piece front = front_piece(work, run, bay, Kind::DrawerFront, area);
  front.nth = nth;
  front.holes.push_back(
      pull(area.width_mm() / 2 - kPullPitch_mm / 2, area.height_mm() / 2, area.width_mm(), true));
  add_piece(work, std::move(front));

  const Bay& of = run.bays[static_cast<std::size_t>(bay)];
  const Block& open = of.opening;
  const Area inside = inside_of(work, of);
  const double sheet_mm = work.build().drawer_sheet_mm, slide_mm = work.build().slide_mm;
  Block box;
  box.left_mm =
      slide_mm + std::max(open.left_mm, inside.left_mm + packed_mm(open.left_mm - inside.left_mm));
  box.right_mm =
      std::min(open.right_mm, inside.right_mm - packed_mm(inside.right_mm - open.right_mm)) -
      slide_mm;
  box.near_mm = run.face_mm + work.build().front_mm;
  const double length_mm = slide_length_mm(open.far_mm - box.near_mm);
  box.far_mm = box.near_mm + length_mm;
  box.bottom_mm = std::max(area.bottom_mm + 15, open.bottom_mm + 10);
  box.top_mm = std::min(area.top_mm - 25, open.top_mm - 10);
  struct Need {
    double is_mm, least_mm;
  };
  for (const Need need :
       {Need{box.height_mm(), kDrawerLeast_mm}, Need{box.width_mm(), kDrawerNarrow_mm},
        Need{length_mm, kSlideLeast_mm}}) {
    if (need.is_mm < need.least_mm - kTiny) {
      work.refuse("frame.drawer", need.is_mm, need.least_mm, where_of(run));
      return;
    }
  }
  const auto add = [&](Kind kind, int which, const Block& place, Axis thick, Axis grain) {
    Piece piece = panel(kind, run, bay, place, thick, grain, Coat::Inside, Edge::Sealed);
    piece.material = Material::DrawerSheet;
    piece.nth = which;
    if (kind != Kind::DrawerBottom) piece.at(Face::Above) = {Coat::Inside, Edge::Filled};
    add_piece(work, std::move(piece));
  };
  Block inner = box;
  inner.left_mm += sheet_mm;
  inner.right_mm -= sheet_mm;
  for (const bool right : {false, true}) {
    Block place = box;
    (right ? place.left_mm : place.right_mm) = right ? inner.right_mm : inner.left_mm;
    add(Kind::DrawerSide, 2 * nth + (right ? 1 : 0), place, Axis::X, Axis::Y);
  }
  for (const bool rear : {false, true}) {
    Block place = inner;
    (rear ? place.near_mm : place.far_mm) = rear ? box.far_mm - sheet_mm : box.near_mm + sheet_mm;
    add(Kind::DrawerEnd, 2 * nth + (rear ? 1 : 0), place, Axis::Y, Axis::X);
  }
  inner.near_mm += sheet_mm;
  inner.far_mm -= sheet_mm;
  inner.top_mm = inner.bottom_mm + sheet_mm;
  add(Kind::DrawerBottom, nth, inner, Axis::Z, Axis::X);
  add_packers(work, run, bay, nth, box);
}

void add_drawers(Work& work, const Run& run, int bay, const Area& area) {
  const double gap_mm = work.build().gap_mm;
  const int count =
      std::clamp(static_cast<int>(std::floor(area.height_mm() / kDrawerFront_mm + 0.5)), 1, 4);
  const double each_mm = (area.height_mm() - (count - 1) * gap_mm) / count;
  for (int i = 0; i < count; ++i) {
    Area one = area;
    one.bottom_mm = area.bottom_mm + i * (each_mm + gap_mm);
    one.top_mm = i + 1 == count ? area.top_mm : one.bottom_mm + each_mm;
    add_drawer(work, run, bay, i, one);
  }
}

// One row of slots in a piece that stands across y; its share of the width.
void cut_slot(Piece& piece, double low_mm, double high_mm, double wide_mm) {
  const Face face = piece.kind == Kind::Door ? Face::Near : Face::Far;
  const double bottom_mm = std::max(low_mm, piece.place.bottom_mm);
  piece.holes.push_back({HoleUse::Vent, face, piece.place.width_mm() / 2,
                         (bottom_mm + high_mm) / 2 - piece.place.bottom_mm, false, wide_mm,
                         high_mm - bottom_mm, 0, 1, 0, true});
}

}  // namespace

void add_fronts(Work& work, const Run& run) {
  const double gap_mm = work.build().gap_mm;
  for (std::size_t i = 0; i < run.bays.size(); ++i) {
    const Bay& bay = run.bays[i];
    const int at = static_cast<int>(i);
    Area area = area_of(work, bay);
    switch (bay.holds) {
      case Holds::Open:
        break;
      case Holds::Doors:
        add_doors(work, run, at, area);
        break;
      case Holds::Gas:
        add_doors(work, run, at, area);
        add_gas_openings(work, run, at);
        break;
      case Holds::Drawers:
        add_drawers(work, run, at, area);
        break;
      case Holds::DrawerAndDoors: {
        Area drawer = area;
        drawer.bottom_mm = area.top_mm - kDrawerOver_mm;
        area.top_mm = drawer.bottom_mm - gap_mm;
        add_drawer(work, run, at, 0, drawer);
        add_doors(work, run, at, area);
        break;
      }
    }
  }
}

void add_gas_openings(Work& work, const Run& run, int bay) {
  const Bay& of = run.bays[static_cast<std::size_t>(bay)];
  std::vector<Piece*> doors;
  Piece* back = nullptr;
  for (Piece& piece : work.out.pieces) {
    if (piece.oven != run.oven || piece.bay != bay) continue;
    if (piece.kind == Kind::Door) doors.push_back(&piece);
    if (piece.kind == Kind::Back) back = &piece;
  }
  if (back == nullptr || doors.empty()) return;
  const auto cylinder = cylinder_of(work.config);
  if (of.opening.height_mm() < kGasLeast_mm) {
    const double wanted_mm = cylinder ? cylinder->high_mm : kGasLeast_mm;
    work.refuse("frame.gas_room", of.opening.height_mm(), wanted_mm, clear_words(Way::Height, bay));
    return;
  }
  double room_mm = back->place.width_mm() - 2 * kVentEdge_mm;
  double doors_mm = 0;
  for (const Piece* door : doors) doors_mm += door->place.width_mm() - 2 * kVentEdge_mm;
  room_mm = std::min(room_mm, doors_mm);
  const double area_cm2 = std::max(work.asked.gas_high_cm2, work.asked.gas_low_cm2);
  double high_mm = 0, wide_mm = 0;
  for (const double try_mm : {50.0, 75.0, 100.0}) {
    high_mm = try_mm;
    wide_mm = std::ceil(area_cm2 * 100 / try_mm / 5 - 1e-6) * 5;
    if (wide_mm <= room_mm) break;
  }
  if (wide_mm > room_mm + kTiny) {
    work.refuse("frame.gas_bay", wide_mm, room_mm, where_of(run));
    return;
  }
  const double floor_mm = of.opening.bottom_mm, top_mm = of.opening.top_mm - kVentTop_mm;
  const auto row = [&](double low_mm) {
    // A door may begin above the floor: its slot keeps its height.
    for (Piece* door : doors) {
      const double from_mm = std::max(low_mm, door->place.bottom_mm);
      cut_slot(*door, from_mm, from_mm + high_mm, wide_mm / static_cast<double>(doors.size()));
    }
    cut_slot(*back, low_mm, low_mm + high_mm, wide_mm);
  };
  row(floor_mm);
  // The grill form wants openings at the valve, the other within 5 in of the top: one row where
  // that is one place.
  const double valve_mm = floor_mm + (cylinder ? cylinder->valve_mm : 0);
  if (cylinder && top_mm - high_mm - valve_mm > kWithin_mm) row(valve_mm - high_mm);
  row(std::min(top_mm, doors.front()->place.top_mm - kVentTop_mm) - high_mm);
}

}  // namespace hs::frame
