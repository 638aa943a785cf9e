#include "web/scene/camera.h"

#include <algorithm>
#include <numbers>

namespace hs::web::scene {
namespace {

constexpr double kFov_deg = 26;  // a long lens: parallel edges stay nearly so
constexpr double kHomePitch_deg = 22;
constexpr double kLeastPitch_deg = 3, kMostPitch_deg = 86;
constexpr double kPerPixel_deg = 0.32;
constexpr double kEase_ms = 75;    // orbit: two thirds of the way
constexpr double kGlide_ms = 170;  // to and from an eye
constexpr double kNear_mm = 40, kFar_mm = 40000;

double radians(double deg) { return deg * std::numbers::pi / 180; }

Vec direction(double yaw_deg, double pitch_deg) {
  const double p = radians(pitch_deg), y = radians(yaw_deg);
  // From what is looked at to the camera; yaw 0 stands where the cook does.
  return {std::cos(p) * std::sin(y), -std::cos(p) * std::cos(y), std::sin(p)};
}

Matrix product(const Matrix& a, const Matrix& b) {
  Matrix out{};
  for (std::size_t c = 0; c < 4; ++c) {
    for (std::size_t r = 0; r < 4; ++r) {
      for (std::size_t k = 0; k < 4; ++k) out[c * 4 + r] += a[k * 4 + r] * b[c * 4 + k];
    }
  }
  return out;
}

Matrix view_of(Vec at, Vec to, Vec up) {
  const Vec back = unit(at - to);
  const Vec right = unit(cross(up, back));
  const Vec top = cross(back, right);
  return {right.x, top.x, back.x, 0, right.y,         top.y,         back.y,         0,
          right.z, top.z, back.z, 0, -dot(right, at), -dot(top, at), -dot(back, at), 1};
}

double turned(double from_deg, double to_deg, double share) {
  return from_deg + std::remainder(to_deg - from_deg, 360.0) * share;
}

}  // namespace

Lens lens_of(const Pose& pose, double aspect) {
  const double f = 1 / std::tan(radians(pose.fov_deg) / 2);
  const double depth = kNear_mm - kFar_mm;
  const Matrix projection{f / aspect,
                          0,
                          0,
                          0,
                          0,
                          f,
                          0,
                          0,
                          0,
                          0,
                          (kFar_mm + kNear_mm) / depth,
                          -1,
                          0,
                          0,
                          2 * kFar_mm * kNear_mm / depth,
                          0};
  return {product(projection, view_of(pose.at, pose.to, {0, 0, 1})), pose.at};
}

Lens plan_lens(Vec low, Vec high) {
  const Vec middle = mixed(low, high, 0.5);
  const double up = std::max(low.z, high.z) + 1000;
  const Matrix view = view_of({middle.x, middle.y, up}, {middle.x, middle.y, 0}, {0, 1, 0});
  const double far = up + 100;
  const Matrix projection{
      2 / (high.x - low.x), 0, 0, 0, 0, 2 / (high.y - low.y), 0, 0, 0, 0, -2 / far, 0, 0, 0, -1, 1};
  return {product(projection, view), {middle.x, middle.y, up}};
}

Lens placed_in(const Lens& lens, double across, double up, double right, double above) {
  Lens out = lens;
  for (std::size_t c = 0; c < 4; ++c) {
    double* column = &out.view_projection[c * 4];
    column[0] = across * column[0] + right * column[3];
    column[1] = up * column[1] + above * column[3];
  }
  return out;
}

bool place_on(const Lens& lens, Vec p, double& x, double& y) {
  const Matrix& m = lens.view_projection;
  const double w = m[3] * p.x + m[7] * p.y + m[11] * p.z + m[15];
  if (w <= kNear_mm / 2) return false;
  x = 0.5 + 0.5 * (m[0] * p.x + m[4] * p.y + m[8] * p.z + m[12]) / w;
  y = 0.5 - 0.5 * (m[1] * p.x + m[5] * p.y + m[9] * p.z + m[13]) / w;
  return true;
}

Vec way_through(const Pose& pose, double aspect, double x, double y) {
  const double half = std::tan(radians(pose.fov_deg) / 2);
  const Vec ahead = unit(pose.to - pose.at);
  const Vec right = unit(cross(ahead, {0, 0, 1}));
  const Vec up = cross(right, ahead);
  return unit(ahead + right * ((2 * x - 1) * half * aspect) + up * ((1 - 2 * y) * half));
}

Camera::Orbit Camera::find_home() const {
  Orbit orbit{home_yaw_, kHomePitch_deg, 5000, mixed(low_, high_, 0.5)};
  // Every point inside the picture with a little room: its distance along the view must be enough
  // for its distance from the middle line.
  const Vec back = direction(orbit.yaw, orbit.pitch);
  const Vec right = unit(cross({0, 0, 1}, back));
  const Vec up = cross(back, right);
  constexpr double kRoom = 1.05;
  const double high = std::tan(radians(kFov_deg) / 2), wide = high * aspect_;
  // What is nearer shows larger, so the picture's middle is found in a few turns.
  for (int pass = 0; pass < 6; ++pass) {
    double far = 1;
    for (const Vec& p : points_) {
      const Vec from = p - orbit.to;
      far = std::max({far, dot(from, back) + kRoom * std::abs(dot(from, right)) / wide,
                      dot(from, back) + kRoom * std::abs(dot(from, up)) / high});
    }
    orbit.distance = far;
    double left = 1e9, most_right = -1e9, low = 1e9, top = -1e9;
    for (const Vec& p : points_) {
      const Vec from = p - orbit.to;
      const double depth = std::max(1.0, far - dot(from, back));
      left = std::min(left, dot(from, right) / depth);
      most_right = std::max(most_right, dot(from, right) / depth);
      low = std::min(low, dot(from, up) / depth);
      top = std::max(top, dot(from, up) / depth);
    }
    orbit.to = orbit.to + right * ((left + most_right) / 2 * far) + up * ((low + top) / 2 * far);
  }
  return orbit;
}

void Camera::show(std::span<const Vec> points, double yaw_deg, double aspect) {
  const bool same = placed_ && aspect == aspect_ && yaw_deg == home_yaw_ &&
                    std::equal(points.begin(), points.end(), points_.begin(), points_.end());
  if (same || points.empty()) return;
  points_.assign(points.begin(), points.end());
  low_ = high_ = points.front();
  for (const Vec& p : points) {
    low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y), std::min(low_.z, p.z)};
    high_ = {std::max(high_.x, p.x), std::max(high_.y, p.y), std::max(high_.z, p.z)};
  }
  home_yaw_ = yaw_deg;
  aspect_ = std::max(0.1, aspect);
  home_ = find_home();
  if (!moved_) wanted_ = home_;
  if (!placed_) shown_ = wanted_;
  placed_ = true;
  limit();
}

void Camera::limit() {
  wanted_.pitch = std::clamp(wanted_.pitch, kLeastPitch_deg, kMostPitch_deg);
  wanted_.distance = std::clamp(wanted_.distance, 0.16 * home_.distance, 1.8 * home_.distance);
  // What is looked at stays inside the station's own room.
  wanted_.to.x = std::clamp(wanted_.to.x, low_.x, high_.x);
  wanted_.to.y = std::clamp(wanted_.to.y, low_.y, high_.y);
  wanted_.to.z = std::clamp(wanted_.to.z, low_.z, high_.z);
}

void Camera::orbit(double right_px, double down_px) {
  moved_ = asked_ = true;
  wanted_.yaw -= right_px * kPerPixel_deg;
  wanted_.pitch += down_px * kPerPixel_deg;
  limit();
}

void Camera::pan(double right_px, double down_px, double height_px) {
  moved_ = asked_ = true;
  const Vec back = direction(wanted_.yaw, wanted_.pitch);
  const Vec right = unit(cross({0, 0, 1}, back));
  const Vec up = cross(back, right);
  const double per_px =
      2 * wanted_.distance * std::tan(radians(kFov_deg) / 2) / std::max(1.0, height_px);
  wanted_.to = wanted_.to - right * (right_px * per_px) + up * (down_px * per_px);
  limit();
}

void Camera::zoom(double factor) {
  moved_ = asked_ = true;
  wanted_.distance /= std::clamp(factor, 0.2, 5.0);
  limit();
}

void Camera::reset() {
  moved_ = false;
  asked_ = true;
  wanted_ = home_;
}

void Camera::set_eye(Vec at, Vec to) {
  eye_ = at;
  eye_to_ = to;
  if (!has_eye_) {
    shown_eye_ = at;
    shown_eye_to_ = to;
  }
  has_eye_ = true;
}

bool Camera::step(double passed_ms) {
  asked_ = false;
  const double goal = wants_eye_ && has_eye_ ? 1 : 0;
  if (still_) {
    shown_ = wanted_;
    shown_eye_ = eye_;
    shown_eye_to_ = eye_to_;
    mix_ = goal;
    return false;
  }
  const double quick = 1 - std::exp(-passed_ms / kEase_ms);
  const double slow = 1 - std::exp(-passed_ms / kGlide_ms);
  shown_.yaw = turned(shown_.yaw, wanted_.yaw, quick);
  shown_.pitch += (wanted_.pitch - shown_.pitch) * quick;
  shown_.distance += (wanted_.distance - shown_.distance) * quick;
  shown_.to = mixed(shown_.to, wanted_.to, quick);
  shown_eye_ = mixed(shown_eye_, eye_, slow);
  shown_eye_to_ = mixed(shown_eye_to_, eye_to_, slow);
  mix_ += (goal - mix_) * slow;
  const double off_deg = std::abs(std::remainder(wanted_.yaw - shown_.yaw, 360.0)) +
                         std::abs(wanted_.pitch - shown_.pitch);
  const double off_mm = std::abs(wanted_.distance - shown_.distance) +
                        length(wanted_.to - shown_.to) + length(eye_ - shown_eye_) +
                        length(eye_to_ - shown_eye_to_);
  if (off_deg > 0.02 || off_mm > 1 || std::abs(goal - mix_) > 0.0005) return true;
  shown_ = wanted_;
  shown_eye_ = eye_;
  shown_eye_to_ = eye_to_;
  mix_ = goal;
  return false;
}

Pose Camera::pose() const {
  Pose pose;
  pose.to = shown_.to;
  pose.at = shown_.to + direction(shown_.yaw, shown_.pitch) * shown_.distance;
  pose.fov_deg = kFov_deg;
  if (mix_ <= 0) return pose;
  // A cook's eye looks a fixed way; the last of the move is slow.
  pose.at = mixed(pose.at, shown_eye_, mix_);
  pose.to = mixed(pose.to, shown_eye_to_, mix_);
  // The glance is as long as the picture's longer side.
  const double across = std::min(1.0, 1 / aspect_);
  const double fov =
      2 * std::atan(std::tan(radians(kGlance_deg) / 2) * across) * 180 / std::numbers::pi;
  pose.fov_deg += (fov - pose.fov_deg) * mix_;
  return pose;
}

}  // namespace hs::web::scene
