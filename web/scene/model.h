#pragma once
// The station, its people and what one of them sees, as meshes: Config, Evaluation and layout in,
// triangles out. Knows no graphics library, no window and no colours.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/station_layout.h"
#include "web/scene/mesh.h"

namespace hs::web::scene {

inline constexpr double kTapeHalf_mm = 420;  // of the feet line on the ground, drawn

// One part of the scene in the layers that it is drawn in.
struct Part {
  Mesh ground;  // painted on the ground, under everything
  Mesh solid;
  Mesh paint;  // painted on something solid
  Mesh veil;   // looked through, both sides
  Mesh ghost;  // solid for a cook who looks in, see-through for who looks from outside
  std::vector<Line> lines;
};

// What one cook sees, in the station's frame.
struct Look {
  bool sees_oven = false;  // works at the oven, and there is one
  bool can_lean = false;   // a bend shows more of the target
  Vec eye, leaning_eye;    // upright, and after the least stoop
  Vec target;              // the pizza's middle
};
Look look_of(const config::Config& config, const evaluate::Evaluation& evaluation,
             const report::StationLayout& layout, std::size_t person);

// Everything built, without the people.
Part station_part(const config::Config& config, const evaluate::Evaluation& evaluation,
                  const report::StationLayout& layout);

struct PeopleView {
  std::size_t person = 0;
  bool leaning = false;  // the person, where they can
  bool inside = false;   // seen through the person's eyes: they are not drawn
};
Part people_part(const config::Config& config, const evaluate::Evaluation& evaluation,
                 const report::StationLayout& layout, const PeopleView& view);

// The painted floor, the pizza and the volume that the eye sees. All areas are exact: convex
// outlines of the engine, cut with each other.
Part sight_part(const config::Config& config, const evaluate::Evaluation& evaluation,
                const report::StationLayout& layout, const PeopleView& view);

// The lamp with its neck, and its light on the pizza; empty without one.
Part lamp_part(const evaluate::Evaluation& evaluation, const report::StationLayout& layout);

// The cabinets pulled apart, the oven lifted off them, in place of the station and its people.
struct ApartView {
  bool on = false;
  std::optional<std::size_t> piece;  // of the frame, that a finger has picked
  bool operator==(const ApartView&) const = default;
};
// Whether there is something to pull apart.
bool can_come_apart(const evaluate::Evaluation& evaluation);
Part apart_part(const config::Config& config, const evaluate::Evaluation& evaluation,
                const report::StationLayout& layout, const ApartView& view);
// How far the oven is lifted there.
double oven_lift_mm(const evaluate::Evaluation& evaluation, const report::StationLayout& layout);
std::vector<Vec> apart_corners(const evaluate::Evaluation& evaluation,
                               const report::StationLayout& layout);
std::uint64_t apart_digest(const config::Config& config, const evaluate::Evaluation& evaluation,
                           const ApartView& view);
// The piece that a ray meets first; nullopt: none.
std::optional<std::size_t> piece_on(const evaluate::Evaluation& evaluation,
                                    const report::StationLayout& layout, Vec from, Vec way);

// What must stay free: room round everything hot, ground to work on, landings. Empty unless shown.
Part zones_part(const evaluate::Evaluation& evaluation, const report::StationLayout& layout,
                bool shown);

// Where a zone's name stands, and what it is.
struct ZoneName {
  Vec at;
  Material material = Material::ClearRoom;
  std::string_view what;              // "clear", "aisle"
  std::optional<double> required_mm;  // absent: nobody has said
};
std::vector<ZoneName> zone_names(const evaluate::Evaluation& evaluation,
                                 const report::StationLayout& layout);

// Corners of everything that the camera should have in view.
std::vector<Vec> corners_of(const evaluate::Evaluation& evaluation,
                            const report::StationLayout& layout, std::size_t person);

// Numbers that are the same only when the part's mesh would be.
std::uint64_t station_digest(const config::Config& config, const evaluate::Evaluation& evaluation);
std::uint64_t people_digest(const config::Config& config, const evaluate::Evaluation& evaluation,
                            const PeopleView& view);
std::uint64_t sight_digest(const config::Config& config, const evaluate::Evaluation& evaluation,
                           const PeopleView& view);
std::uint64_t lamp_digest(const evaluate::Evaluation& evaluation,
                          const report::StationLayout& layout);
std::uint64_t zones_digest(const evaluate::Evaluation& evaluation,
                           const report::StationLayout& layout, bool shown);

}  // namespace hs::web::scene
