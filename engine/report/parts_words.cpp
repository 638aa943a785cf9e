#include "engine/report/parts_words.h"

#include <algorithm>
#include <set>
#include <string_view>

#include "engine/report/metal_sheets.h"
#include "engine/report/survey_words.h"

namespace hs::report {

std::string part_name(const parts::Part& part) {
  const int count = part.quantity();
  return std::to_string(part.number) + " " + std::string(frame::kind_name(part.kind)) +
         (count > 1 ? " (" + std::to_string(count) + " alike)" : "");
}

namespace {

// The panel of the base that a piece of a board stands for.
std::optional<evaluate::PanelPlace> panel_of(const frame::Piece& piece, const frame::Frame& frame) {
  using evaluate::PanelPlace;
  switch (piece.kind) {
    case frame::Kind::BaseFront:
      return piece.oven ? PanelPlace::OvenFront : PanelPlace::DoughFront;
    case frame::Kind::BaseBack:
      return piece.oven ? PanelPlace::OvenBack : PanelPlace::DoughBack;
    case frame::Kind::BaseEnd:
      break;
    default:
      return {};
  }
  for (const frame::Run& run : frame.runs) {
    if (run.oven != piece.oven) continue;
    const bool left = piece.place.left_mm < (run.boxes.left_mm + run.boxes.right_mm) / 2;
    if (left ? run.free_left : run.free_right) {
      return left ? PanelPlace::LeftEnd : PanelPlace::RightEnd;
    }
  }
  return PanelPlace::Between;
}

}  // namespace

std::optional<GroundCut> ground_cut(const parts::Part& part, const evaluate::Evaluation& e) {
  if (part.material != frame::Material::BaseBoard || !e.survey || !e.survey->base || !e.build) {
    return {};
  }
  const evaluate::SurveyResult& s = *e.survey;
  GroundCut out;
  std::set<std::size_t> panels;
  for (const std::size_t at : part.pieces) {
    const auto place = panel_of(e.build->frame.pieces[at], e.build->frame);
    const auto found = place ? std::find(s.places.begin(), s.places.end(), *place) : s.places.end();
    const auto i = static_cast<std::size_t>(found - s.places.begin());
    if (found != s.places.end() && s.base->cuts[i]) {
      panels.insert(i);
    } else {
      out.all = false;
    }
  }
  if (panels.empty()) return {};
  std::size_t sheet = 0;
  for (std::size_t i = 0; i < s.panels.size(); ++i) {
    if (!s.base->cuts[i]) continue;
    ++sheet;
    if (panels.count(i) == 0) continue;
    const survey::Cut& cut = *s.base->cuts[i];
    const bool first = out.sheets.empty();
    out.least_mm = first ? cut.least_mm : std::min(out.least_mm, cut.least_mm);
    out.most_mm = first ? cut.most_mm : std::max(out.most_mm, cut.most_mm);
    out.sheets += (first ? "base_" : ", base_") + std::to_string(sheet);
    if (out.do_not_cut.empty()) out.do_not_cut = do_not_cut(s, i);
  }
  return out;
}

std::string ground_cut_words(const GroundCut& cut, Units units) {
  std::string text = "cut to the ground: " + cut_length(cut.least_mm, units) + " to " +
                     cut_length(cut.most_mm, units) + " wide, see its own sheet " + cut.sheets;
  if (!cut.all) text += "; under one of these the ground is not read";
  if (!cut.do_not_cut.empty()) text += ". " + cut.do_not_cut;
  return text;
}

std::string part_size(const parts::Part& part, const evaluate::Evaluation& e, Units units) {
  if (const auto cut = ground_cut(part, e)) {
    return shop_length(part.length_mm, units, true) + " x " + cut_length(cut->least_mm, units) +
           " to " + cut_length(cut->most_mm, units) + " (" + cut->sheets + ") x " +
           shop_length(part.thick_mm, units, true) + ", " +
           std::string(frame::material_name(part.material));
  }
  const auto length = [&](double mm) {
    return part.material == frame::Material::Metal ? metal_length(mm, units)
                                                   : shop_length(mm, units, true);
  };
  return length(part.length_mm) + " x " + length(part.width_mm) + " x " + length(part.thick_mm) +
         ", " + std::string(frame::material_name(part.material));
}

std::string places_words(const parts::Part& part, const evaluate::Build& build) {
  std::set<std::string> places;
  for (const std::size_t piece : part.pieces) {
    places.insert(parts::place_text(build.frame.pieces[piece]));
  }
  // "under the oven, bay 1", "under the oven, bay 2": bays of one run are told together.
  constexpr std::string_view kBay = ", bay ";
  std::string where, run;
  for (const std::string& place : places) {
    const std::size_t at = place.rfind(kBay);
    const std::string of = at == std::string::npos ? std::string() : place.substr(0, at);
    if (!of.empty() && of == run) {
      where += ", " + place.substr(at + kBay.size());
    } else {
      where += (where.empty() ? "" : "; ") + place;
    }
    run = of;
  }
  return where;
}

std::string surface_words(const frame::Surface& surface) {
  std::string words(frame::coat_name(surface.coat));
  const std::string_view edge = frame::edge_name(surface.edge);
  if (!edge.empty() && edge != words) words += ", " + std::string(edge);
  return words;
}

}  // namespace hs::report
