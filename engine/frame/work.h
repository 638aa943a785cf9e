#pragma once
// The parts of frame_of(), for frame's own files.

#include <string>
#include <string_view>

#include "engine/frame/as_built.h"
#include "engine/frame/frame.h"

namespace hs::frame {

struct Work {
  const config::Config& config;
  const Asked& asked;
  std::vector<AsBuilt> built;     // that can be believed
  std::vector<AsBuilt> slips;     // the others
  std::vector<std::string> held;  // names that measure() need not judge again
  Frame out;

  const config::Materials& build() const { return config.build; }
  const config::Frame& style() const { return config.frame; }
  bool face_frame() const { return config.frame.face == config::FaceKind::FaceFrame; }
  bool inset() const { return config.frame.fronts == config::FrontKind::Inset; }

  // The built measure of that name where there is one that can be believed; noted either way.
  double measure(std::string name, double planned_mm);
  void drop_built(std::string_view name);
  std::optional<double> built_of(std::string_view name) const;
  // From the feet's ground to the underside of the boards that carry: room for shims on the highest
  // ground, as far as the base is high enough for both.
  double lift_mm() const;
  // The lowest ground that boards reach down to.
  double low_mm() const { return asked.base_mm ? asked.ground_low_mm : 0; }
  void refuse(std::string_view rule, double measured_mm, double limit_mm, std::string_view where);
};

// A carrying board's least height: our judgement.
inline constexpr double kCarrierLeast_mm = 35;
// Fronts are held off the boxes by this: hinges and bumpers.
inline constexpr double kBumper_mm = 2;
// How thick a face frame is.
double face_frame_mm(const Work& work);
// y of the boxes' front edges.
double box_near_mm(const Work& work, const Run& run);
// How far a box's bottom is lifted, so that it is level with a face frame's lower rail.
double bottom_lift_mm(const Work& work);

// A sheet's piece: both wide faces `wide`, every edge `edge`.
Piece panel(Kind kind, const Run& run, int bay, const Block& place, Axis thick, Axis grain,
            Coat wide, Edge edge);
void add_piece(Work& work, Piece piece);

// "under the oven", "under the dough counter".
std::string_view where_of(const Run& run);

// The base's boards of one run; what is beside it is in `work`.
std::vector<BaseBoard> boards_round(const Work& work, const Run& run);
void add_base(Work& work, const Run& run);
void add_boxes(Work& work, const Run& run);
void add_fronts(Work& work, const Run& run);
void add_face_frame(Work& work, const Run& run);
void add_top(Work& work, const Run& run);
// Where a top is deeper than the one that it meets, what is left of its end is turned down.
void add_tails(Work& work);
void add_riser(Work& work);
// Openings high and low in the bay's back and in its doors.
void add_gas_openings(Work& work, const Run& run, int bay);

}  // namespace hs::frame
