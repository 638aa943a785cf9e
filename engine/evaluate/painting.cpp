#include "engine/evaluate/painting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/parts/sides.h"

namespace hs::evaluate {
namespace {

using frame::Coat;
using parts::At;
using parts::Part;

constexpr double kSolids = 0.4;  // by volume, of an exterior paint: from memory
constexpr double kUsualAir_c = 25, kUsualHumidity = 50;  // what the label's times are for

constexpr std::string_view kFaces[] = {"front", "back", "start", "end", "low edge", "high edge"};

// Openings that go through the two wide faces, mm2.
double openings_mm2(const Part& part) {
  double out = 0;
  for (const parts::Cut& cut : part.cuts) {
    if (cut.deep_mm > 0) continue;
    const double one = cut.long_mm * cut.wide_mm * (cut.round ? std::numbers::pi / 4 : 1);
    out += one * cut.count;
  }
  return out;
}

// The household's colours, each name once.
struct Colours {
  std::vector<std::string> names;
  std::size_t of(const std::string& given, const char* usual) {
    const std::string name = given.empty() ? usual : given;
    const auto at = std::find(names.begin(), names.end(), name);
    if (at != names.end()) return static_cast<std::size_t>(at - names.begin());
    names.push_back(name);
    return names.size() - 1;
  }
};

PaintAmount told(const finish::Amount& amount) {
  return {std::string(amount.name),
          amount.area_m2,
          amount.coats,
          amount.least_l,
          amount.most_l,
          amount.quarts,
          amount.litres};
}

finish::Weather weather_of(const config::Finish& given) {
  finish::Weather air;
  air.air_c = given.air_c.value_or(kUsualAir_c);
  air.humidity_percent = given.humidity ? 100 * *given.humidity : kUsualHumidity;
  air.surface_c = given.surface_c;
  if (given.dry_day) air.hours_to_rain = *given.dry_day ? finish::PaintLimits{}.dry_h : 0;
  air.coldest_after_c = given.coldest_after_c;
  return air;
}

std::vector<WaitingTime> waits_for(const finish::Weather& air) {
  const auto wait = finish::wait_for({}, air.air_c, air.humidity_percent);
  const auto part = [&](double finish::Wait::*hours) {
    return wait ? std::optional((*wait).*hours) : std::nullopt;
  };
  const auto adhesive = [](std::string_view what, const finish::Adhesive& one) {
    return WaitingTime{what, finish::waiting_h(one), one.basis};
  };
  return {{"paint is dry to the touch", part(&finish::Wait::touch_h), rules::Basis::Seen},
          {kRecoat, part(&finish::Wait::recoat_h), rules::Basis::Seen},
          {"paint is hard", 24 * finish::kHard_days, rules::Basis::Seen},
          adhesive("trim adhesive holds a load", finish::trim_adhesive()),
          adhesive("bed of a metal top holds a load", finish::bedding_adhesive())};
}

// Parts that others are glued to: the band as wide as the other's edge stays bare.
bool glued_to(frame::Kind kind) {
  using frame::Kind;
  return kind == Kind::Side || kind == Kind::Back || kind == Kind::Substrate ||
         kind == Kind::RiserFront || kind == Kind::DrawerSide;
}

std::vector<finish::MaskLine> masks_of(const parts::List& parts) {
  std::vector<finish::Feature> out;
  const auto add = [&out](finish::Feature feature, double count) {
    out.insert(out.end(), static_cast<std::size_t>(std::clamp(count, 0.0, 1000.0)), feature);
  };
  for (const Part& part : parts.parts) {
    for (const parts::Cut& cut : part.cuts) {
      const double count = part.quantity() * cut.count;
      if (cut.use == frame::HoleUse::HingeCup) add(finish::Feature::HingeCup, count);
      if (cut.use == frame::HoleUse::Vent) add(finish::Feature::VentMesh, count);
    }
    // Where an edge of one part meets the face of another, in a box and under the metal.
    if (glued_to(part.kind)) add(finish::Feature::GlueFace, part.quantity());
  }
  for (const parts::Hardware& one : parts.hardware) {
    if (one.name.starts_with("hinge on the face")) add(finish::Feature::Hinge, one.quantity);
    if (one.name.starts_with("side slides")) add(finish::Feature::Slide, one.quantity);
  }
  return finish::masking_list(out);
}

}  // namespace

Painting painting_of(const config::Config& config, const parts::List& parts,
                     std::span<const frame::Piece> pieces) {
  Painting out;
  Colours colours;
  const std::size_t body = colours.of(config.finish.body_colour, "cabinets' colour"),
                    front = colours.of(config.finish.front_colour, "doors' colour"),
                    inside = colours.of(config.finish.inside_colour, "colour inside");
  out.colours = std::move(colours.names);
  const int coats = static_cast<int>(std::lround(std::clamp(config.finish.coats, 1.0, 4.0)));

  std::vector<finish::Face> faces;
  for (const Part& part : parts.parts) {
    const std::array<std::string, 6> sides = parts::sides_of(part, pieces);
    for (std::size_t i = 0; i < part.surfaces.size(); ++i) {
      const Coat coat = part.surfaces[i].coat;
      if (coat == Coat::Polish || coat == Coat::Bare) continue;
      const auto at = static_cast<At>(i);
      const bool wide = at == At::Front || at == At::Back;
      const bool end = at == At::Start || at == At::End;
      finish::Face face;
      face.part = frame::kind_name(part.kind);
      face.face = kFaces[i];
      face.long_mm = end ? part.width_mm : part.length_mm;
      face.wide_mm = wide ? part.width_mm : part.thick_mm;
      face.cut_out_mm2 = wide ? openings_mm2(part) : 0;
      face.count = part.quantity();
      face.primer_only = coat == Coat::Sealed;
      const std::size_t colour = coat == Coat::Front ? front : coat == Coat::Inside ? inside : body;
      face.colour = static_cast<int>(colour);
      faces.push_back(face);
      PaintedFace told;
      told.part = part.number;
      told.part_name = face.part;
      told.face = sides[i];
      if (!face.primer_only) told.colour = colour;
      told.area_m2 =
          std::max(0.0, face.long_mm * face.wide_mm - face.cut_out_mm2) * face.count * 1e-6;
      out.faces.push_back(told);
    }
    if (part.kind == frame::Kind::Door || part.kind == frame::Kind::DrawerFront) {
      out.doors_numbered += part.quantity();
    }
  }
  std::vector<finish::Colour> painted;
  for (const std::string& name : out.colours) painted.push_back({name, coats});
  const finish::Coating& coating = out.coating;
  const finish::PaintAnswer answer = finish::paint_for(faces, painted, coating);
  out.primer = told(answer.list.primer);
  if (out.primer.name.empty()) out.primer.name = "primer";
  for (const finish::Amount& amount : answer.list.colours) out.paints.push_back(told(amount));

  out.air = weather_of(config.finish);
  out.air_given = config.finish.air_c && config.finish.humidity;
  if (out.air_given) out.day = finish::day_for_paint(out.air, {});
  out.waits = waits_for(out.air);
  out.masks = masks_of(parts);

  if (config.frame.fronts == config::FrontKind::Inset && out.doors_numbered > 0) {
    const double primer_um = finish::dry_film_um(coating.primer_least_m2_l, kSolids);
    const double coat_um = finish::dry_film_um(coating.least_m2_l, kSolids);
    const double film_mm = finish::film_mm(coating.primer_coats, primer_um, coats, coat_um);
    out.gap_mm = config.build.gap_mm;
    out.film_mm = 2 * film_mm;
    out.gap_left_mm = finish::gap_after_paint_mm(config.build.gap_mm, film_mm, film_mm);
  }
  return out;
}

}  // namespace hs::evaluate
