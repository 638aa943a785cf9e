#include "engine/frame/frame.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/base/quantity.h"
#include "engine/config/fields.h"
#include "engine/frame/stack.h"
#include "engine/frame/stock.h"
#include "engine/frame/work.h"

namespace hs::frame {
namespace {

constexpr double kTiny = 0.05;      // half a quantum of length
constexpr double kBoxStep_mm = 10;  // boxes are whole steps high

std::string run_name(const Run& run) { return run.oven ? "oven" : "dough"; }

double sheets_of(Work& work, const Run& run) {
  return work.measure(run_name(run) + ".substrate.thick", sheets_mm(work.build()));
}

// The counters that cabinets carry, from the left, with what stands beside each.
void place_runs(Work& work) {
  const Places& places = work.out.places;
  const bool stand = places.oven_stand && !places.masonry_base;
  const auto add = [&](const std::optional<Block>& counter, bool oven, bool other_on_left,
                       bool other) {
    if (!counter) return;
    Run run;
    run.oven = oven;
    run.counter = *counter;
    run.free_left = !(other && other_on_left);
    run.free_right = !(other && !other_on_left);
    work.out.runs.push_back(run);
  };
  const bool dough_right = places.dough_right;
  const auto dough = [&] {
    add(places.dough_counter, false, dough_right, places.oven_stand.has_value());
  };
  if (!dough_right) dough();
  if (stand) add(places.oven_stand, true, !dough_right, places.dough_counter.has_value());
  if (dough_right) dough();
}

bool far_off(double built_mm, double planned_mm) {
  return std::abs(built_mm - planned_mm) > kFarOff_mm + kTiny;
}

// Base and box follow each other: each is held against the drawing before either is used.
void drop_slips(Work& work, const std::string& box, double under_mm, double plain_box_mm) {
  work.held = {"base", box};
  const bool asked = work.asked.base_mm && !work.style().box_mm;
  const double base_mm = asked ? *work.asked.base_mm : under_mm - plain_box_mm;
  const auto base_built = work.built_of("base");
  const bool base_slip = base_built && far_off(*base_built, base_mm);
  if (base_slip) work.drop_built("base");
  const double follows_mm = under_mm - (base_built && !base_slip ? *base_built : base_mm);
  const auto box_built = work.built_of(box);
  if (box_built && far_off(*box_built, under_mm - base_mm) && far_off(*box_built, follows_mm)) {
    work.drop_built(box);
  }
}

// Is the base one that can be made? What is measured needs no more than what carries it; where a
// box's height is given, that height is what must change.
void judge_base(Work& work, const Run& first, double under_mm, double least_mm) {
  const double base_mm = work.out.base_mm, carried_mm = work.lift_mm() + kCarrierLeast_mm;
  const bool box_built = work.built_of(run_name(first) + ".box").has_value();
  const bool base_built = work.built_of("base").has_value();
  const auto& box_mm = work.style().box_mm;
  const bool stands = box_built || base_built || (work.asked.base_mm && !box_mm);
  const double needed_mm = stands ? carried_mm : std::max(carried_mm, least_mm);
  // Told as heights over the ground that they are counted from.
  const double ground_mm = work.asked.base_mm ? work.asked.ground_high_mm : 0;
  const double board_mm = base_mm - work.low_mm();
  const bool low = base_mm < needed_mm - kTiny;
  if (!low && board_mm <= kWidest_mm + kTiny) return;
  const auto refuse_base = [&](std::string_view where) {
    if (low) {
      work.refuse("frame.base", std::max(0.0, base_mm - ground_mm), needed_mm - ground_mm, where);
    } else {
      work.refuse("frame.base_high", board_mm, kWidest_mm, where);
    }
  };
  if (box_built && !base_built) {
    const std::string_view where = first.oven ? "under the oven, with its box as measured"
                                              : "under the dough counter, with its box as measured";
    refuse_base(where);
  } else if (box_mm && !base_built) {
    const double to_mm =
        low ? std::floor((under_mm - needed_mm) / kBoxStep_mm + 1e-6)
            : std::ceil((under_mm - work.low_mm() - kWidest_mm) / kBoxStep_mm - 1e-6);
    if (to_mm * kBoxStep_mm < kLeastBox_mm) {
      work.refuse("frame.box", std::max(0.0, under_mm - needed_mm), kLeastBox_mm, where_of(first));
    } else {
      work.refuse("frame.box_given", *box_mm, to_mm * kBoxStep_mm, where_of(first));
    }
  } else {
    refuse_base(where_of(first));
  }
}

// Base and boxes: what is built already stands, the rest makes the top land.
void set_heights(Work& work) {
  Frame& out = work.out;
  const auto lead =
      std::find_if(out.runs.begin(), out.runs.end(), [](const Run& run) { return !run.oven; });
  Run& first = lead == out.runs.end() ? out.runs.front() : *lead;
  const double least_mm = std::max(work.style().base_mm, work.build().shim_mm + kCarrierLeast_mm);
  first.sheets_mm = sheets_of(work, first);
  const double under_mm = first.counter.height_mm() - stack_mm(work.build(), first.sheets_mm);
  const double plain_box_mm = work.style().box_mm.value_or(
      std::floor((under_mm - least_mm) / kBoxStep_mm + 1e-6) * kBoxStep_mm);
  drop_slips(work, run_name(first) + ".box", under_mm, plain_box_mm);
  const auto base_built = work.built_of("base");
  // Boards that are cut to the ground stand like a base that is there; a box that is given does not
  // follow them.
  const bool box_given = work.style().box_mm || work.built_of(run_name(first) + ".box");
  const auto base_set = base_built || box_given ? base_built : work.asked.base_mm;
  const double box_mm =
      work.measure(run_name(first) + ".box", base_set ? under_mm - *base_set : plain_box_mm);
  // Drawn, the base takes up what boxes leave; boxes that are made to a built base leave it alone.
  const double drawn_box_mm = work.built_of(run_name(first) + ".box").value_or(plain_box_mm);
  out.base_mm = work.measure(
      "base", !box_given && work.asked.base_mm ? *work.asked.base_mm : under_mm - drawn_box_mm);
  if (!work.style().box_mm && box_mm < kLeastBox_mm - kTiny) {
    work.refuse("frame.box", box_mm, kLeastBox_mm, where_of(first));
    return;
  }
  judge_base(work, first, under_mm, least_mm);
  for (Run& run : out.runs) {
    double height_mm = box_mm;
    if (&run != &first) {
      run.sheets_mm = sheets_of(work, run);
      height_mm = work.measure(
          run_name(run) + ".box",
          run.counter.height_mm() - stack_mm(work.build(), run.sheets_mm) - out.base_mm);
    }
    if (height_mm < kLeastBox_mm - kTiny && work.out.refusals.empty()) {
      work.refuse("frame.box", height_mm, kLeastBox_mm, where_of(run));
    }
    run.boxes.bottom_mm = out.base_mm;
    run.boxes.top_mm = out.base_mm + height_mm;
    run.top_mm = run.boxes.top_mm + stack_mm(work.build(), run.sheets_mm);
  }
}

void set_plan(Work& work, Run& run) {
  const config::Station& station = work.config.station;
  const double edge_mm = work.build().metal_mm + work.build().fit_mm;
  const double overhang_mm = station.overhang_mm;
  run.face_mm = run.counter.near_mm + overhang_mm;
  run.toe_mm = run.face_mm + station.toe_space_mm;
  run.boxes.left_mm = run.counter.left_mm + (run.free_left ? overhang_mm : 0);
  run.boxes.right_mm = run.counter.right_mm - (run.free_right ? overhang_mm : 0);
  run.boxes.far_mm = run.counter.far_mm - edge_mm;
  run.boxes.near_mm = box_near_mm(work, run);
  const double needed_mm = edge_mm + kSkirtAir_mm;
  if (overhang_mm < needed_mm - kTiny) {
    work.refuse("frame.overhang", overhang_mm, needed_mm, where_of(run));
  }
  if (run.boxes.depth_mm() < kLeastDepth_mm - kTiny) {
    work.refuse("frame.depth", run.boxes.depth_mm(), kLeastDepth_mm, where_of(run));
  }
  const double base_mm = run.boxes.far_mm - run.toe_mm;
  const double boards_mm = 2 * (work.build().base_board_mm + kTwoBy_mm) + 60;
  if (base_mm < boards_mm - kTiny) {
    work.refuse("frame.depth", base_mm, boards_mm, where_of(run));
  }
}

config::Holds holds_of(const Work& work, const Run& run, int from_oven, int count) {
  const config::Frame& style = work.style();
  if (run.oven) return style.oven_bays;
  const std::optional<config::Holds>* given[] = {&style.bay_1, &style.bay_2, &style.bay_3};
  if (from_oven < 3 && *given[from_oven]) return **given[from_oven];
  // A cylinder in a cabinet of its own gets the bay farthest from the oven, where none was named.
  const bool named = style.dough_bays == config::Holds::Gas ||
                     std::any_of(std::begin(given), std::end(given),
                                 [](const auto* bay) { return *bay == config::Holds::Gas; });
  if (!named && count > 1 && from_oven == count - 1 &&
      work.config.site.cylinder == config::Cylinder::OwnCabinet) {
    return config::Holds::Gas;
  }
  return style.dough_bays;
}

void set_bays(Work& work, Run& run) {
  const double widest_mm = run.oven ? work.style().oven_bay_mm : work.style().bay_mm;
  const double wide_mm = run.boxes.width_mm();
  const double sheet_mm = work.build().sheet_mm;
  const int count = std::max(1, static_cast<int>(std::ceil(wide_mm / widest_mm - 1e-6)));
  const double frame_mm = face_frame_mm(work), rail_mm = work.style().rail_mm;
  for (int i = 0; i < count; ++i) {
    Bay bay;
    const int from_oven = run.oven || work.out.places.dough_right ? i : count - 1 - i;
    bay.holds = holds_of(work, run, from_oven, count);
    bay.box = run.boxes;
    bay.box.left_mm = run.boxes.left_mm + wide_mm * i / count;
    bay.box.right_mm =
        i + 1 == count ? run.boxes.right_mm : run.boxes.left_mm + wide_mm * (i + 1) / count;
    Block open = bay.box;
    if (work.face_frame()) {
      open.left_mm += std::max(i == 0 ? rail_mm : rail_mm / 2, sheet_mm);
      open.right_mm -= std::max(i + 1 == count ? rail_mm : rail_mm / 2, sheet_mm);
      open.bottom_mm += std::max(rail_mm, sheet_mm);
      open.top_mm -= std::max(rail_mm, sheet_mm);
      open.near_mm -= frame_mm;
    } else {
      open.left_mm += sheet_mm;
      open.right_mm -= sheet_mm;
      open.bottom_mm += sheet_mm;
      open.top_mm -= sheet_mm;
    }
    open.far_mm -= sheet_mm;
    if (open.width_mm() < kLeastBay_mm - kTiny) {
      work.refuse("frame.bay", open.width_mm(), kLeastBay_mm, where_of(run));
      return;
    }
    const std::string name = run_name(run) + "." + std::to_string(i + 1) + ".opening";
    const double opening_mm = work.measure(name + ".width", open.width_mm());
    const double middle_mm = (open.left_mm + open.right_mm) / 2;
    open.left_mm = middle_mm - opening_mm / 2;
    open.right_mm = middle_mm + opening_mm / 2;
    open.top_mm = open.bottom_mm + work.measure(name + ".height", open.height_mm());
    bay.opening = open;
    run.bays.push_back(bay);
    if (bay.holds == config::Holds::Gas) {
      if (run.oven) work.refuse("frame.gas_missing", 0, 0, where_of(run));
      const double clear_mm = std::min(open.width_mm(), bay.box.width_mm() - 2 * sheet_mm);
      work.out.gas.push_back(
          {run.oven, i, clear_mm, bay.box.depth_mm() - sheet_mm, open.height_mm()});
    }
  }
}

// Nothing is cut from a sheet that is too small for it.
void check_sheets(Work& work) {
  for (const Piece& piece : work.out.pieces) {
    if (piece.material != Material::Sheet && piece.material != Material::DrawerSheet &&
        piece.material != Material::Front) {
      continue;
    }
    const double a = size_of(piece.place, u_of(piece.thick));
    const double b = size_of(piece.place, v_of(piece.thick));
    const double small_mm = std::min(a, b), large_mm = std::max(a, b);
    const std::string_view where = piece.oven ? "under the oven" : "under the dough counter";
    if (small_mm > kSheetWide_mm) {
      work.refuse("frame.sheet", small_mm, kSheetWide_mm, where);
      return;
    }
    if (large_mm > kSheetLong_mm) {
      work.refuse("frame.sheet", large_mm, kSheetLong_mm, where);
      return;
    }
  }
}

void set_grill(Work& work) {
  const config::Grill& grill = work.config.site.grill;
  if (!grill.at || *grill.at == config::GrillAt::None || !grill.gap_mm ||
      !work.out.places.oven_stand)
    return;
  const bool right = *grill.at == config::GrillAt::Right;
  const double body_mm = work.config.oven.width_mm / 2 + *grill.gap_mm;
  double end_mm = 0, top_mm = 0;
  for (const std::optional<Block>* block :
       {&work.out.places.oven_stand, &work.out.places.dough_counter}) {
    if (!*block) continue;
    const double at_mm = right ? (*block)->right_mm : -(*block)->left_mm;
    if (at_mm > end_mm) {
      end_mm = at_mm;
      top_mm = (*block)->top_mm;
    }
  }
  GrillGap gap{right, body_mm - end_mm, {}, grill.listed_side_mm};
  if (work.style().grill_counter_mm) gap.step_mm = *work.style().grill_counter_mm - top_mm;
  work.out.grill = gap;
}

void count_built(Work& work) {
  for (const AsBuilt& built : work.built) {
    const bool there =
        std::any_of(work.out.measures.begin(), work.out.measures.end(),
                    [&](const Measure& measure) { return measure.name == built.name; });
    if (!there) ++work.out.built_unknown;
  }
}

}  // namespace

double Work::measure(std::string name, double planned_mm) {
  // What base and first box follow from each other was judged before.
  const bool judged = std::find(held.begin(), held.end(), name) != held.end();
  auto there = built_of(name);
  if (there && !judged && far_off(*there, planned_mm)) {
    drop_built(name);
    there.reset();
  }
  Measure one{std::move(name), planned_mm, planned_mm, false, {}};
  for (const AsBuilt& slip : slips) {
    if (slip.name == one.name) one.ignored_mm = slip.mm;
  }
  one.built = there.has_value();
  one.used_mm = there.value_or(planned_mm);
  out.measures.push_back(std::move(one));
  return out.measures.back().used_mm;
}

void Work::drop_built(std::string_view name) {
  const auto at = std::find_if(built.begin(), built.end(),
                               [name](const AsBuilt& one) { return one.name == name; });
  if (at == built.end()) return;
  slips.push_back(*at);
  built.erase(at);
}

double Work::lift_mm() const {
  constexpr double kClear_mm = 3;  // our judgement
  if (!asked.base_mm) return build().shim_mm;
  const double shims_mm =
      std::min(build().shim_mm, out.base_mm - kCarrierLeast_mm - asked.ground_high_mm);
  return asked.ground_high_mm + std::max(kClear_mm, shims_mm);
}

std::optional<double> Work::built_of(std::string_view name) const {
  for (const AsBuilt& one : built) {
    if (one.name == name) return one.mm;
  }
  return {};
}

void Work::refuse(std::string_view rule, double measured_mm, double limit_mm,
                  std::string_view where) {
  const bool said = std::any_of(out.refusals.begin(), out.refusals.end(), [&](const Refusal& one) {
    return one.rule == rule && one.where == where;
  });
  if (!said) out.refusals.push_back({rule, measured_mm, limit_mm, where});
}

std::string_view where_of(const Run& run) {
  return run.oven ? "under the oven" : "under the dough counter";
}

double least_riser_mm(const config::Materials& build) {
  // A bed under the cap, one under the block.
  return build.metal_mm + 2 * build.bedding_mm + build.sheet_mm +
         std::max(kRiserWall_mm, build.drip_mm + 5);
}

namespace {

// `slips`: measures that are left out.
Frame made_of(const config::Config& config, const Asked& asked, std::vector<AsBuilt> built,
              std::vector<AsBuilt> slips) {
  Work work{config, asked, std::move(built), std::move(slips), {}, {}};
  Frame& out = work.out;
  out.places = places(config, asked.levels);
  place_runs(work);
  if (out.runs.empty()) return std::move(work.out);
  out.low_mm = work.low_mm();
  set_heights(work);
  set_grill(work);
  for (Run& run : out.runs) set_plan(work, run);
  if (out.refusals.empty()) {
    for (Run& run : out.runs) set_bays(work, run);
  }
  // Pieces are only worth making where all of the above holds.
  if (out.refusals.empty()) {
    for (const Run& run : out.runs) {
      add_base(work, run);
      add_boxes(work, run);
      if (work.face_frame()) add_face_frame(work, run);
      add_fronts(work, run);
      add_top(work, run);
    }
    add_tails(work);
    add_riser(work);
    check_sheets(work);
  }
  count_built(work);
  if (!out.refusals.empty()) out.pieces.clear();
  return std::move(work.out);
}

}  // namespace

std::vector<BaseBoard> base_boards(const config::Config& config, const Levels& levels) {
  const Asked asked{levels, 0, 0, {}, 0, 0};
  Work work{config, asked, {}, {}, {}, {}};
  work.out.places = places(config, levels);
  place_runs(work);
  for (Run& run : work.out.runs) set_plan(work, run);
  std::vector<BaseBoard> all;
  for (const Run& run : work.out.runs) {
    for (const BaseBoard& board : boards_round(work, run)) {
      if (board.place.width_mm() > 0 && board.place.depth_mm() > 0) all.push_back(board);
    }
  }
  return all;
}

Frame frame_of(const config::Config& config, const Asked& asked) {
  std::vector<AsBuilt> built = read_as_built(config.frame.as_built);
  Frame out = made_of(config, asked, built, {});
  if (out.refusals.empty() || built.empty()) return out;
  // A measure with which nothing can be built is left out like a slip, the first one that helps.
  for (std::size_t i = 0; i < built.size(); ++i) {
    std::vector<AsBuilt> others = built;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    Frame without = made_of(config, asked, std::move(others), {built[i]});
    if (without.refusals.empty()) return without;
  }
  Frame drawn = made_of(config, asked, {}, std::move(built));
  return drawn.refusals.empty() ? drawn : out;
}

std::uint64_t digest_of(const config::Config& config, const Asked& asked) {
  // FNV-1a, 64 bits, over quanta.
  std::uint64_t hash = 14695981039346656037ULL;
  const auto add = [&hash](std::uint64_t value) {
    for (unsigned shift = 0; shift < 64; shift += 8) {
      hash = (hash ^ ((value >> shift) & 255U)) * 1099511628211ULL;
    }
  };
  const auto add_number = [&add](double value) {
    add(static_cast<std::uint64_t>(std::llround(value * 1000)));
  };
  for (const config::Field& field : config::fields()) {
    const std::string_view path = field.path;
    if (field.group != config::Group::Station ||
        !(path.starts_with("frame.") || path.starts_with("build.") ||
          path.starts_with("station.") || path.starts_with("site.grill.") ||
          path.starts_with("site.cylinder") || path.starts_with("oven."))) {
      continue;
    }
    const config::Value value = field.get(config, 0);
    add(value.index());
    if (const auto* number = std::get_if<double>(&value)) add_number(*number);
    if (const auto* flag = std::get_if<bool>(&value)) add(*flag ? 1 : 0);
    if (const auto* choice = std::get_if<config::ChoiceIndex>(&value)) add(choice->index);
    if (const auto* text = std::get_if<std::string>(&value)) {
      for (const char c : *text) add(static_cast<unsigned char>(c));
    }
  }
  for (const auto& level : {asked.levels.counter_mm, asked.levels.oven_base_mm}) {
    add(level ? 1 : 0);
    if (level) add_number(*level);
  }
  add(places(config, asked.levels).dough_right ? 1 : 0);
  add_number(asked.gas_high_cm2);
  add_number(asked.gas_low_cm2);
  add(asked.base_mm ? 1 : 0);
  if (asked.base_mm) add_number(*asked.base_mm);
  add_number(asked.ground_high_mm);
  add_number(asked.ground_low_mm);
  return hash;
}

}  // namespace hs::frame
