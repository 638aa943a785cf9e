#include "engine/sheet/bend.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <numbers>

#include "engine/base/quantity.h"

namespace hs::sheet {
namespace {

constexpr double kInch_mm = 25.4;
constexpr double kRadii_in[] = {0.030, 0.060, 0.090, 0.120, 0.188};
constexpr double kThin_in = 0.029, kThick_in = 0.078;
constexpr double kThin[] = {0.483, 0.479, 0.475, 0.475, 0.454};
constexpr double kThick[] = {0.449, 0.446, 0.446, 0.446, 0.438};

}  // namespace

double allowance_mm(const Metal& metal, double angle_deg) {
  return deg_to_rad(angle_deg) * (metal.inside_radius_mm + metal.k * metal.thick_mm);
}

double setback_mm(const Metal& metal, double angle_deg) {
  return (metal.inside_radius_mm + metal.thick_mm) * std::tan(deg_to_rad(angle_deg) / 2);
}

double deduction_mm(const Metal& metal, double angle_deg) {
  return 2 * setback_mm(metal, angle_deg) - allowance_mm(metal, angle_deg);
}

double flat_mm(std::span<const double> outside_mm, const Metal& metal) {
  if (outside_mm.empty()) return 0;
  double sum = 0;
  for (const double one : outside_mm) sum += one;
  return sum - static_cast<double>(outside_mm.size() - 1) * deduction_mm(metal, 90);
}

double shop_allowance_mm(double thick_mm, double inside_radius_mm, double angle_deg) {
  return angle_deg * (0.01743 * inside_radius_mm + 0.0078 * thick_mm);
}

double hem_mm(const Metal& metal, double return_mm, double gap_mm) {
  const double radius = gap_mm / 2;
  const double fold = std::numbers::pi * (radius + metal.k * metal.thick_mm);
  return return_mm + fold - 2 * (radius + metal.thick_mm);
}

std::optional<double> handbook_k(double thick_mm, double inside_radius_mm) {
  const double thick = thick_mm / kInch_mm, radius = inside_radius_mm / kInch_mm;
  constexpr double kSlip = 1e-9;  // inches given in mm come back a bit off
  if (!(thick >= kThin_in - kSlip) || thick > kThick_in + kSlip) return {};
  if (!(radius >= kRadii_in[0] - kSlip) || radius > *std::rbegin(kRadii_in) + kSlip) return {};
  std::size_t i = 1;
  while (i + 1 < std::size(kRadii_in) && kRadii_in[i] < radius) ++i;
  const double part = (radius - kRadii_in[i - 1]) / (kRadii_in[i] - kRadii_in[i - 1]);
  const double thin = kThin[i - 1] + part * (kThin[i] - kThin[i - 1]);
  const double heavy = kThick[i - 1] + part * (kThick[i] - kThick[i - 1]);
  return thin + (thick - kThin_in) / (kThick_in - kThin_in) * (heavy - thin);
}

std::optional<GaugeReadings> gauge_readings(int gauge) {
  struct Row {
    int gauge;
    double stainless_in, carbon_in;
  };
  constexpr Row kRows[] = {
      {14, 0.0781, 0.0747}, {16, 0.0625, 0.0598}, {18, 0.0500, 0.0478}, {20, 0.0375, 0.0359}};
  for (const Row& row : kRows) {
    if (row.gauge != gauge) continue;
    const double awg_in = 0.005 * std::pow(92.0, (36.0 - gauge) / 39.0);
    return GaugeReadings{row.stainless_in * kInch_mm, row.carbon_in * kInch_mm, awg_in * kInch_mm};
  }
  return {};
}

std::string gauge_words(int gauge, Unit unit) {
  const auto read = gauge_readings(gauge);
  if (!read) return {};
  const auto told = [&](double mm) {
    return unit == Unit::Mm ? fixed(mm, 2) : fixed(mm / kInch_mm, 4);
  };
  const std::string stainless = told(read->stainless_mm) + (unit == Unit::Mm ? " mm" : " in");
  return std::to_string(gauge) + " gauge is " + stainless + " in stainless, " +
         told(read->carbon_steel_mm) + " in carbon steel, " + told(read->aluminium_mm) +
         " in aluminium: order " + stainless + ", not a gauge.";
}

std::optional<int> wrong_chart(double thick_mm) {
  const auto is = [&](double one) { return std::abs(thick_mm - one) <= 0.005 * one; };
  std::optional<int> wrong;
  for (int gauge = 14; gauge <= 20; gauge += 2) {
    const GaugeReadings read = *gauge_readings(gauge);
    if (is(read.stainless_mm)) return {};
    if (!wrong && (is(read.carbon_steel_mm) || is(read.aluminium_mm))) wrong = gauge;
  }
  return wrong;
}

double least_flange_mm(const Metal& metal, const Limits& limits) {
  return std::max(limits.flange_t * metal.thick_mm,
                  limits.flange_plus_radius_t * metal.thick_mm + metal.inside_radius_mm);
}

}  // namespace hs::sheet
