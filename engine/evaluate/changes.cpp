#include "engine/evaluate/changes.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "engine/base/quantity.h"
#include "engine/evaluate/packet.h"

namespace hs::evaluate {
namespace {

using frame::Piece;

constexpr std::string_view kQuantity = "quantity";

// Two figures of one thing: as they are told, so that the last bits are no change.
class List {
 public:
  void number(ChangeOf of, std::string what, std::string_view measure, ChangeUnit unit,
              const std::optional<double>& before, const std::optional<double>& after,
              int per_unit) {
    const auto told = [per_unit](const std::optional<double>& value) {
      return value ? std::optional(round_to(*value, per_unit)) : std::nullopt;
    };
    if (told(before) == told(after)) return;
    Change change;
    change.of = of;
    change.what = std::move(what);
    change.measure = measure;
    change.unit = unit;
    change.before = told(before);
    change.after = told(after);
    out.push_back(std::move(change));
  }

  // Pieces that changed alike become one change.
  void piece(const Piece& piece, std::string_view measure, ChangeUnit unit,
             const std::optional<double>& before, const std::optional<double>& after) {
    const std::string what(frame::kind_name(piece.kind));
    const std::string place = parts::place_text(piece);
    for (std::size_t i = first_piece_; i < out.size(); ++i) {
      Change& one = out[i];
      if (one.what != what || one.measure != measure) continue;
      // A quantity counts them itself.
      const bool counts = measure == kQuantity;
      if (!counts && (one.before != before || one.after != after)) continue;
      if (counts && one.before.has_value() != before.has_value()) continue;
      ++one.count;
      if (counts) (one.before ? one.before : one.after) = one.count;
      if (std::find(one.places.begin(), one.places.end(), place) == one.places.end()) {
        one.places.push_back(place);
      }
      return;
    }
    Change change;
    change.of = ChangeOf::Part;
    change.what = what;
    change.measure = measure;
    change.unit = unit;
    change.before = before;
    change.after = after;
    change.places.push_back(place);
    out.push_back(std::move(change));
  }
  void begin_pieces() { first_piece_ = out.size(); }

  std::vector<Change> out;

 private:
  std::size_t first_piece_ = 0;
};

using Place = std::tuple<frame::Kind, bool, int, int>;
Place place_of(const Piece& piece) { return {piece.kind, piece.oven, piece.bay, piece.nth}; }

// Each piece with the part that it is.
struct Sorted {
  std::map<Place, std::pair<const Piece*, const parts::Part*>> all;
};
Sorted sorted(const Build& build) {
  Sorted out;
  for (const parts::Part& part : build.parts.parts) {
    for (const std::size_t index : part.pieces) {
      const Piece& piece = build.frame.pieces[index];
      out.all[place_of(piece)] = {&piece, &part};
    }
  }
  return out;
}

// The first hole that is elsewhere, or another count of them.
void add_holes(List& out, const Piece& piece, const parts::Part& before, const parts::Part& after) {
  if (before.cuts.size() != after.cuts.size()) {
    out.piece(piece, "kinds of holes", ChangeUnit::Count, static_cast<double>(before.cuts.size()),
              static_cast<double>(after.cuts.size()));
    return;
  }
  for (std::size_t i = 0; i < before.cuts.size(); ++i) {
    const parts::Cut &a = before.cuts[i], &b = after.cuts[i];
    if (a.along_mm != b.along_mm) {
      return out.piece(piece, "hole's place, along", ChangeUnit::Mm, a.along_mm, b.along_mm);
    }
    if (a.across_mm != b.across_mm) {
      return out.piece(piece, "hole's place, across", ChangeUnit::Mm, a.across_mm, b.across_mm);
    }
    if (a.count != b.count) {
      return out.piece(piece, "holes in a row", ChangeUnit::Count, a.count, b.count);
    }
    if (a.long_mm != b.long_mm || a.wide_mm != b.wide_mm) {
      return out.piece(piece, "hole's size", ChangeUnit::Mm, a.long_mm, b.long_mm);
    }
  }
}

void add_parts(List& out, const Build& before, const Build& after) {
  const Sorted was = sorted(before), is = sorted(after);
  out.begin_pieces();
  for (const auto& [place, old] : was.all) {
    const auto now = is.all.find(place);
    if (now == is.all.end()) {
      out.piece(*old.first, kQuantity, ChangeUnit::Count, 1.0, {});
      continue;
    }
    const parts::Part &a = *old.second, &b = *now->second.second;
    const Piece& piece = *now->second.first;
    if (a.length_mm != b.length_mm) {
      out.piece(piece, "length", ChangeUnit::Mm, a.length_mm, b.length_mm);
    }
    if (a.width_mm != b.width_mm) {
      out.piece(piece, "width", ChangeUnit::Mm, a.width_mm, b.width_mm);
    }
    if (a.thick_mm != b.thick_mm) {
      out.piece(piece, "thickness", ChangeUnit::Mm, a.thick_mm, b.thick_mm);
    }
    add_holes(out, piece, a, b);
  }
  for (const auto& [place, now] : is.all) {
    if (was.all.count(place) == 0) {
      out.piece(*now.first, kQuantity, ChangeUnit::Count, {}, 1.0);
    }
  }
}

// Two lists of named numbers, in the order of the first, then what is new.
struct Named {
  std::string name;
  double value = 0;
};
void add_named(List& out, ChangeOf of, std::string_view measure, ChangeUnit unit, int per_unit,
               const std::vector<Named>& before, const std::vector<Named>& after) {
  const auto find = [](const std::vector<Named>& list, const std::string& name) {
    const auto at =
        std::find_if(list.begin(), list.end(), [&](const Named& one) { return one.name == name; });
    return at == list.end() ? std::nullopt : std::optional(at->value);
  };
  for (const Named& one : before) {
    out.number(of, one.name, measure, unit, one.value, find(after, one.name), per_unit);
  }
  for (const Named& one : after) {
    if (!find(before, one.name)) {
      out.number(of, one.name, measure, unit, {}, one.value, per_unit);
    }
  }
}

void add_heights(List& out, const Evaluation& before, const Evaluation& after) {
  const auto add = [&](std::string what, const std::optional<double>& a,
                       const std::optional<double>& b) {
    out.number(ChangeOf::Height, std::move(what), "height", ChangeUnit::Mm, a, b, 10);
  };
  add("dough counter", before.used.counter_mm, after.used.counter_mm);
  add("what the oven stands on", before.used.oven_base_mm, after.used.oven_base_mm);
  add("oven's floor", before.used.oven_floor_mm, after.used.oven_floor_mm);
  const auto base = [](const Evaluation& e) {
    return e.build && e.build->frame.made() ? std::optional(e.build->frame.base_mm) : std::nullopt;
  };
  add("base", base(before), base(after));
}

std::vector<Named> hardware(const Build& build) {
  std::vector<Named> out;
  for (const parts::Hardware& one : build.parts.hardware) out.push_back({one.name, one.quantity});
  return out;
}

void add_packets(List& out, const Packet& before, const Packet& after) {
  const auto bought = [](const Packet& packet) {
    std::vector<Named> list;
    for (const CutGroup& group : packet.cutting.groups) {
      list.push_back({group.name, static_cast<double>(group.bought)});
    }
    return list;
  };
  add_named(out, ChangeOf::Cut, "boards or sheets bought", ChangeUnit::Count, 1, bought(before),
            bought(after));
  const auto metal = [](const Packet& packet, double sheet::Blank::*side) {
    std::vector<Named> list;
    for (const MetalOrder& order : packet.metal.orders) {
      list.push_back({order.name, order.blank.*side});
    }
    return list;
  };
  add_named(out, ChangeOf::Metal, "flat width", ChangeUnit::Mm, 10,
            metal(before, &sheet::Blank::width_mm), metal(after, &sheet::Blank::width_mm));
  add_named(out, ChangeOf::Metal, "flat depth", ChangeUnit::Mm, 10,
            metal(before, &sheet::Blank::depth_mm), metal(after, &sheet::Blank::depth_mm));
  const auto paint = [](const Packet& packet) {
    std::vector<Named> list{{packet.painting.primer.name, packet.painting.primer.most_l}};
    for (const PaintAmount& one : packet.painting.paints) list.push_back({one.name, one.most_l});
    return list;
  };
  add_named(out, ChangeOf::Paint, "litres at the most", ChangeUnit::Litre, 100, paint(before),
            paint(after));
  const auto hours = [](const Packet& packet) { return packet.timetable.work_min / 60.0; };
  out.number(ChangeOf::Plan, "work", "hours", ChangeUnit::Hour, hours(before), hours(after), 10);
  out.number(ChangeOf::Money, "all that has a price", "total", ChangeUnit::Money,
             before.costing.total, after.costing.total, 100);
  out.number(ChangeOf::Money, "what is built", "mass", ChangeUnit::Kg, before.costing.built_kg,
             after.costing.built_kg, 10);
}

}  // namespace

std::string_view change_name(ChangeOf of) {
  constexpr std::string_view kNames[] = {"height", "part",  "hardware", "cut",
                                         "metal",  "paint", "plan",     "money"};
  return kNames[static_cast<std::size_t>(of)];
}

std::vector<Change> changes(const Evaluation& before, const Evaluation& after) {
  List out;
  add_heights(out, before, after);
  if (before.build && after.build) {
    add_parts(out, *before.build, *after.build);
    add_named(out, ChangeOf::Hardware, "quantity", ChangeUnit::Count, 10, hardware(*before.build),
              hardware(*after.build));
  }
  if (before.packet && after.packet) add_packets(out, *before.packet, *after.packet);
  return std::move(out.out);
}

}  // namespace hs::evaluate
