// Where everything of the station stands, and what it is built of, as tables: what the plan, the
// front view, the scene and the drawings of the cabinets show, in words.

#include <cmath>

#include "engine/base/number_text.h"
#include "engine/evaluate/build.h"
#include "engine/report/metal_sheets.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/station_layout.h"

namespace hs::report {
namespace {

constexpr double kNothing_mm = 0.5;

// "12 in left", "the middle".
std::string across(double x_mm, const Page& page) {
  if (std::abs(x_mm) < kNothing_mm) return "the middle";
  return page.length(std::abs(x_mm)) + (x_mm < 0 ? " left" : " right");
}

// "12 in back", "the front edge".
std::string back(double y_mm, const Page& page) {
  if (std::abs(y_mm) < kNothing_mm) return "the front edge";
  return page.length(std::abs(y_mm)) + (y_mm < 0 ? " before it" : " back");
}

struct Places {
  const Page& page;
  const StationLayout layout;
  Table table;

  void add(std::string name, const std::optional<Block>& block, std::string known) {
    if (!block) return;
    const double front_mm = layout.front_mm;
    std::string heights = page.length(block->top_mm);
    if (block->bottom_mm > kNothing_mm && block->height_mm() > kNothing_mm) {
      heights = page.length(block->bottom_mm) + " to " + heights;
    }
    table.rows.push_back(
        {std::move(name), across(block->left_mm, page) + " to " + across(block->right_mm, page),
         back(block->near_mm - front_mm, page) + " to " + back(block->far_mm - front_mm, page),
         std::move(heights), std::move(known)});
  }
};

std::string thing_name(clearance::Side side) {
  switch (side) {
    case clearance::Side::Left:
      return "Nearest thing on the left";
    case clearance::Side::Right:
      return "Nearest thing on the right";
    case clearance::Side::Back:
      return "Nearest thing at the back";
    case clearance::Side::Front:
      return "Nearest thing behind the cook";
    case clearance::Side::Above:
    case clearance::Side::Below:
      break;
  }
  return "Nearest thing";
}

std::string landing_words(const Landing& landing) {
  return landing.given ? "width as given" : "nobody has said how wide: as advised";
}

Table places_table(const Page& page, const StationLayout& s) {
  Places places{
      page, s, {"What stands where", {"What", "Along the front", "Back", "Height", "Known"}, {}}};
  const bool masonry = s.masonry_base;
  places.add(masonry ? "Pier under the oven" : "Oven counter", s.oven_stand, "in use");
  places.add("Block under the oven", s.riser, "in use");
  places.add("Oven", s.oven_body, "as given");
  places.add("Edge over the mouth", s.brow, "as given; how thick is drawn");
  places.add("Dough counter", s.dough_counter, "in use; which side is drawn");
  if (s.landing_left) {
    places.add("Place for a hot pizza, left", s.landing_left->box, landing_words(*s.landing_left));
  }
  if (s.landing_right) {
    places.add("Place for a hot pizza, right", s.landing_right->box,
               landing_words(*s.landing_right));
  }
  places.add("Flue", s.flue, "its size is drawn");
  places.add("Grill", s.grill, "its size is drawn");
  for (const Thing& thing : s.things) {
    places.add(thing_name(thing.side), thing.box, "as measured; its size is drawn");
  }
  if (s.cover) {
    places.add("Cover, on posts", s.cover->roof,
               s.cover->front_given ? "underside and front as given; the rest is drawn"
                                    : "underside as given; the rest is drawn");
  }
  for (std::size_t i = 0; i < s.cooks.size(); ++i) {
    places.add("Low table of " + page.cook_name(i), s.cooks[i].table_box, "its place is drawn");
    places.add("Step of " + page.cook_name(i), s.cooks[i].step_box, "its place is drawn");
  }
  return std::move(places.table);
}

Table cooks_table(const Page& page, const StationLayout& s) {
  Table table{"Where each cook stands", {"Cook", "Doing", "Along the front", "Eye", "Feet on"}, {}};
  const auto add = [&](std::size_t cook, const char* doing, const std::optional<Stand>& at) {
    if (!at) return;
    table.rows.push_back({page.cook_name(cook), doing, across(at->x_mm, page),
                          back(at->y_mm - s.front_mm, page),
                          at->z_mm > 0 ? "a step, " + page.length(at->z_mm) : "the ground"});
  };
  for (std::size_t i = 0; i < s.cooks.size(); ++i) {
    const CookPlace& place = s.cooks[i];
    add(i, "watching the oven", place.watching);
    add(i, "working at the oven", place.working);
    add(i, "making dough", place.prep);
    add(i, "at a low table", place.table);
  }
  return table;
}

Table runs_table(const Page& page, const frame::Frame& frame) {
  Table table{
      "Cabinets, from the left", {"Cabinets under", "Their top", "Boxes", "Base", "Bays"}, {}};
  for (const frame::Run& run : frame.runs) {
    std::string bays;
    for (const frame::Bay& bay : run.bays) {
      bays += (bays.empty() ? "" : ", ") + std::string(holds_words(bay.holds));
    }
    const auto length = [&](double mm) { return shop_length(mm, page.units, true); };
    table.rows.push_back({run.oven ? "The oven" : "The dough counter",
                          plain_length(run.top_mm, page.units, true),
                          length(run.boxes.width_mm()) + " wide, " + length(run.boxes.depth_mm()) +
                              " deep, " + length(run.boxes.height_mm()) + " high",
                          length(frame.base_mm) + " high", std::move(bays)});
  }
  return table;
}

Table parts_table(const Page& page, const parts::List& list) {
  Table table{"Parts, finished sizes",
              {"Part", "Number", "How many", "Length", "Width", "Thick", "Of"},
              {}};
  for (const parts::Part& part : list.parts) {
    const auto length = [&](double mm) {
      return part.material == frame::Material::Metal ? metal_length(mm, page.units)
                                                     : shop_length(mm, page.units, true);
    };
    table.rows.push_back(
        {capitalised(std::string(frame::kind_name(part.kind))), trimmed(part.number, 0),
         trimmed(part.quantity(), 0), length(part.length_mm), length(part.width_mm),
         length(part.thick_mm),
         part.stock.empty() ? std::string(frame::material_name(part.material)) : part.stock});
  }
  return table;
}

Table hardware_table(const Page& page, const parts::List& list) {
  Table table{"Hardware", {"What", "How many", "How it is counted"}, {}};
  for (const parts::Hardware& one : list.hardware) {
    table.rows.push_back({capitalised(one.name), quantity_words(one.quantity, one.unit, page.units),
                          std::string(one.rule)});
  }
  return table;
}

}  // namespace

std::vector<Table> station_tables(const Page& page) {
  const StationLayout layout = station_layout(page.config, page.evaluation);
  return {places_table(page, layout), cooks_table(page, layout)};
}

std::vector<Table> build_tables(const Page& page) {
  const evaluate::Build& build = *page.evaluation.build;
  return {runs_table(page, build.frame), parts_table(page, build.parts),
          hardware_table(page, build.parts)};
}

}  // namespace hs::report
