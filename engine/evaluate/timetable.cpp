// Tasks of one station: hours from its parts, passes and faces; what waits for what.

#include "engine/evaluate/timetable.h"

#include <algorithm>
#include <cmath>

#include "engine/base/number_text.h"
#include "engine/evaluate/dates.h"
#include "engine/evaluate/packet.h"
#include "engine/loads/loads.h"

namespace hs::evaluate {
namespace {

using schedule::After;
using schedule::Task;

// At the pace of a careful beginner, minutes: our judgement, all of them.
constexpr int kPass = 4, kStick = 12, kTrimPart = 6, kHole = 3, kScrew = 2, kFront = 30;
constexpr int kDryBox = 20, kFitting = 40, kAnswer = 5, kBaseBoard = 20, kDay = 24 * 60;
constexpr double kPrimed_m2_h = 5, kSubstrate_min = 45;
constexpr int kDelivery_min = 3 * kDay;  // boards and sheets come
constexpr int kFolding_min = 14 * kDay;  // a fabricator's usual answer is one to three weeks
constexpr int kUnbroken_min = 30;
constexpr double kPound_kg = 0.45359237;

constexpr int kBuilder = 0, kElectrician = 1, kNobody = -1;

int whole(double minutes) { return static_cast<int>(std::lround(std::clamp(minutes, 0.0, 1e5))); }

// What is counted from the station.
struct Counted {
  int board_passes = 0, boards = 0, rips = 0, sheet_passes = 0, sheets = 0, sheet_parts = 0,
      holes = 0;
  int screws = 0, fronts = 0, crosses = 0, base_boards = 0, boxes = 0, tops = 0;
  int open = 0;  // what does not work or is not known, apart from the shop's own questions
  double primed_m2 = 0, painted_m2 = 0;
  bool block = false, slab = false, cap = false;  // under the oven, on its counter
  bool masonry = false;                           // the oven stands on a pier of its own
  std::string board_room;                         // what a base board leaves for the heat, in words
};

Counted count(const Evaluation& e, const Packet& packet) {
  Counted n;
  for (const CutGroup& group : packet.cutting.groups) {
    for (const CutStick& stick : group.sticks) {
      ++(group.sheets ? n.sheets : n.boards);
      (group.sheets ? n.sheet_passes : n.board_passes) += static_cast<int>(stick.passes.size());
    }
    for (const CutItem& item : group.items) n.rips += item.rip_mm ? 1 : 0;
    if (group.sheets) n.sheet_parts += static_cast<int>(group.items.size());
  }
  for (const parts::Part& part : e.build->parts.parts) {
    for (const parts::Cut& cut : part.cuts) n.holes += part.quantity() * cut.count;
    if (part.kind == frame::Kind::Door || part.kind == frame::Kind::DrawerFront) {
      n.fronts += part.quantity();
    }
    if (part.kind == frame::Kind::CrossPiece) n.crosses += part.quantity();
    if (part.kind == frame::Kind::Side) n.boxes += part.quantity();
    if (part.material == frame::Material::BaseBoard) n.base_boards += part.quantity();
    if (part.kind == frame::Kind::MetalTop) n.tops += part.quantity();
    n.block = n.block || part.kind == frame::Kind::RiserTop;
    n.slab = n.slab || part.kind == frame::Kind::Slab;
    n.cap = n.cap || part.kind == frame::Kind::RiserCap;
  }
  n.boxes /= 2;
  n.masonry = e.build->frame.places.masonry_base;
  for (const Finding& finding : e.findings) {
    n.open += finding.verdict == Verdict::Fail || finding.verdict == Verdict::Unknown;
  }
  for (const parts::Hardware& one : e.build->parts.hardware) {
    // Those of boxes, drawers, the face frame and the block; others belong to later tasks.
    for (const char* name :
         {"exterior screw 4.5 x 50", "exterior screw 3.5 x 35", "pocket screw"}) {
      if (one.name.starts_with(name)) n.screws += whole(one.quantity);
    }
  }
  for (const loads::Growth& one : e.build->loads.growth) {
    if (one.what != loads::Grows::BaseBoard || one.needed_mm <= 0) continue;
    // What is marked from a board's left end stays where it is.
    n.board_room = "Heat lengthens its boards: cut " + mm_text(std::ceil(one.needed_mm), 0) +
                   " off the right end, seen from outside, of each one that meets another board "
                   "there. ";
  }
  n.primed_m2 = packet.painting.primer.area_m2;
  for (const PaintAmount& paint : packet.painting.paints) n.painted_m2 += paint.area_m2;
  return n;
}

// "34 saw passes, 4 min each"; `more`: what comes to it, so that the hours can be worked out again.
std::string counted_words(int number, std::string_view what, int each, std::string more = {}) {
  if (number == 1) {
    const bool es = what.ends_with("sses") || what.ends_with("xes");
    what.remove_suffix(es ? 2 : 1);
  }
  return std::to_string(number) + " " + std::string(what) + ", " + std::to_string(each) + " min" +
         (number == 1 ? "" : " each") + (more.empty() ? "" : "; ") + more;
}

// Limits of what people lift, in words (engine/loads/loads.h).
std::string kilograms(double kg) {
  return std::to_string(std::lround(kg)) + " kg (" + std::to_string(std::lround(kg / kPound_kg)) +
         " lb)";
}
TaskNote place_note(double oven_kg, bool on_masonry) {
  TaskNote note{"two hours", "the builder and a second person", "level, tape",
                "By its manual. Gas: leak test before the first fire.", "section"};
  if (on_masonry || oven_kg <= loads::kTwo_kg) return note;
  note.who = "the builder and three more, or a cart and a ramp";
  note.caution = "It weighs " + kilograms(oven_kg) + ", and two people lift " +
                 kilograms(loads::kTwo_kg) + ". " + note.caution;
  return note;
}

struct Maker {
  Timetable& out;

  std::optional<std::size_t> find(std::string_view key) const {
    for (std::size_t i = 0; i < out.tasks.size(); ++i) {
      if (out.tasks[i].key == key) return i;
    }
    return std::nullopt;
  }
  // Tasks that are not there are not waited for.
  Task& add(std::string key, std::string name, int work_min,
            std::initializer_list<std::string_view> after, TaskNote note) {
    Task task;
    task.key = std::move(key);
    task.name = std::move(name);
    task.work_min = work_min;
    for (const std::string_view one : after) {
      if (const auto at = find(one)) task.after.push_back({*at, false});
    }
    out.tasks.push_back(std::move(task));
    out.notes.push_back(std::move(note));
    return out.tasks.back();
  }
};

void add_tasks(Maker& maker, const config::Config& config, const Packet& packet, const Counted& n) {
  const auto cure_min = [](const finish::Adhesive& adhesive) {
    return whole(60 * finish::waiting_h(adhesive).value_or(24));
  };
  double recoat_h = finish::PaintLabel{}.damp_h;
  for (const WaitingTime& wait : packet.painting.waits) {
    if (wait.what == kRecoat && wait.hours) recoat_h = *wait.hours;
  }
  const int recoat_min = whole(60 * recoat_h);
  constexpr int kHold_min = 24 * 60;  // engine/finish PaintLimits::dry_h

  if (n.open > 0) {
    maker.add("open.settle", "settle what does not work, find out what is not known",
              kAnswer * n.open, {},
              {counted_words(n.open, "answers", kAnswer), "the builder",
               "the oven's manual, the local authority, a tape",
               "Before anything is bought: an answer can move a height.", ""});
  }
  maker.add("buy.order", "order boards, sheets, fronts, hardware and paint", 120, {"open.settle"},
            {"one list, two hours", "the builder", "the buying list", "", ""});
  maker
      .add("buy.delivery", "boards and sheets come", 0, {"buy.order"},
           {"three days: ask the yard", "nobody", "", "", ""})
      .wait_min = kDelivery_min;
  Task& carriers =
      maker.add("base.cut",
                n.rips > 0 ? "cut the boards of the base and the face, rip them to their width"
                           : "cut the boards of the base and the face",
                kStick * n.boards + kPass * (n.board_passes + n.rips), {"buy.delivery"},
                {counted_words(n.board_passes + n.rips, "saw passes", kPass,
                               counted_words(n.boards, "boards", kStick)),
                 "the builder", "mitre saw, table saw, square",
                 "Glasses and ear muffs; hands off the line of the cut.", "step_base_boards"});
  carriers.who = n.boards > 0 ? kBuilder : kNobody;
  maker
      .add("base.fit", "fit the base on site: level it on shims, cut its boards to the ground",
           60 + 30 * n.crosses + kBaseBoard * n.base_boards, {"base.cut"},
           {counted_words(n.crosses, "cross pieces", 30,
                          counted_words(n.base_boards, "boards", kBaseBoard, "an hour to set out")),
            "the builder", "level, shims, impact driver, compass, jig saw",
            "Before any cabinet comes: they stand on it. " + n.board_room +
                "Its boards come off again to be painted.",
            "step_base"})
      .needs = schedule::kDryDay;
  maker.add("sheets.cut", "saw the sheets, strips first",
            kStick * n.sheets + kPass * n.sheet_passes, {"buy.delivery"},
            {counted_words(n.sheet_passes, "saw passes", kPass,
                           counted_words(n.sheets, "sheets", kStick)),
             "the builder", "track saw, square, two trestles",
             "Two lift a sheet; the offcut must not fall on the blade.", ""});
  maker.add("sheets.trim", "trim the parts to their finished size, number them",
            kTrimPart * n.sheet_parts, {"sheets.cut"},
            {counted_words(n.sheet_parts, "parts", kTrimPart), "the builder",
             "track saw or table saw", "A push stick for narrow parts.", ""});
  maker.add(
      "holes.drill", "drill shelf pins, hinge cups and pulls", kHole * n.holes, {"sheets.trim"},
      {counted_words(n.holes, "holes", kHole), "the builder", "drill, 35 mm bit, a jig", "", ""});
  // One joint of offcuts, cured and broken: whether glue and screw hold in this material.
  Task& joint = maker.add("joint.test", "glue and screw a test joint of offcuts", kUnbroken_min,
                          {"sheets.cut"},
                          {"one joint", "the builder", "clamps, driver",
                           "Early grab is not strength: the label's cure time is waited.", ""});
  joint.wait_min = cure_min(finish::trim_adhesive());
  joint.unbroken = true;
  maker
      .add("joint.pull", "pull the test joint apart and look at it", 15, {"joint.test"},
           {"before any box is glued", "the builder", "",
            "If the glue lets go and the wood does not break, find out why first.", ""})
      .unbroken = true;
  maker.add("dry.fit", "put the boxes together dry, hang fronts, number them, take them off",
            kFront * n.fronts + kDryBox * n.boxes, {"holes.drill"},
            {counted_words(n.fronts, "fronts", kFront, counted_words(n.boxes, "boxes", kDryBox)),
             "the builder", "clamps, masking tape", "", "step_dry"});
  if (packet.wiring) {
    const int fittings = static_cast<int>(packet.wiring->fittings.size());
    maker.add("wiring.cut", "cut the openings for boxes and wires, seal their edges",
              kFitting * fittings, {"dry.fit"},
              {counted_words(fittings, "openings", kFitting), "the builder", "jig saw, hole saw",
               "Nothing is live. Before paint: a cut edge drinks water.", ""});
  }
  Task& primer =
      maker.add("paint.primer", "prime every face and edge", whole(60 * n.primed_m2 / kPrimed_m2_h),
                {"dry.fit", "wiring.cut", "base.fit"},
                {"5 m2 an hour", "the builder", "roller, brush, masking tape",
                 "First mask where parts are glued: a glue holds the paint, and the "
                 "paint lets go. Air through the room; no flame near wet paint.",
                 ""});
  primer.wait_min = recoat_min;
  primer.needs = primer.holds = schedule::kPaintDay;
  primer.hold_min = kHold_min;
  maker
      .add("boxes.assemble",
           n.block ? "glue and screw the boxes and the oven's block" : "glue and screw the boxes",
           kScrew * n.screws + kDryBox * n.boxes, {"paint.primer", "joint.pull"},
           {counted_words(n.screws, "screws", kScrew, counted_words(n.boxes, "boxes", kDryBox)),
            "the builder", "driver, clamps, square", "", "step_boxes"})
      .wait_min = cure_min(finish::trim_adhesive());
  std::string_view before = "boxes.assemble";
  const int coats = whole(config.finish.coats);
  for (int coat = 1; coat <= coats; ++coat) {
    constexpr std::string_view kKeys[] = {"paint.coat_1", "paint.coat_2", "paint.coat_3",
                                          "paint.coat_4"};
    const std::string_view key = kKeys[static_cast<std::size_t>(std::min(coat, 4) - 1)];
    Task& task = maker.add(std::string(key), "coat " + std::to_string(coat) + " of the colours",
                           whole(60 * n.painted_m2 / kPrimed_m2_h), {before},
                           {"5 m2 an hour", "the builder", "roller, brush", "", ""});
    task.wait_min = recoat_min;
    task.needs = task.holds = schedule::kPaintDay;
    task.hold_min = kHold_min;
    before = key;
  }
  maker
      .add("base.boards", "screw the painted boards onto the base", kBaseBoard * n.base_boards,
           {"base.fit", before},
           {counted_words(n.base_boards, "boards", kBaseBoard), "the builder", "driver",
            "5 mm packers behind the screws: nothing rests on these boards.", ""})
      .needs = schedule::kDryDay;
  maker
      .add("site.cabinets", "set the cabinets on the base, bolt and screw them", 60 + 45 * n.boxes,
           {"base.boards"},
           {counted_words(n.boxes, "boxes", 45, "an hour to set out"),
            "the builder and a second person", "level, clamps, driver",
            "Two lift what is above " + kilograms(loads::kOne_kg) +
                ". Clamp neighbours in line, then drill for the bolts through both.",
            "step_cabinets"})
      .needs = schedule::kDryDay;
  if (config.loads.held == config::Held::Wall) {
    maker.add("site.tie", "screw the cabinets to the wall's framing", 30 + 15 * n.boxes,
              {"site.cabinets"},
              {counted_words(n.boxes, "boxes", 15, "half an hour to find the framing"),
               "the builder", "stud finder, driver",
               "Find wires and pipes in the wall first. Before a door or a drawer is hung: open, "
               "they tip it.",
               "frame_side"});
  } else if (config.loads.held == config::Held::Ground) {
    maker
        .add("site.tie", "anchor the base to the ground", 60 + 30 * n.crosses, {"site.cabinets"},
             {counted_words(n.crosses, "cross pieces", 30, "an hour to set out"), "the builder",
              "hammer drill, anchors by their sheet",
              "Have buried cable, gas and irrigation located first. Before a door or a drawer is "
              "hung: open, they tip it.",
              "frame_side"})
        .needs = schedule::kDryDay;
  }
  maker
      .add("top.substrate", "screw the sheets of the top down, seal them",
           whole(kSubstrate_min * std::max(1, n.tops)), {"site.cabinets"},
           {"45 min a top", "the builder", "driver, roller", "", "step_sheets"})
      .wait_min = recoat_min;
  if (n.tops > 0) {
    maker
        .add("metal.measure",
             n.cap ? "measure the sealed sheets and the block, order the metal"
                   : "measure the sealed sheets, order the metal",
             60, {"top.substrate"},
             {"three widths, three depths, both diagonals", "the builder", "tape, straightedge",
              "The order goes by what stands there, not by the drawing.", ""})
        .unbroken = true;
    maker
        .add("metal.fold", "the fabricator folds the tops", 0, {"metal.measure"},
             {"two weeks: ask the fabricator", "the fabricator", "", "", ""})
        .wait_min = kFolding_min;
    maker.out.tasks.back().who = kNobody;
    Task& bed =
        maker.add("metal.bed", "try the tops dry, then bed them", 90 * n.tops, {"metal.fold"},
                  {counted_words(n.tops, "tops", 90), "the builder and a second person",
                   "adhesive, gloves, weights",
                   "Edges of sheet metal cut: gloves. No load before it is cured.", "step_tops"});
    bed.wait_min = cure_min(finish::bedding_adhesive());
    bed.needs = bed.holds = schedule::kDryDay;
    bed.hold_min = kHold_min;
  }
  if (n.block || n.slab) {
    Task& set =
        maker.add("block.set",
                  n.slab  ? "bed the oven's slab on its top"
                  : n.cap ? "bed the oven's block on its top, then the metal cap on the block"
                          : "bed the oven's block on its top",
                  90, {"metal.bed", "top.substrate"},
                  {"90 min", "the builder and a second person", "adhesive, gloves, weights",
                   "Nothing is drilled through the top: the bed and the oven's weight hold it (our "
                   "judgement).",
                   "step_block"});
    set.wait_min = cure_min(finish::bedding_adhesive());
    set.needs = set.holds = schedule::kDryDay;
    set.hold_min = kHold_min;
  }
  if (packet.wiring) {
    Task& wire =
        maker.add("wiring.connect", "wire, connect and test the circuit", 180, {"site.cabinets"},
                  {"three hours: ask the electrician", "a licensed electrician", "",
                   "Only a licensed electrician connects.", ""});
    wire.who = kElectrician;
    wire.needs = schedule::kDryDay;
  }
  maker.add(
      "fronts.hang", "hang the numbered fronts, set their gaps", kFront * n.fronts,
      {"site.cabinets", "site.tie"},
      {counted_words(n.fronts, "fronts", kFront), "the builder", "driver",
       "Paint is hard after about 30 days: fronts that are pressed shut stick.", "step_fronts"});
  maker
      .add("oven.place", "set the oven, check its level and every clearance", 120,
           {"block.set", "metal.bed", "top.substrate"}, place_note(config.oven.mass_kg, n.masonry))
      .needs = schedule::kDryDay;
  maker
      .add("safety.check", "go through the safety sheet, show it to everyone", 30,
           {"oven.place", "fronts.hang", "wiring.connect"},
           {"half an hour", "everyone", "the safety sheet", "", ""})
      .unbroken = true;
}

schedule::Calendar calendar_of(const config::Plan& plan, const schedule::Date& first) {
  schedule::Calendar out;
  out.first = first;
  const int minutes = whole(60 * plan.hours_a_day);
  for (std::size_t day = 0; day < out.minutes.size(); ++day) {
    const bool weekend = day >= 5;
    const bool works = plan.days == config::WorkDays::EveryDay ||
                       weekend == (plan.days == config::WorkDays::Weekends);
    out.minutes[day] = works ? minutes : 0;
  }
  out.off = dates_from(plan.off_days).value_or(std::vector<schedule::Date>{});
  for (const schedule::Date& wet : dates_from(plan.wet_days).value_or(out.off)) {
    out.weather.push_back({wet, 0});
  }
  return out;
}

}  // namespace

Timetable timetable_of(const config::Config& config, const Evaluation& e, const Packet& packet) {
  Timetable out;
  Maker maker{out};
  const Counted counted = count(e, packet);
  out.open = counted.open;
  add_tasks(maker, config, packet, counted);
  for (Task& task : out.tasks) {
    if (task.work_min == 0) task.who = kNobody;
    out.work_min += task.work_min;
  }
  if (auto network = schedule::network_of(out.tasks)) out.network = *std::move(network);
  const auto first = date_from(config.plan.start);
  if (!first) return out;
  out.calendar = calendar_of(config.plan, *first);
  auto plan = schedule::plan_of(out.tasks, out.calendar);
  if (plan) {
    out.plan = *std::move(plan);
  } else {
    for (const Problem& problem : plan.error()) {
      out.why_no_plan += (out.why_no_plan.empty() ? "" : " ") + sentence(problem);
    }
  }
  return out;
}

}  // namespace hs::evaluate
