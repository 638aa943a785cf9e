// Laws of the packet's stage over presets and random stations, and its figures against sources.

#include "engine/evaluate/packet.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/base/quantity.h"
#include "engine/config/setting.h"
#include "engine/evaluate/check.h"
#include "engine/report/report_json.h"
#include "nlohmann/json.hpp"
#include "tests/evaluate/saw_walker.h"
#include "tests/report/preset.h"
#include "tests/support/findings.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::evaluate;
using Catch::Matchers::WithinAbs;
using test::found;
using test::verdict;

namespace {

constexpr std::int64_t kFewSteps = 2000;

// Everything that holds for every packet.
void check_laws(const config::Config& config, const Evaluation& e) {
  REQUIRE(e.packet != nullptr);
  const Packet& packet = *e.packet;
  std::size_t sawn = 0, parts = 0;
  for (const CutGroup& group : packet.cutting.groups) {
    INFO(group.name);
    const double trim_mm = group.sheets ? config.shop.sheet_trim_mm : config.shop.board_trim_mm;
    CHECK(test::broken_by(group, config.shop.kerf_mm, trim_mm) == "");
    CHECK(group.bought + group.from_hand == static_cast<int>(group.sticks.size()));
    sawn += group.items.size();
  }
  for (const parts::Part& part : e.build->parts.parts) {
    using frame::Material;
    const bool folded = part.material == Material::Metal, slab = part.material == Material::Slab;
    if (!folded && !slab) parts += static_cast<std::size_t>(part.quantity());
  }
  CHECK(sawn == parts);

  // Sums are sums.
  const Costing& costing = packet.costing;
  double total = 0, by_kind = 0;
  for (const CostLine& line : costing.lines) {
    total += line.total.value_or(0);
    CHECK((line.waste_share >= 0 && line.waste_share <= 1));
    CHECK((line.from_hand >= 0 && line.from_hand <= line.quantity));
    if (line.price) {
      const double bought = line.quantity - line.from_hand;
      CHECK_THAT(*line.total, WithinAbs(*line.price * bought, 1e-6));
    }
  }
  for (const CostSum& sum : costing.sums) by_kind += sum.total;
  CHECK_THAT(by_kind, WithinAbs(total, 1e-6));
  CHECK_THAT(costing.total.value_or(0), WithinAbs(total, 1e-6));
  CHECK(std::isfinite(costing.built_kg));

  // Paint: the areas add up, and the primer is on all of them.
  double faces_m2 = 0;
  std::map<std::size_t, double> by_colour;
  for (const PaintedFace& face : packet.painting.faces) {
    faces_m2 += face.area_m2;
    if (face.colour) by_colour[*face.colour] += face.area_m2;
  }
  CHECK_THAT(packet.painting.primer.area_m2, WithinAbs(faces_m2, 1e-6));
  for (const PaintAmount& paint : packet.painting.paints) {
    const auto at =
        std::find(packet.painting.colours.begin(), packet.painting.colours.end(), paint.name);
    REQUIRE(at != packet.painting.colours.end());
    CHECK_THAT(
        paint.area_m2,
        WithinAbs(by_colour[static_cast<std::size_t>(at - packet.painting.colours.begin())], 1e-6));
  }

  // The plan: a network was found, and on days nothing begins before what it waits for.
  const Timetable& table = packet.timetable;
  REQUIRE(table.tasks.size() == table.network.tasks.size());
  REQUIRE(table.tasks.size() == table.notes.size());
  CHECK_FALSE(table.network.critical_paths.empty());
  if (table.plan) {
    for (std::size_t i = 0; i < table.tasks.size(); ++i) {
      for (const schedule::After& after : table.tasks[i].after) {
        CHECK(table.plan->tasks[i].start >= table.plan->tasks[after.task].done);
      }
    }
  } else {
    CHECK((config.plan.start.empty() || !table.why_no_plan.empty()));
  }
}

config::Config demo() { return test::preset("demo"); }

}  // namespace

TEST_CASE("every preset's packet keeps the laws", "[packet][law]") {
  int made = 0;
  for (const char* name : test::kPresets) {
    INFO(name);
    const config::Config config = test::preset(name);
    const Evaluation e = evaluate_packet(config, Marks::Exact, kFewSteps);
    if (!e.build->frame.made()) {
      CHECK(e.packet == nullptr);
      CHECK(verdict(e, "cuts.none") == Verdict::Unknown);
      continue;
    }
    check_laws(config, e);
    ++made;
  }
  CHECK(made >= 10);
}

TEST_CASE("any station's packet keeps the laws, and its report holds no number that is none",
          "[packet][law]") {
  test::Random random(20261126);
  int made = 0;
  // Few wild stations can be built at all: a short sweep goes on until it has met three that can.
  for (int i = 0; i < test::sweep(100) || (made < 3 && i < 2000); ++i) {
    const config::Config config = test::random_config(random);
    if (!check(config).empty()) continue;
    INFO("case " << i);
    const Evaluation e = evaluate_packet(config, Marks::Exact, kFewSteps);
    const std::string report = report::report_json(config, e);
    const auto json = nlohmann::json::parse(report, nullptr, false);
    REQUIRE_FALSE(json.is_discarded());
    for (const char* key : {"cuts", "metal", "power", "finish", "plan", "money"}) {
      REQUIRE(json.contains(key));
      // Null only with a finding that says why.
      if (json[key].is_null()) {
        const bool said = found(e, "cuts.none") != nullptr || found(e, "power.none") != nullptr;
        REQUIRE(said);
      }
    }
    if (!e.packet) continue;
    check_laws(config, e);
    ++made;
  }
  CHECK(made >= 3);
}

TEST_CASE("a likely station in the shop: laws, prices, days", "[packet][law]") {
  test::Random random(4242);
  int made = 0;
  for (int i = 0; i < test::sweep(60); ++i) {
    config::Config c = demo();
    const auto pick = [&](double low, double high, double step) {
      return low + step * random.below(static_cast<int>((high - low) / step) + 1);
    };
    for (config::Cook& cook : c.cooks) cook.stature_mm = pick(1500, 1950, 5);
    c.station.prep_width_mm = pick(600, 3000, 10);
    c.station.prep_depth_mm = pick(500, 800, 10);
    c.frame.face = static_cast<config::FaceKind>(random.below(2));
    c.frame.fronts = static_cast<config::FrontKind>(random.below(2));
    c.frame.dough_bays = static_cast<config::Holds>(random.below(4));
    c.shop.kerf_mm = pick(0, 4, 0.1);
    c.shop.sheet_trim_mm = pick(0, 15, 1);
    c.shop.board_trim_mm = pick(0, 30, 1);
    c.power.outlets = random.below(3);
    c.power.lamp_w = random.one_in(2) ? 20 : 0;
    c.plan.start = "2027-04-05";
    c.plan.days = static_cast<config::WorkDays>(random.below(3));
    c.stock.clear();
    // An offcut, a sheet to buy, a board with a defect, boards to buy: each now and then.
    if (random.one_in(2)) {
      c.stock.push_back(
          {"offcut", config::StockKind::Sheet, pick(400, 1400, 10), pick(300, 1000, 10), {}, 2.0});
    }
    if (random.one_in(2)) {
      c.stock.push_back({"sheet", config::StockKind::Sheet, 2440.0, 1220.0, {}, {}, 60.0});
      if (random.one_in(2))
        c.stock.push_back({"long sheet", config::StockKind::Sheet, 3050.0, 1220.0, {}, {}, 70.0});
    }
    if (random.one_in(2)) {
      config::StockItem bad{
          "board with a knot", config::StockKind::Carrier, pick(2000, 4000, 10), {}, {}, 3.0};
      bad.bad_from_mm = pick(300, 900, 10);
      bad.bad_to_mm = *bad.bad_from_mm + pick(0, 60, 1);
      c.stock.push_back(bad);
    }
    REQUIRE(check(c).empty());
    INFO("case " << i);
    const Evaluation e = evaluate_packet(c, Marks::Exact, kFewSteps);
    if (!e.packet) continue;
    check_laws(c, e);
    ++made;
  }
  CHECK(made > test::sweep(60) / 2);
}

TEST_CASE("a packet made in many goes is the packet made in one", "[packet][law]") {
  for (const char* name : {"demo", "stations/four_cooks", "stations/garden_shelter"}) {
    INFO(name);
    const config::Config config = test::preset(name);
    const Evaluation whole = evaluate_packet(config, Marks::Exact, kFewSteps);
    PacketRun run(config, Marks::Exact, kFewSteps);
    int goes = 0;
    std::size_t done = 0;
    while (run.advance(100)) {
      const PacketRun::Progress progress = run.progress();
      CHECK(progress.done >= done);
      CHECK(progress.done <= progress.all);
      done = progress.done;
      ++goes;
    }
    CHECK(goes > 10);
    CHECK(run.progress().done == run.progress().all);
    CHECK_FALSE(run.advance(100));
    CHECK(report::report_json(config, run.take()) == report::report_json(config, whole));
  }
}

TEST_CASE("a packet that was stopped keeps the laws, and its bounds stay below its plans",
          "[packet][law]") {
  for (const char* name : test::kPresets) {
    const config::Config config = test::preset(name);
    for (const int goes : {0, 1, 7, 30}) {
      INFO(name << " stopped after " << goes);
      PacketRun run(config);
      for (int i = 0; i < goes; ++i) run.advance(50);
      const Evaluation e = run.take();
      if (!e.packet) continue;
      check_laws(config, e);
      const Evaluation whole = evaluate_packet(config, Marks::Exact, kFewSteps);
      CHECK(e.packet->costing.inches.size() == whole.packet->costing.inches.size());
      for (std::size_t i = 0; i < e.packet->cutting.groups.size(); ++i) {
        const CutGroup &one = e.packet->cutting.groups[i], &best = whole.packet->cutting.groups[i];
        CHECK(one.at_least <= best.value + 1e-9);
        CHECK(one.value >= best.at_least - 1e-9);
      }
    }
  }
}

TEST_CASE("a good offcut is used before a sheet is bought", "[packet]") {
  config::Config c = demo();
  const Evaluation before = evaluate_packet(c);
  c.stock.push_back({"offcut", config::StockKind::Sheet, 1200.0, 800.0, {}, 1.0});
  const Evaluation after = evaluate_packet(c);
  REQUIRE((before.packet && after.packet));
  const auto sheets = [](const Evaluation& e) {
    for (const CutGroup& group : e.packet->cutting.groups) {
      if (group.material == frame::Material::Sheet) return group;
    }
    return CutGroup{};
  };
  CHECK(sheets(before).from_hand == 0);
  CHECK(sheets(after).from_hand == 1);
  CHECK(sheets(after).bought <= sheets(before).bought);
}

TEST_CASE("two sheet sizes at once are bought where that is cheaper than either alone",
          "[packet]") {
  // Whole sheets for 80, halves for 45: two halves cost more than a whole, so a half is only bought
  // for what is left over.
  config::Config config = demo();
  std::erase_if(config.stock,
                [](const config::StockItem& row) { return row.kind == config::StockKind::Sheet; });
  const auto sheet = [&](const char* name, double length_mm, double price) {
    config::StockItem row;
    row.name = name;
    row.kind = config::StockKind::Sheet;
    row.length_mm = length_mm;
    row.width_mm = 1219.2;
    row.price = price;
    config.stock.push_back(row);
  };
  const auto of_sheets = [](const config::Config& c) {
    const Evaluation e = evaluate_packet(c, Marks::Exact, kFewSteps);
    for (const CutGroup& group : e.packet->cutting.groups) {
      if (group.sheets && group.material == frame::Material::Sheet) {
        CHECK(test::broken_by(group, c.shop.kerf_mm, c.shop.sheet_trim_mm) == "");
        return group;
      }
    }
    FAIL("no sheets");
    return CutGroup{};
  };
  int mixed = 0;
  for (int wide = 900; wide <= 2400; wide += 100) {
    config.station.prep_width_mm = wide;
    config::Config both = config, whole = config, half = config;
    config.stock.clear();
    sheet("whole sheet, invented", 2438.4, 80);
    whole.stock = config.stock;
    sheet("half sheet, invented", 1219.2, 45);
    both.stock = config.stock;
    half.stock = {config.stock.back()};
    const CutGroup of_both = of_sheets(both), of_whole = of_sheets(whole);
    INFO("width " << wide);
    CHECK(of_both.value <= of_whole.value);
    if (of_both.too_large.empty() && of_sheets(half).too_large.empty()) {
      CHECK(of_both.value <= of_sheets(half).value);
    }
    CHECK(of_both.at_least <= of_both.value);
    double paid = 0;
    for (const CutStock& stock : of_both.stocks) paid += stock.used * stock.price.value_or(0);
    CHECK_THAT(of_both.value, WithinAbs(paid, 1e-9));
    if (of_both.stocks[0].used > 0 && of_both.stocks[1].used > 0) {
      ++mixed;
      CHECK(of_both.value < of_whole.value);
    }
  }
  CHECK(mixed >= 3);
}

TEST_CASE("one inch of eye moves what it should, and only that", "[packet]") {
  const config::Config c = demo();
  const Evaluation e = evaluate_packet(c);
  REQUIRE(e.packet != nullptr);
  const Costing& costing = e.packet->costing;
  REQUIRE_FALSE(costing.inches.empty());
  CHECK(changes(e, e).empty());
  bool moved = false;
  for (const InchCost& inch : costing.inches) {
    // The same by hand, through the front door.
    config::Config higher = c;
    const cook::Body& body = e.cooks[inch.cook].body;
    config::Cook& taller = higher.cooks[inch.cook];
    if (inch.elbow) {
      taller.elbow_height_mm = quantised(Quantity::Length, body.elbow.value_mm + 25.4);
    } else {
      taller.eye_height_mm = quantised(Quantity::Length, body.eye.value_mm + 25.4);
    }
    const Evaluation after = evaluate_packet(higher);
    CHECK_THAT(inch.counter_moves_mm, WithinAbs(*after.used.counter_mm - *e.used.counter_mm, 1e-9));
    CHECK_THAT(inch.oven_base_moves_mm,
               WithinAbs(*after.used.oven_base_mm - *e.used.oven_base_mm, 1e-9));
    const std::vector<Change> by_hand = changes(e, after);
    REQUIRE(by_hand.size() == inch.changes.size());
    // Told as a change exactly where a piece is another size now.
    std::map<std::string, std::multiset<std::string>> sizes[2];
    for (int i = 0; i < 2; ++i) {
      const Evaluation& one = i == 0 ? e : after;
      for (const parts::Part& part : one.build->parts.parts) {
        for (int n = 0; n < part.quantity(); ++n) {
          sizes[i][std::string(frame::kind_name(part.kind))].insert(
              std::to_string(std::lround(part.length_mm * 10)) + "x" +
              std::to_string(std::lround(part.width_mm * 10)));
        }
      }
    }
    for (const auto& [kind, was] : sizes[0]) {
      const auto& name = kind;  // not every compiler lets a lambda take a part of a pair
      const bool same = sizes[1][kind] == was;
      const bool told = std::any_of(by_hand.begin(), by_hand.end(), [&](const Change& change) {
        return change.of == ChangeOf::Part && change.what == name &&
               (change.measure == "length" || change.measure == "width" ||
                change.measure == "quantity");
      });
      INFO(kind);
      CHECK(told == !same);
    }
    if (inch.counter_moves_mm != 0) CHECK(inch.pieces_changed > 0);
    moved = moved || inch.counter_moves_mm != 0;
  }
  CHECK(moved);
}

TEST_CASE("a run's drop and a circuit's load by the code's table", "[packet][power]") {
  config::Config c = demo();
  CHECK(verdict(evaluate_packet(c), "power.none") == Verdict::Ok);
  c.power.outlets = 1;
  c.power.outlet_w = 1500;
  c.power.breaker = config::Breaker::A20;
  c.power.wire = config::WireSize::Awg12;
  c.power.run_mm = 30480;  // 100 ft
  const Evaluation e = evaluate_packet(c);
  REQUIRE((e.packet && e.packet->wiring));
  const Wiring& wiring = *e.packet->wiring;
  CHECK_THAT(wiring.circuit.amps, WithinAbs(12.5, 1e-9));
  // 2 x 12.5 A x 100 ft x 1.98 ohm/kft (NEC chapter 9, table 8, stranded) = 4.95 V of 120.
  CHECK_THAT(*wiring.drop_v, WithinAbs(4.95, 1e-6));
  CHECK_THAT(*wiring.drop_share, WithinAbs(4.95 / 120, 1e-9));
  CHECK(verdict(e, "power.drop") == Verdict::Warn);  // above 3 %
  // The longest run that keeps 3 %: 3.6 V.
  CHECK_THAT(*wiring.longest_run_mm, WithinAbs(30480 * 3.6 / 4.95, 0.1));
  // NEC 314.16(B): two 12 AWG conductors 2 x 2.25, one ground 2.25, a clamp 2.25, an outlet twice:
  // 6 x 2.25 = 13.5 cubic inches, in either edition.
  REQUIRE(wiring.box.has_value());
  CHECK_THAT(wiring.box->to2017.in3, WithinAbs(13.5, 1e-9));
  CHECK_THAT(wiring.box->from2020.in3, WithinAbs(13.5, 1e-9));
  REQUIRE_FALSE(wiring.cutting.cutouts.empty());
  c.power.breaker = config::Breaker::A10;
  CHECK(verdict(evaluate_packet(c), "power.circuit") == Verdict::Fail);
}

TEST_CASE("a part that no sheet holds is said, and not cut from two", "[packet]") {
  config::Config c = demo();
  c.stock.clear();
  c.stock.push_back({"half sheet", config::StockKind::Sheet, 700.0, 1220.0, {}, {}, {}});
  const Evaluation e = evaluate_packet(c);
  REQUIRE(e.packet != nullptr);
  check_laws(c, e);
  CHECK(verdict(e, "cuts.too_large") == Verdict::Fail);
  CHECK(verdict(e, "cuts.plan") == Verdict::Fail);
  const auto& groups = e.packet->cutting.groups;
  const auto sheets = std::find_if(groups.begin(), groups.end(), [](const CutGroup& one) {
    return one.material == frame::Material::Sheet;
  });
  REQUIRE(sheets != groups.end());
  const CutGroup& group = *sheets;
  REQUIRE_FALSE(group.too_large.empty());
  REQUIRE(group.too_large.size() < group.items.size());
  CHECK_FALSE(group.proven);
  // The cost names each, and knows none of their prices.
  double pieces = 0;
  for (const CostLine& line : e.packet->costing.lines) {
    if (line.what.find("fits no sheet") == std::string::npos) continue;
    CHECK_FALSE(line.total.has_value());
    CHECK(line.mass_kg > 0);
    pieces += line.quantity;
  }
  CHECK(pieces == static_cast<double>(group.too_large.size()));
}

TEST_CASE("a part too wide for its sheet is told by its wider side", "[packet]") {
  config::Config c = demo();
  c.station.prep_depth_mm = 1400;
  const Evaluation e = evaluate_packet(c);
  const auto found = std::find_if(e.findings.begin(), e.findings.end(),
                                  [](const Finding& one) { return one.rule == "cuts.too_large"; });
  REQUIRE(found != e.findings.end());
  CHECK(*found->measured > 1219.2);
}

TEST_CASE("a board wider than the yard's is ripped, and a row that fits nothing says why",
          "[packet]") {
  config::Config c = demo();
  c.frame.face = config::FaceKind::FaceFrame;
  c.stock.clear();
  const auto row = [&](config::StockKind kind, double length_mm, double width_mm,
                       std::optional<double> thick_mm) {
    config::StockItem item;
    item.kind = kind;
    item.length_mm = length_mm;
    item.width_mm = width_mm;
    item.thick_mm = thick_mm;
    c.stock.push_back(item);
  };
  row(config::StockKind::BaseBoard, 5000, 145, {});
  row(config::StockKind::FaceBoard, 3000, 45, {});
  row(config::StockKind::Carrier, 4000, 95, 45);
  row(config::StockKind::Metal, 2440, 1220, 1.5);
  row(config::StockKind::BaseBoard, 5000, 20, {});
  const Evaluation e = evaluate_packet(c);
  check_laws(c, e);
  std::set<std::size_t> taken;
  for (const CutGroup& group : e.packet->cutting.groups) {
    for (const CutStock& stock : group.stocks) {
      if (stock.used > 0 && stock.row) taken.insert(*stock.row);
    }
    for (const CutStick& stick : group.sticks) {
      if (group.sheets || group.stocks[stick.stock].width_mm != 145) continue;
      for (const SawnPiece& piece : stick.pieces) {
        if (piece.kind == SawnPiece::Kind::Part) CHECK(group.items[piece.item].rip_mm.has_value());
      }
    }
  }
  CHECK(taken == std::set<std::size_t>{0, 1});
  std::map<std::size_t, std::string> why;
  for (const UnusedRow& one : e.packet->cutting.unused) why[one.row] = one.why;
  REQUIRE(why.size() == 3);
  CHECK(why[2] == "it is 45 mm thick, and parts need 38.1 mm");
  CHECK(why[3] == "it is 1.5 mm thick, and the tops need 1.6 mm");
  CHECK(why[4].starts_with("it is 20 mm wide, and parts need at least "));
  const auto said = std::find_if(e.findings.begin(), e.findings.end(), [](const Finding& one) {
    return one.rule == "cuts.stock" && one.verdict == Verdict::Warn;
  });
  CHECK(said != e.findings.end());
}

TEST_CASE("no saw is set for less than it can take", "[packet]") {
  config::Config config = test::preset("stations/four_cooks");
  config.frame.face = config::FaceKind::FaceFrame;
  config.frame.fronts = config::FrontKind::Inset;
  const Evaluation e = evaluate_packet(config, Marks::FiveMillimetres);
  int boards = 0;
  for (const CutGroup& group : e.packet->cutting.groups) {
    if (group.sheets) continue;
    for (const CutItem& item : group.items) {
      ++boards;
      if (item.rip_mm) CHECK(item.width_mm - *item.rip_mm >= 0.5);
    }
  }
  CHECK(boards > 0);
}

TEST_CASE("boards that are cut to the ground keep their width in the shop", "[packet]") {
  const auto ripped = [](const config::Config& config) {
    int count = 0;
    const evaluate::Evaluation e = evaluate::evaluate_packet(config);
    for (const evaluate::CutGroup& group : e.packet->cutting.groups) {
      if (group.material != frame::Material::BaseBoard) continue;
      REQUIRE_FALSE(group.items.empty());
      for (const evaluate::CutItem& item : group.items) count += item.rip_mm ? 1 : 0;
    }
    return count;
  };
  config::Config config = test::preset("stations/garden_shelter");
  CHECK(ripped(config) == 0);
  config.survey.points.clear();
  CHECK(ripped(config) > 0);
}
