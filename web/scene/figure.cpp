#include "web/scene/figure.h"

#include <algorithm>
#include <numbers>

namespace hs::web::scene {
namespace {

constexpr double kEyeDot_mm = 15;
// Eye to the top of the head is never drawn outside this, where one of both heights was guessed.
constexpr double kLeastHead_mm = 70, kMostHead_mm = 150;
// Shares of the stature that are drawn, not measured.
constexpr double kShoulderHalf = 0.105, kHipHalf = 0.050, kAnkleHalf = 0.058, kAnkle = 0.039;
constexpr double kHand = 0.085;

struct Frame {
  Vec origin, right, forward;
  Vec at(double side, double ahead, double up) const {
    return origin + right * side + forward * ahead + Vec{0, 0, up};
  }
};

Frame frame_of(const Stance& stance) {
  const double angle = stance.turned_deg * std::numbers::pi / 180;
  const double c = std::cos(angle), s = std::sin(angle);
  return {stance.under_eye, {c, s, 0}, {-s, c, 0}};
}

double half_head(const cook::Body& body) {
  const double drawn = body.seated ? 0.064 * body.stature_mm : body.stature_mm - body.eye.value_mm;
  return std::clamp(drawn, kLeastHead_mm, kMostHead_mm);
}

// The middle joint of two rods from `a` to `c`, bent towards `pole`. Too far: c comes nearer.
Vec middle_joint(Vec a, Vec& c, double first_mm, double second_mm, Vec pole) {
  const double most = 0.999 * (first_mm + second_mm);
  Vec along = c - a;
  double far = length(along);
  if (far > most) {
    c = a + unit(along) * most;
    along = c - a;
    far = most;
  }
  far = std::max(far, 1.0);
  const Vec way = unit(along);
  const double foot = (first_mm * first_mm - second_mm * second_mm + far * far) / (2 * far);
  const double out = std::sqrt(std::max(0.0, first_mm * first_mm - foot * foot));
  const Vec side = unit(pole - way * dot(pole, way));
  return a + way * foot + side * out;
}

// What bending does to a point of the upper body.
struct Hinge {
  Vec pivot, forward;
  double cosine = 1, sine = 0, drop = 0;

  Vec turned(Vec p) const {
    const Vec from = p - pivot;
    const double ahead = dot(from, forward);
    const Vec side = from - forward * ahead - Vec{0, 0, from.z};
    return pivot + side + forward * (ahead * cosine + from.z * sine) +
           Vec{0, 0, from.z * cosine - ahead * sine - drop};
  }
};

Hinge hinge_of(const cook::Body& body, const Stance& stance, const Frame& frame) {
  const double trunk = stance.posture.trunk_deg * std::numbers::pi / 180;
  const double knee = stance.posture.knee_deg * std::numbers::pi / 180;
  Hinge hinge;
  // On the eye's own plumb line, so that the eye goes exactly where engine/sight bends it.
  hinge.pivot = frame.at(0, 0, body.eye.value_mm - body.eye_lever_mm);
  hinge.forward = frame.forward;
  hinge.cosine = std::cos(trunk);
  hinge.sine = std::sin(trunk);
  hinge.drop = body.leg_mm * (1 - std::cos(knee / 2));
  return hinge;
}

struct Ellipse {
  double up, side, deep, ahead;
};

Shape trunk_of(const cook::Body& body, const Frame& frame, const Hinge& hinge) {
  constexpr int kSides = 18;
  const double h = body.stature_mm, b = std::max(body.belly_mm, 0.05 * h);
  const double hip = body.hip_mm, shoulder = body.shoulder.value_mm;
  const double elbow = std::clamp(body.elbow.value_mm, hip + 0.05 * h, shoulder - 0.08 * h);
  const double chest = shoulder - elbow;
  const Ellipse rings[] = {
      {hip - 0.045 * h, 0.035 * h, 0.35 * b, -0.15 * b},
      {hip - 0.030 * h, 0.072 * h, 0.78 * b, -0.14 * b},
      {hip + 0.010 * h, 0.090 * h, 1.02 * b, -0.12 * b},
      {hip + 0.55 * (elbow - hip), 0.085 * h, 1.04 * b, -0.06 * b},
      {elbow, 0.080 * h, 1.02 * b, -0.03 * b},
      {elbow + 0.45 * chest, 0.094 * h, 1.06 * b, -0.10 * b},
      {elbow + 0.78 * chest, 0.104 * h, 0.96 * b, -0.14 * b},
      {shoulder, 0.098 * h, 0.74 * b, -0.18 * b},
      {shoulder + 0.016 * h, 0.075 * h, 0.52 * b, -0.20 * b},
      {shoulder + 0.028 * h, 0.035 * h, 0.34 * b, -0.20 * b},
  };
  std::vector<Ring> loops;
  for (const Ellipse& e : rings) {
    Ring loop;
    for (int i = 0; i < kSides; ++i) {
      const double angle = 2 * std::numbers::pi * i / kSides;
      loop.push_back(hinge.turned(
          frame.at(e.side * std::cos(angle), e.ahead + e.deep * std::sin(angle), e.up)));
    }
    loops.push_back(std::move(loop));
  }
  return loft(loops, Caps::Both);
}

void add_seat(Mesh& mesh, const cook::Body& body, const Frame& frame) {
  const double seat = std::max(150.0, body.hip_mm - 0.05 * body.stature_mm);
  const double back = -1.5 * body.belly_mm, front = back + 0.24 * body.stature_mm;
  const double half = 0.11 * body.stature_mm;
  const auto block = [&](double x0, double y0, double z0, double x1, double y1, double z1) {
    Ring under{frame.at(x0, y0, z0), frame.at(x1, y0, z0), frame.at(x1, y1, z0),
               frame.at(x0, y1, z0)};
    Ring over = under;
    for (Vec& p : over) p.z += z1 - z0;
    emit_flat(mesh, loft(std::array{under, over}, Caps::Both), Material::Furniture);
  };
  block(-half, back, seat - 45, half, front, seat - 4);
  for (const double x : {-half + 10, half - 45}) {
    for (const double y : {back + 10, front - 45}) block(x, y, 0, x + 35, y + 35, seat - 45);
  }
}

}  // namespace

Joints joints_of(const cook::Body& body, const Stance& stance) {
  const Frame frame = frame_of(stance);
  const Hinge hinge = hinge_of(body, stance, frame);
  const double h = body.stature_mm, b = std::max(body.belly_mm, 0.05 * h);
  const double hh = half_head(body), eye = body.eye.value_mm;
  const double shoulder = body.shoulder.value_mm;
  const double foot = body.toes_mm / 0.45;
  Joints j;
  j.pivot = hinge.turned(hinge.pivot);
  j.eye = hinge.turned(frame.at(0, 0, eye));
  j.head = hinge.turned(frame.at(0, -0.74 * hh, eye));
  j.neck = hinge.turned(frame.at(0, -0.20 * b, shoulder));
  const double upper = std::max(0.12 * h, shoulder - body.elbow.value_mm);
  const double fore = std::max(0.10 * h, body.forearm_hand_mm - 0.108 * h);
  for (int side = 0; side < 2; ++side) {
    const double sign = side == 0 ? -1 : 1;
    j.hip[side] = hinge.turned(frame.at(sign * kHipHalf * h, -0.12 * b, body.hip_mm));
    if (body.seated) {
      const double knee_x = body.toes_mm - 0.070 * h;
      const double seat = std::max(150.0, body.hip_mm - 0.05 * h);
      j.knee[side] = frame.at(sign * kAnkleHalf * h, knee_x - 0.04 * h, seat + 0.030 * h);
      j.ankle[side] = frame.at(sign * kAnkleHalf * h, knee_x - 0.04 * h, kAnkle * h);
    } else {
      j.ankle[side] = frame.at(sign * kAnkleHalf * h,
                               std::min(-0.04 * h, body.toes_mm - 0.74 * foot), kAnkle * h);
      // Equal halves, as engine/sight bends them; straight they reach from hip to ankle.
      const double leg =
          length(frame.at(sign * kHipHalf * h, -0.12 * b, body.hip_mm) - j.ankle[side]) / 2 * 1.001;
      j.knee[side] = middle_joint(j.hip[side], j.ankle[side], leg, leg, frame.forward);
    }
    j.toe[side] = frame.at(sign * (kAnkleHalf + 0.006) * h, body.toes_mm, 0.016 * h);
    if (body.seated) j.toe[side] = frame.at(sign * kAnkleHalf * h, body.toes_mm, 0.016 * h);
    j.shoulder[side] =
        hinge.turned(frame.at(sign * kShoulderHalf * h, -0.16 * b, shoulder - 0.010 * h));
    Vec goal = j.shoulder[side] + frame.right * (sign * 0.022 * h) + frame.forward * (0.05 * h) -
               Vec{0, 0, 0.985 * (upper + fore)};
    if (body.seated) goal = j.knee[side] + Vec{0, 0, 0.06 * h} - frame.forward * (0.06 * h);
    if (stance.hands) {
      goal = *stance.hands + frame.right * (sign * 0.062 * h) - frame.forward * kHand * h;
    }
    const Vec pole = frame.right * (sign * 0.5) - frame.forward - Vec{0, 0, 0.2};
    j.elbow[side] = middle_joint(j.shoulder[side], goal, upper, fore, pole);
    j.wrist[side] = goal;
    const Vec way = stance.hands || body.seated
                        ? unit(frame.forward - Vec{0, 0, 0.15})
                        : unit(goal - j.elbow[side] + frame.forward * (0.03 * h));
    j.hand[side] = goal + way * (kHand * h * 0.75);
  }
  return j;
}

void add_figure(Mesh& mesh, const cook::Body& body, const Stance& stance, Material material) {
  const Frame frame = frame_of(stance);
  const Hinge hinge = hinge_of(body, stance, frame);
  const Joints j = joints_of(body, stance);
  const double h = body.stature_mm;
  const double hh = half_head(body);
  const auto limb = [&](Vec a, Vec c, double ra, double rc) {
    emit_round(mesh, capsule(a, c, ra * h, rc * h), material);
  };
  emit_round(mesh, trunk_of(body, frame, hinge), material);
  // The head keeps level: necks take up what the trunk bends.
  Shape head = ellipsoid({}, {0.68 * hh, 0.86 * hh, 1.0 * hh});
  for (Vec& p : head.points) p = j.head + frame.right * p.x + frame.forward * p.y + Vec{0, 0, p.z};
  emit_round(mesh, head, material);
  limb(j.neck, mixed(j.neck, j.head, 0.8), 0.037, 0.032);
  for (int side = 0; side < 2; ++side) {
    limb(j.shoulder[side], j.elbow[side], 0.031, 0.024);
    limb(j.elbow[side], j.wrist[side], 0.0235, 0.0165);
    limb(j.wrist[side], j.hand[side], 0.0185, 0.0175);
    limb(j.hip[side], j.knee[side], 0.053, 0.035);
    limb(j.knee[side], j.ankle[side], 0.0335, 0.022);
    // The foot: sole on the ground, heel a little behind the ankle.
    const double foot = length(j.toe[side] - j.ankle[side]);
    const Vec way = unit(Vec{j.toe[side].x - j.ankle[side].x, j.toe[side].y - j.ankle[side].y, 0});
    const Vec heel{j.ankle[side].x - way.x * 0.25 * foot, j.ankle[side].y - way.y * 0.25 * foot, 0};
    const Vec ball{j.toe[side].x - way.x * 0.020 * h, j.toe[side].y - way.y * 0.020 * h, 0};
    emit_round(
        mesh,
        capsule(heel + Vec{0, 0, 0.024 * h}, ball + Vec{0, 0, 0.020 * h}, 0.024 * h, 0.020 * h),
        material);
  }
  // On the head's surface beside the face's middle, so that one shows from the side.
  for (const double sign : {-1.0, 1.0}) {
    const Vec eye = j.head + frame.right * (sign * 0.50 * hh) + frame.forward * (0.54 * hh);
    emit_round(mesh, capsule(eye, eye + Vec{0, 0, 1}, kEyeDot_mm, kEyeDot_mm), Material::Eye);
  }
  if (body.seated) add_seat(mesh, body, frame);
}

}  // namespace hs::web::scene
