#pragma once
// Where the scene is looked at from: an orbit round the station that cannot lose it, or a cook's
// eye. Moves ease towards what was asked for and then stop.

#include <array>
#include <span>
#include <vector>

#include "web/scene/vec.h"

namespace hs::web::scene {

using Matrix = std::array<double, 16>;  // column by column

struct Pose {
  Vec at, to;
  double fov_deg = 30;  // from the picture's top to its bottom
};

struct Lens {
  Matrix view_projection;
  Vec at;
};
// `aspect`: the picture's width over its height.
Lens lens_of(const Pose& pose, double aspect);
// A view straight down on a rectangle of the ground plan, without perspective; its x runs to the
// right and its y up.
Lens plan_lens(Vec low, Vec high);

// The same picture smaller, inside a larger one: `across` and `up` of its size, its middle moved by
// `right` and `above` in halves of the larger one's width and height.
Lens placed_in(const Lens& lens, double across, double up, double right, double above);

// Where a point is on the picture, 0..1 from its left and top; false behind the camera.
bool place_on(const Lens& lens, Vec point, double& x, double& y);

// The way, of length 1, on which a point of the picture (0..1 from its left and top) is seen.
Vec way_through(const Pose& pose, double aspect, double x, double y);

// How much a person's glance takes in along the picture's longer side, without turning the head.
// Both eyes together see about 120 degrees across (from memory); the part in which shape and colour
// are told is some 60 degrees: our judgement.
inline constexpr double kGlance_deg = 60;

class Camera {
 public:
  // What to keep in view, from which side at first, and the picture's width over its height. Shows
  // all of it until a hand has moved the camera.
  void show(std::span<const Vec> points, double yaw_deg, double aspect);

  void orbit(double right_px, double down_px);
  void pan(double right_px, double down_px, double height_px);
  void zoom(double factor);  // > 1: closer
  void reset();              // to the first view
  void look_through(bool eye) { wants_eye_ = eye; }
  bool asked() const { return asked_; }  // for a move that no step has taken up yet
  bool looks_through() const { return wants_eye_; }
  void set_eye(Vec at, Vec to);
  void set_still(bool still) { still_ = still; }  // no motion but what a finger makes

  // Moves on; false when it has come to rest.
  bool step(double passed_ms);
  Pose pose() const;
  bool inside() const { return mix_ > 0.5; }  // nearer to the cook's eye than to the orbit
  double yaw_deg() const { return wanted_.yaw; }
  double pitch_deg() const { return wanted_.pitch; }
  double distance_mm() const { return wanted_.distance; }

 private:
  struct Orbit {
    double yaw = 0, pitch = 0, distance = 0;
    Vec to;
  };
  Orbit find_home() const;
  void limit();

  std::vector<Vec> points_;
  Vec low_, high_;  // of the points
  double home_yaw_ = 0;
  double aspect_ = 1;
  Orbit home_;
  bool placed_ = false;
  bool moved_ = false;  // by a person; else a new extent or a turned phone shows all of it again
  Orbit wanted_, shown_;
  Vec eye_, eye_to_, shown_eye_, shown_eye_to_;
  bool has_eye_ = false;
  bool wants_eye_ = false;
  bool asked_ = false;
  double mix_ = 0;
  bool still_ = false;
};

}  // namespace hs::web::scene
