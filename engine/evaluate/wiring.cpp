// Outlets and lamp: the questions a licensed electrician is asked, and where boxes are cut in.

#include "engine/evaluate/wiring.h"

#include <algorithm>
#include <cmath>

#include "engine/evaluate/build.h"
#include "engine/evaluate/evaluate.h"
#include "engine/frame/cylinder.h"
#include "engine/parts/parts.h"
#include "engine/parts/sides.h"

namespace hs::evaluate {
namespace {

using config::WireSize;
using frame::Kind;
using frame::Piece;
using power::Fitting;

// A single outlet box for wet places, with its hood and plug outside: our judgement, measure yours.
constexpr double kBoxWide_mm = 70, kBoxHigh_mm = 120, kBoxDeep_mm = 75, kHood_mm = 90;
constexpr double kBoxPitch_mm = 150, kBoxFromEdge_mm = 130;
// Counted as they are placed: from the front edge of a side, from the left of a back.
constexpr std::string_view kBoxNames[] = {"the first", "the second", "the third", "the fourth"};
constexpr double kWireHole_mm = 25, kWireOut_mm = 30;
constexpr double kMm2Per[] = {1.5, 2.5, 4, 6};
constexpr int kAwgPer[] = {14, 12, 10, 8};
constexpr double kMmPerM = 1000;

double breaker_a(config::Breaker breaker) {
  constexpr double kAmps[] = {10, 15, 16, 20};
  return kAmps[static_cast<std::size_t>(breaker)];
}
int year_of(config::CodeYear edition) {
  constexpr int kYears[] = {2017, 2020, 2023, 2026};
  return kYears[static_cast<std::size_t>(edition)];
}
std::optional<int> awg_of(const std::optional<WireSize>& size) {
  if (!size || *size > WireSize::Awg8) return std::nullopt;
  return kAwgPer[static_cast<std::size_t>(*size)];
}
std::optional<double> mm2_of(const std::optional<WireSize>& size) {
  if (!size || *size < WireSize::Mm2_1_5) return std::nullopt;
  return kMm2Per[static_cast<std::size_t>(*size) - static_cast<std::size_t>(WireSize::Mm2_1_5)];
}

double drop_over(const config::Power& given, double amps, double run_m) {
  if (const auto awg = awg_of(given.wire)) {
    return power::drop_v(amps, run_m, power::wire(*awg)->stranded_ohm_kft);
  }
  return power::drop_mm2_v(amps, run_m, *mm2_of(given.wire));
}

void add_drop(const config::Power& given, Wiring& out) {
  if (given.wire) {
    // The drop grows with the run, so that one metre tells of all.
    const double each_v = drop_over(given, out.circuit.amps, 1);
    if (each_v > 0) {
      out.longest_run_mm = out.advised_share * out.volts / each_v * kMmPerM;
    }
  }
  if (!given.run_mm) return;
  const double run_m = *given.run_mm / kMmPerM;
  if (given.wire) {
    out.drop_v = drop_over(given, out.circuit.amps, run_m);
    out.drop_share = *out.drop_v / out.volts;
  }
  if (out.code == power::Code::Nec) {
    out.thinnest = power::wire_for_run(out.volts, out.circuit.amps, run_m, out.breaker_a);
  }
}

void add_answers(const config::Config& config, const Evaluation& e, Wiring& out) {
  const config::Power& given = config.power;
  const auto ask = [&out](std::string_view about, const power::Answer& answer) {
    out.answers.push_back({about, answer});
  };
  if (given.buried) {
    constexpr power::Buried kBuried[] = {power::Buried::Cable, power::Buried::MetalPipe,
                                         power::Buried::PlasticPipe, power::Buried::Gfci20A,
                                         power::Buried::LowVoltage};
    ask("cover over the buried wire",
        power::cover_depth(out.code, kBuried[static_cast<std::size_t>(*given.buried)],
                           given.under_slab.value_or(false)));
  } else {
    power::Answer unknown;
    unknown.words = "unknown: say how it lies in the ground, and ask the licensed electrician";
    ask("cover over the buried wire", unknown);
  }
  std::optional<bool> covered;
  if (config.site.cover.kind) {
    covered = *config.site.cover.kind == config::CoverKind::Roof;
  }
  std::optional<bool> rain;
  if (const auto& wet = e.surroundings.rain) {
    rain = wet->top_mm > 0 || wet->face_dry_mm < wet->face_mm;
  }
  const power::Wetness where = power::wetness(true, covered, rain);
  if (given.outlets > 0) {
    ask("outlet and its cover", power::outlet_cover(out.code, where));
    power::Outlet outlet;
    outlet.volts_to_ground = out.volts;
    outlet.breaker_a = out.breaker_a;
    outlet.edition = year_of(given.edition);
    ask("protection of the outlets", power::shock_protection(out.code, outlet));
  }
  if (given.lamp_w > 0) {
    ask("mark on the lamp", power::lamp_mark(out.code, where));
    power::Outlet lamp;
    lamp.receptacle = false;
    lamp.volts_to_ground = out.volts;
    lamp.breaker_a = out.breaker_a;
    lamp.edition = year_of(given.edition);
    ask("protection of the wired lamp", power::shock_protection(out.code, lamp));
  }
}

// A cable in and a cable on: two conductors and a ground each, one outlet, one clamp.
void add_box(const config::Power& given, Wiring& out) {
  const auto awg = awg_of(given.wire);
  if (out.code != power::Code::Nec || given.outlets == 0 || !awg) return;
  const int cables = given.outlets > 1 ? 2 : 1;
  power::BoxContents contents;
  contents.conductors.push_back({*awg, 2 * cables});
  contents.grounds.push_back({*awg, cables});
  contents.devices.push_back({*awg});
  contents.inside_clamps = true;
  if (auto box = power::box_fill_by_edition(contents)) out.box = *std::move(box);
}

// "left side under the oven, bay 1": left and right as the cook sees them.
std::string panel_place(const Piece& piece) {
  std::string name(frame::kind_name(piece.kind));
  if (piece.kind == Kind::Side) name = (piece.nth == 0 ? "left " : "right ") + name;
  return name + " " + parts::place_text(piece);
}

struct Placer {
  const config::Config& config;
  const frame::Frame& frame;
  const parts::List& list;
  Wiring& out;
  std::vector<std::size_t> pieces{};  // of each panel, its piece

  const Piece* piece(Kind kind, bool oven, int bay, int nth) const {
    for (const Piece& one : frame.pieces) {
      if (one.kind == kind && one.oven == oven && one.bay == bay && one.nth == nth) return &one;
    }
    return nullptr;
  }
  const frame::Run* run(bool oven) const {
    for (const frame::Run& one : frame.runs) {
      if (one.oven == oven && !one.bays.empty()) return &one;
    }
    return nullptr;
  }

  std::size_t panel(const Piece* from) {
    if (from == nullptr) return out.panels.size();  // a panel that is not there
    const auto index = static_cast<std::size_t>(from - frame.pieces.data());
    const auto known = std::find(pieces.begin(), pieces.end(), index);
    if (known != pieces.end()) return static_cast<std::size_t>(known - pieces.begin());
    pieces.push_back(index);
    const int number = parts::number_of(list, index);
    out.panel_parts.push_back(
        {number, list.parts[static_cast<std::size_t>(number) - 1].quantity(), panel_place(*from)});
    power::Panel panel;
    panel.name = frame::kind_name(from->kind);
    panel.place = from->place;
    panel.thick = static_cast<power::Through>(from->thick);
    panel.painted = config.power.painted_first;
    out.panels.push_back(panel);
    return out.panels.size() - 1;
  }

  // The end panel of a run that is farther from the other one, and which side that is.
  struct End {
    const Piece* piece = nullptr;
    bool right = false;
  };
  End end_of(bool oven) const {
    const frame::Run* of = run(oven);
    if (of == nullptr) return {};
    const bool right = oven ? !frame.places.dough_right : frame.places.dough_right;
    const int bay = right ? static_cast<int>(of->bays.size()) - 1 : 0;
    return {piece(Kind::Side, oven, bay, right ? 1 : 0), right};
  }

  void add(std::string_view name, power::Kind kind, std::size_t panel, const Block& body) {
    Fitting fitting;
    fitting.name = name;
    fitting.kind = kind;
    fitting.panel = panel;
    fitting.body = body;
    out.fittings.push_back(fitting);
  }

  void outlets() {
    const int count = std::min(static_cast<int>(std::lround(config.power.outlets)),
                               static_cast<int>(std::size(kBoxNames)));
    if (count == 0) return;
    const bool back = config.power.outlet_at == config::OutletAt::DoughBack;
    const bool oven = config.power.outlet_at == config::OutletAt::OvenEnd;
    const End end = end_of(oven);
    const Piece* let_in = end.piece;
    if (back) {
      const frame::Run* dough = run(false);
      let_in =
          dough == nullptr
              ? nullptr
              : piece(Kind::Back, false,
                      frame.places.dough_right ? static_cast<int>(dough->bays.size()) - 1 : 0, 0);
    }
    const std::size_t at = panel(let_in);
    const Block place = let_in == nullptr ? Block{} : let_in->place;
    for (int i = 0; i < count; ++i) {
      const double along_mm = kBoxFromEdge_mm + kBoxPitch_mm * i;
      Block body;
      body.bottom_mm = config.power.outlet_up_mm - kBoxHigh_mm / 2;
      body.top_mm = body.bottom_mm + kBoxHigh_mm;
      if (back) {
        body.left_mm = place.left_mm + along_mm - kBoxWide_mm / 2;
        body.right_mm = body.left_mm + kBoxWide_mm;
        body.near_mm = place.far_mm - kBoxDeep_mm;
        body.far_mm = place.far_mm + kHood_mm;
      } else {
        body.near_mm = place.near_mm + along_mm - kBoxWide_mm / 2;
        body.far_mm = body.near_mm + kBoxWide_mm;
        body.left_mm = end.right ? place.right_mm - kBoxDeep_mm : place.left_mm - kHood_mm;
        body.right_mm = end.right ? place.right_mm + kHood_mm : place.left_mm + kBoxDeep_mm;
      }
      add(count > 1 ? kBoxNames[i] : "", power::Kind::OutletBox, at, body);
    }
    // The supply comes up through the bottom of the same bay.
    if (let_in == nullptr) return;
    wire_hole("for the outlets", piece(Kind::Bottom, let_in->oven, let_in->bay, 0));
  }

  // Middle of the panel, through its thickness.
  void wire_hole(std::string_view name, const Piece* through) {
    const std::size_t at = panel(through);
    Block body = through == nullptr ? Block{} : through->place;
    const auto middle = [](double& low, double& high) {
      const double at_mm = (low + high) / 2;
      low = at_mm - kWireHole_mm / 2;
      high = at_mm + kWireHole_mm / 2;
    };
    const auto out_of = [](double& low, double& high) {
      low -= kWireOut_mm;
      high += kWireOut_mm;
    };
    const frame::Axis thick = through == nullptr ? frame::Axis::X : through->thick;
    thick == frame::Axis::X ? out_of(body.left_mm, body.right_mm)
                            : middle(body.left_mm, body.right_mm);
    thick == frame::Axis::Y ? out_of(body.near_mm, body.far_mm) : middle(body.near_mm, body.far_mm);
    thick == frame::Axis::Z ? out_of(body.bottom_mm, body.top_mm)
                            : middle(body.bottom_mm, body.top_mm);
    add(name, power::Kind::WireHole, at, body);
  }

  void lamp() {
    if (!(config.power.lamp_w > 0)) return;
    const frame::Run* of = run(true);
    const bool right = config.light.mount == config::Mount::Right;
    const int bay = of == nullptr || !right ? 0 : static_cast<int>(of->bays.size()) - 1;
    wire_hole("for the lamp", piece(Kind::Back, true, bay, 0));
  }

  void keepouts(const Evaluation& e) {
    for (const frame::Run& of : frame.runs) {
      for (std::size_t bay = 0; bay < of.bays.size(); ++bay) {
        drawers(of.oven, static_cast<int>(bay));
        if (of.bays[bay].holds == config::Holds::Gas) gas(of.bays[bay].opening);
      }
    }
    for (const clearance::Hot hot : {clearance::Hot::Oven, clearance::Hot::Grill}) {
      hot_room(e, hot);
    }
  }

  // Where nobody has said how much room, nobody knows: all such sides of a body are one answer.
  void hot_room(const Evaluation& e, clearance::Hot hot) {
    const std::string round =
        hot == clearance::Hot::Oven ? "free room round the oven (" : "free room round the grill (";
    const clearance::Zone* unknown = nullptr;
    std::string sides;
    for (const clearance::Zone& zone : e.surroundings.hot) {
      if (zone.hot != hot) continue;
      const std::string side(clearance::side_name(zone.need.side));
      if (!zone.box) {
        unknown = &zone;
        sides += (sides.empty() ? "" : ", ") + side;
        continue;
      }
      keep(round + side + ")",
           hot == clearance::Hot::Oven && zone.need.side == clearance::Side::Front
               ? power::Zone::Mouth
               : power::Zone::HotTop,
           *zone.box);
      // Outside the room that a listing or a rule keeps free nothing more is asked for.
      out.keepouts.back().clear_mm = 0;
    }
    if (unknown != nullptr) keep(round + sides + ")", power::Zone::HotTop, unknown->body);
  }

  void keep(std::string name, power::Zone zone, const Block& place) {
    power::Keepout out_of;
    out_of.name = std::move(name);
    out_of.zone = zone;
    out_of.place = place;
    out.keepouts.push_back(out_of);
  }

  // All drawers of a bay, from the front on, with their slides.
  void drawers(bool oven, int bay) {
    std::optional<Block> all;
    for (const Piece& one : frame.pieces) {
      const bool drawer = one.kind == Kind::DrawerSide || one.kind == Kind::DrawerEnd ||
                          one.kind == Kind::DrawerBottom;
      if (!drawer || one.oven != oven || one.bay != bay) continue;
      if (!all) all = one.place;
      all->left_mm = std::min(all->left_mm, one.place.left_mm);
      all->right_mm = std::max(all->right_mm, one.place.right_mm);
      all->near_mm = std::min(all->near_mm, one.place.near_mm);
      all->far_mm = std::max(all->far_mm, one.place.far_mm);
      all->bottom_mm = std::min(all->bottom_mm, one.place.bottom_mm);
      all->top_mm = std::max(all->top_mm, one.place.top_mm);
    }
    if (!all) return;
    keep("drawers", power::Zone::Drawer, *all);
    for (const bool right : {false, true}) {
      Block slide = *all;
      slide.left_mm = right ? all->right_mm : all->left_mm - config.build.slide_mm;
      slide.right_mm = right ? all->right_mm + config.build.slide_mm : all->left_mm;
      if (slide.width_mm() > 0) keep("drawers' slides", power::Zone::Slide, slide);
    }
  }

  // The bay, and the valve on top of a cylinder in its middle.
  void gas(const Block& opening) {
    keep("gas bay", power::Zone::GasBay, opening);
    Block valve = opening;
    valve.left_mm = valve.right_mm = (opening.left_mm + opening.right_mm) / 2;
    valve.near_mm = valve.far_mm = (opening.near_mm + opening.far_mm) / 2;
    // One that we know no size of: as high as the bay.
    const auto cylinder = frame::cylinder_of(config);
    const double high_mm = cylinder ? cylinder->high_mm : opening.height_mm();
    valve.bottom_mm = valve.top_mm = std::min(opening.bottom_mm + high_mm, opening.top_mm);
    keep("cylinder's valve", power::Zone::GasValve, valve);
  }
};

// From the station's axes to the part's own: it may lie turned on the bench.
OnPart on_part(const power::Cutout& cut, const power::Panel& panel, const parts::Part& part,
               std::size_t piece, const Piece& from) {
  const auto which = std::find(part.pieces.begin(), part.pieces.end(), piece);
  const auto& faces = part.faces[static_cast<std::size_t>(which - part.pieces.begin())];
  const double high_mm = cut.round ? cut.wide_mm : cut.high_mm;
  const auto u = static_cast<frame::Axis>(power::u_of(panel.thick));
  const auto place = [&](parts::At low, double& middle_mm, double& size_mm) {
    const frame::Face face = faces[static_cast<std::size_t>(low)];
    const bool is_u = frame::axis_of(face) == u;
    size_mm = is_u ? cut.wide_mm : high_mm;
    middle_mm = (is_u ? cut.u_mm : cut.v_mm) + size_mm / 2;
    if (frame::is_high(face)) {
      middle_mm = frame::size_of(panel.place, frame::axis_of(face)) - middle_mm;
    }
  };
  OnPart out;
  out.left_edge = parts::side_of(from, faces[static_cast<std::size_t>(parts::At::Start)]);
  place(parts::At::Start, out.along_mm, out.long_mm);
  place(parts::At::Low, out.across_mm, out.wide_mm);
  return out;
}

}  // namespace

std::optional<Wiring> wiring_of(const config::Config& config, const Evaluation& e,
                                const Build& build) {
  const config::Power& given = config.power;
  if (given.outlets == 0 && given.lamp_w == 0) return std::nullopt;
  Wiring out;
  const bool nec = given.supply == config::Supply::V120;
  out.code = nec ? power::Code::Nec : power::Code::Iec;
  out.volts = nec ? 120 : 230;
  out.breaker_a = breaker_a(given.breaker);
  out.advised_share = nec ? power::kBranchDrop : power::kTotalDrop;
  std::vector<power::Load> loads;
  if (given.outlets > 0) loads.push_back({given.outlet_w, false});
  if (given.lamp_w > 0) loads.push_back({given.lamp_w, true});
  out.circuit = power::circuit_of(loads, out.volts, out.breaker_a);
  add_drop(given, out);
  add_answers(config, e, out);
  add_box(given, out);
  Placer placer{config, build.frame, build.parts, out};
  placer.outlets();
  placer.lamp();
  placer.keepouts(e);
  out.cutting = power::cut_panels(out.panels, out.fittings, out.keepouts);
  for (const power::Cutout& cut : out.cutting.cutouts) {
    const std::size_t panel = out.fittings[cut.fitting].panel;
    const auto number = static_cast<std::size_t>(out.panel_parts[panel].part);
    out.on_part.push_back(on_part(cut, out.panels[panel], build.parts.parts[number - 1],
                                  placer.pieces[panel], build.frame.pieces[placer.pieces[panel]]));
  }
  return out;
}

}  // namespace hs::evaluate
