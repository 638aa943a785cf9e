#include "engine/report/figure.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "engine/base/quantity.h"

namespace hs::report {
namespace {

constexpr int kSteps = 5;
// Size of the head where the eye's height was measured and the stature guessed, or the other way
// round: eye to the top of the head is never drawn outside this. Drawing only.
constexpr double kLeastHead_mm = 70;
constexpr double kMostHead_mm = 150;

// The lengths that the outlines are drawn from. Half a head: eye to the top of the head.
struct Sizes {
  double half_head, belly, toes, eye, shoulder, elbow, hip, stature;
};

Sizes sizes_of(const cook::Body& body) {
  Sizes s{};
  s.eye = body.eye.value_mm;
  s.shoulder = std::min(body.shoulder.value_mm, s.eye - 120);
  s.elbow = std::min(body.elbow.value_mm, s.shoulder - 120);
  s.hip = std::min(body.hip_mm, s.elbow - 40);
  s.belly = body.belly_mm;
  s.toes = body.toes_mm;
  s.stature = body.stature_mm;
  // Seated, the top of the head follows from the eye; 0.064 H is eye to vertex, drawn.
  s.half_head = body.seated ? 0.064 * body.stature_mm : body.stature_mm - s.eye;
  s.half_head = std::clamp(s.half_head, kLeastHead_mm, kMostHead_mm);
  return s;
}

// The head and the front of the trunk down to the belly, then whatever `below` holds, then the
// back up to the head again.
std::vector<Spot> outline_of(const Sizes& s, std::span<const Spot> below) {
  const double h = s.half_head;
  const double e = s.eye;
  const double b = s.belly;
  std::vector<Spot> points{
      {-0.58 * h, e + h},
      {-0.14 * h, e + 0.78 * h},
      {0.10 * h, e + 0.30 * h},
      {0.12 * h, e - 0.06 * h},
      {0.32 * h, e - 0.36 * h},
      {0.16 * h, e - 0.50 * h},
      {0.16 * h, e - 0.82 * h},
      {-0.02 * h, e - 1.06 * h},
      {-0.30 * h, e - 1.18 * h},
      {-0.26 * h, s.shoulder + 0.12 * (e - s.shoulder)},
      {0.44 * b, s.shoulder - 0.16 * (s.shoulder - s.elbow)},
      {0.84 * b, s.shoulder - 0.52 * (s.shoulder - s.elbow)},
      {1.00 * b, s.elbow - 0.10 * (s.elbow - s.hip)},
      {0.98 * b, s.elbow - 0.75 * (s.elbow - s.hip)},
  };
  points.insert(points.end(), below.begin(), below.end());
  const std::array back{
      Spot{-0.92 * b, s.elbow},
      Spot{-1.14 * b, s.shoulder - 0.62 * (s.shoulder - s.elbow)},
      Spot{-1.26 * b, s.shoulder - 0.24 * (s.shoulder - s.elbow)},
      Spot{-1.30 * h, s.shoulder + 0.14 * (e - s.shoulder)},
      Spot{-1.14 * h, e - 0.80 * h},
      Spot{-1.40 * h, e - 0.20 * h},
      Spot{-1.44 * h, e + 0.35 * h},
      Spot{-1.12 * h, e + 0.84 * h},
  };
  points.insert(points.end(), back.begin(), back.end());
  return points;
}

std::vector<Spot> standing(const Sizes& s) {
  const double b = s.belly;
  const double knee = 0.55 * s.hip;
  const double ankle = 0.075 * s.hip;
  const std::array below{
      Spot{0.94 * b, s.hip - 0.08 * s.hip},
      Spot{0.84 * b, s.hip - 0.24 * s.hip},
      Spot{0.62 * b, knee + 0.04 * s.hip},
      Spot{0.56 * b, 0.88 * knee},
      Spot{0.44 * b, 0.56 * knee},
      Spot{0.36 * b, 0.24 * knee},
      Spot{0.46 * b, 1.05 * ankle},
      Spot{0.80 * s.toes, 0.66 * ankle},
      Spot{1.00 * s.toes, 0.28 * ankle},
      Spot{0.94 * s.toes, 0.0},
      Spot{0.20 * s.toes, 0.0},
      Spot{-0.54 * s.toes, 0.0},
      Spot{-0.60 * s.toes, 0.45 * ankle},
      Spot{-0.44 * b, 1.5 * ankle},
      Spot{-0.52 * b, 0.36 * knee},
      Spot{-0.74 * b, 0.68 * knee},
      Spot{-0.54 * b, 0.98 * knee},
      Spot{-0.82 * b, 0.74 * s.hip},
      Spot{-1.22 * b, s.hip - 0.08 * s.hip},
      Spot{-1.22 * b, s.hip + 0.10 * (s.elbow - s.hip)},
  };
  return outline_of(s, below);
}

// Thighs level on the seat, shins upright, the toes where the body says.
std::vector<Spot> sitting(const Sizes& s, double seat_mm) {
  const double b = s.belly;
  const double thigh = std::max(70.0, 0.075 * s.stature);
  const double knee_x = s.toes - 0.070 * s.stature;
  const double shin = 0.062 * s.stature;
  const std::array below{
      Spot{0.96 * b, seat_mm + 1.35 * thigh},
      Spot{0.55 * knee_x + 0.45 * b, seat_mm + 1.12 * thigh},
      Spot{knee_x - 0.2 * shin, seat_mm + 1.02 * thigh},
      Spot{knee_x + 0.10 * shin, seat_mm + 0.45 * thigh},
      Spot{knee_x - 0.15 * shin, 0.50 * seat_mm},
      Spot{knee_x - 0.10 * shin, 0.13 * s.stature * 0.5},
      Spot{s.toes - 0.25 * shin, 45.0},
      Spot{s.toes, 18.0},
      Spot{s.toes - 0.1 * shin, 0.0},
      Spot{knee_x - 0.6 * shin, 0.0},
      Spot{knee_x - 1.25 * shin, 6.0},
      Spot{knee_x - 1.20 * shin, 70.0},
      Spot{knee_x - 1.30 * shin, 0.55 * seat_mm},
      Spot{knee_x - 1.35 * shin, seat_mm - 0.25 * thigh},
      Spot{0.3 * knee_x, seat_mm},
      Spot{-0.9 * b, seat_mm},
      Spot{-1.24 * b, seat_mm + 0.5 * thigh},
      Spot{-1.12 * b, seat_mm + 1.3 * thigh},
  };
  return outline_of(s, below);
}

}  // namespace

Figure figure_of(const cook::Body& body, double eye_x_mm) {
  const Sizes s = sizes_of(body);
  // The trunk lies on the seat: the hip joint is some 0.05 H above it (drawing only).
  const double seat_mm = std::max(150.0, s.hip - 0.05 * s.stature);
  Figure figure;
  figure.shape = smooth_closed(body.seated ? sitting(s, seat_mm) : standing(s), kSteps);
  const double fore = 0.62 * body.forearm_hand_mm;
  const double b = s.belly;
  // Hanging with the hand a little forward; on the lap when seated.
  const double drop = body.seated ? 0.05 : 0.80;
  const double along = body.seated ? 1.0 : 0.60;
  const Spot hand{-0.30 * b + along * fore, s.elbow - drop * fore};
  const double round = s.shoulder + 0.02 * s.stature;
  const std::array arm{
      Spot{-0.40 * b, round},
      Spot{0.02 * b, s.shoulder - 0.02 * s.stature},
      Spot{0.12 * b, s.shoulder - 0.45 * (s.shoulder - s.elbow)},
      Spot{0.06 * b, s.elbow + 0.02 * s.stature},
      Spot{hand.x_mm + 0.006 * s.stature, hand.y_mm + 0.030 * s.stature},
      Spot{hand.x_mm + 0.020 * s.stature, hand.y_mm - 0.004 * s.stature},
      Spot{hand.x_mm - 0.006 * s.stature, hand.y_mm - 0.026 * s.stature},
      Spot{-0.28 * b, s.elbow - 0.024 * s.stature},
      Spot{-0.62 * b, s.elbow},
      Spot{-0.70 * b, s.shoulder - 0.40 * (s.shoulder - s.elbow)},
      Spot{-0.78 * b, s.shoulder - 0.06 * (s.shoulder - s.elbow)},
  };
  figure.arm = smooth_closed(arm, kSteps);
  if (body.seated) {
    const double front = 0.62 * s.toes;
    figure.seat = {
        {-1.5 * s.belly, seat_mm - 6},  {front, seat_mm - 6},          {front, seat_mm - 50},
        {-0.2 * s.belly, seat_mm - 50}, {-0.2 * s.belly, 0},           {-0.7 * s.belly, 0},
        {-0.7 * s.belly, seat_mm - 50}, {-1.5 * s.belly, seat_mm - 50}};
  }
  const auto shift = [eye_x_mm](std::vector<Spot>& points) {
    for (Spot& p : points) p.x_mm += eye_x_mm;
  };
  shift(figure.shape);
  shift(figure.arm);
  shift(figure.seat);
  figure.eye = {eye_x_mm, s.eye};
  figure.toes_mm = eye_x_mm + s.toes;
  figure.back_mm = eye_x_mm;
  figure.top_mm = s.eye + s.half_head;
  for (const Spot& p : figure.shape) figure.back_mm = std::min(figure.back_mm, p.x_mm);
  return figure;
}

Figure bent_figure_of(const cook::Body& body, double eye_x_mm, const sight::Posture& posture) {
  Figure figure = figure_of(body, eye_x_mm);
  const double pivot = figure.eye.y_mm - body.eye_lever_mm;  // the hip joint
  const double half_knee = deg_to_rad(posture.knee_deg / 2), trunk = deg_to_rad(posture.trunk_deg);
  const double drop = body.leg_mm * (1 - std::cos(half_knee));
  const double knee = body.leg_mm / 2 * std::sin(half_knee);
  const double soft = std::max(1.0, 0.16 * body.eye_lever_mm);  // the waist bends over this height
  const auto bend = [&](Spot& p) {
    const double x = p.x_mm - eye_x_mm, y = p.y_mm - pivot;
    const double part = std::clamp((y + soft) / (2 * soft), 0.0, 1.0);
    if (y < 0 && pivot > 0) {
      p.x_mm += knee * std::sin(std::numbers::pi * std::clamp(p.y_mm / pivot, 0.0, 1.0));
      p.y_mm -= drop * std::clamp(p.y_mm / pivot, 0.0, 1.0);
    } else {
      p.y_mm -= drop;
    }
    const double turn = trunk * part;
    p.x_mm += x * (std::cos(turn) - 1) + y * std::sin(turn);
    p.y_mm += y * (std::cos(turn) - 1) - x * std::sin(turn);
  };
  figure.top_mm = 0;
  for (Spot& p : figure.shape) {
    bend(p);
    figure.top_mm = std::max(figure.top_mm, p.y_mm);
    figure.back_mm = std::min(figure.back_mm, p.x_mm);
  }
  for (Spot& p : figure.arm) bend(p);
  bend(figure.eye);
  return figure;
}

std::vector<Spot> front_figure_of(const cook::Body& body, double middle_x_mm, double z_mm) {
  const Sizes s = sizes_of(body);
  const double h = s.half_head, wide = 0.13 * s.stature;  // half a breadth over the arms
  const double low = body.seated ? std::max(150.0, s.hip - 0.05 * s.stature) : s.hip;
  const double foot = 0.055 * s.stature;
  // The right half from the crown down; the left one mirrors it.
  const std::array half{
      Spot{0.0, s.eye + h},
      Spot{0.52 * h, s.eye + 0.80 * h},
      Spot{0.70 * h, s.eye},
      Spot{0.52 * h, s.eye - 0.72 * h},
      Spot{0.36 * h, s.eye - 1.0 * h},
      Spot{0.42 * h, s.shoulder + 0.20 * (s.eye - s.shoulder)},
      Spot{0.80 * wide, s.shoulder},
      Spot{0.98 * wide, s.shoulder - 0.2 * (s.shoulder - s.elbow)},
      Spot{1.08 * wide, s.elbow},
      Spot{1.00 * wide, 0.45 * s.elbow + 0.55 * low},
      Spot{0.96 * wide, low - 0.02 * s.stature},
      Spot{0.74 * wide, low - 0.06 * s.stature},
      Spot{0.66 * wide, 0.55 * low},
      Spot{0.50 * wide, 0.12 * low},
      Spot{0.50 * wide + 0.4 * foot, 0.0},
      Spot{0.10 * wide, 0.0},
      Spot{0.12 * wide, 0.5 * low},
      Spot{0.03 * wide, 0.90 * low},
  };
  std::vector<Spot> through;
  for (const Spot& p : half) through.push_back({middle_x_mm + p.x_mm, z_mm + p.y_mm});
  for (std::size_t i = half.size(); i-- > 1;) {
    through.push_back({middle_x_mm - half[i].x_mm, z_mm + half[i].y_mm});
  }
  std::vector<Spot> figure = smooth_closed(through, kSteps);
  for (Spot& p : figure) p.y_mm = std::max(p.y_mm, z_mm);
  return figure;
}

PlanFigure plan_figure_of(const cook::Body& body, Spot eye, double facing_deg) {
  const double wide = 0.13 * body.stature_mm, deep = std::max(80.0, 0.9 * body.belly_mm);
  const double turn = deg_to_rad(facing_deg);
  const auto place = [&](std::vector<Spot> points) {
    for (Spot& p : points) {
      p = {eye.x_mm + p.x_mm * std::cos(turn) + p.y_mm * std::sin(turn),
           eye.y_mm - p.x_mm * std::sin(turn) + p.y_mm * std::cos(turn)};
    }
    return points;
  };
  const double head = 0.055 * body.stature_mm;
  return {place(ellipse({0, -0.4 * deep}, wide, deep)),
          place(ellipse({0, -0.8 * head}, 0.85 * head, head))};
}

}  // namespace hs::report
