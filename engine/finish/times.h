#pragma once
// How long a coat or an adhesive waits: touch dry, next coat, hard; and that an adhesive's grab is
// not its strength.
//
// Times between a label's figures are straight lines in temperature: our judgement, on the long
// side, because drying slows faster than that towards the cold. Hours are elapsed hours.

#include <optional>
#include <string_view>

#include "engine/rules/sources.h"

namespace hs::finish {

// Two lines of a paint's label: at 77 F (25 C) and 50 % humidity, and at 35 F (1.7 C) for paints
// that allow it. Defaults: one exterior label (read). The label in hand takes their place.
struct PaintLabel {
  double warm_c = 25, cold_c = 1.7;
  double touch_warm_h = 0.5, touch_cold_h = 6;  // the label's 3 to 6 h: its longer end
  double recoat_warm_h = 4, recoat_cold_h = 24;
  double damp_h = 16;  // next coat not before, in damp air: "overnight", common practice
};

struct Wait {
  double touch_h = 0, recoat_h = 0;
};
// When is a coat touch dry and when may the next one follow? Warmer than warm_c: no sooner than
// there. Above 50 % humidity, the label's, no source gives a figure: overnight (our judgement).
// nullopt colder than cold_c, above 90 % humidity, or where a number is not one.
std::optional<Wait> wait_for(const PaintLabel& label, double air_c, double humidity_percent);

// From the last coat, days: washable after 2 to 4 weeks, hard after about a month (columnist and a
// maker's text, read). Doors that close on each other stick until then: keep the longer figure.
inline constexpr double kWashableLeast_days = 14, kWashableMost_days = 28, kHard_days = 30;

// Solvent cement of PVC trim joints, small ones. Pipe practice, ASTM D2855 family (read): set 15
// min, 1 h, 3 h; handled after 1, 2, 8 h, half as long again above 60 % humidity; above 60 F, above
// 40 F, above 0 F. nullopt colder than 0 F (-17.8 C) or hotter than 100 F (37.8 C).
struct Cement {
  double set_h = 0, handle_h = 0;
};
std::optional<Cement> cement_times(double air_c, double humidity_percent);

// An adhesive by its label: how long it can be moved, when it holds by itself, when it has its
// strength. Absent: the label is to be read.
struct Adhesive {
  std::string_view name;
  std::optional<double> working_h{}, fixture_h{}, full_h{};
  rules::Basis basis = rules::Basis::Memory;
};
// Working 5 to 10 min, holds after 30 to 60, full after 24 h: from memory; the shorter working
// time, the longer others.
Adhesive trim_adhesive();
// Bed of a metal top, full after 24 to 72 h: from memory; the longer.
Adhesive bedding_adhesive();

// What may be done with a joint so many hours after it was closed.
enum class Joint : unsigned char {
  Move,    // still open
  Leave,   // neither to be moved nor let go of: clamped
  Handle,  // holds itself: early grab, carries nothing else
  Load,    // cured
  Unknown  // the label is to be read
};
Joint joint_after(const Adhesive& adhesive, double hours);
std::string_view joint_words(Joint joint);

// Waiting time before anything loads the joint, h: the label's full cure, never its grab; nullopt:
// read the label.
std::optional<double> waiting_h(const Adhesive& adhesive);

}  // namespace hs::finish
