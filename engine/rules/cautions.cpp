#include "engine/rules/cautions.h"

#include <array>

#include "engine/base/packed_table.h"
#include "engine/rules/source_rows.h"

namespace hs::rules {
namespace {

constexpr auto kCautions = std::to_array<Caution>({
    {"caution.manual_first", Applies::Always, "The manual comes first",
     "The oven's own installation instructions, then the local authority, override every number "
     "here. Codes are adopted locally, late and changed.",
     "judgement", "", Basis::Judgement},
    {"caution.cover", Applies::Always, "Nothing that burns overhead",
     "Do not put an oven under anything that burns, or within a clearance, unless its listing says "
     "so. Heat worked out by a formula is no evidence of clearance.",
     "judgement", "", Basis::Judgement},
    {"caution.near_buildings", Applies::Flame, "Distance from buildings",
     "Open-flame cooking within 10 ft (3 m) of anything built to burn is forbidden in many places "
     "except at one- and two-family houses. Ask the local fire service.",
     "ifc", "308.1.4", Basis::SecondHand},
    {"caution.railings", Applies::Always, "Railings and branches",
     "Keep the oven at least 3 ft (0.9 m) from railings, branches and anything that burns, and out "
     "from under eaves.",
     "nfpa_tips", "", Basis::SecondHand},
    {"caution.wood_dries", Applies::Always, "Warm wood can catch fire years later",
     "Wood held above 77 C (171 F) for long can catch fire. A stone top on plywood is a "
     "combustible "
     "top.",
     "babrauskas2007", "abstract", Basis::Seen},
    {"caution.carbon_monoxide", Applies::Flame, "Open air only",
     "Burning gas, wood or charcoal gives off carbon monoxide, and embers do until they are fully "
     "out. Never indoors, in a garage or a tent, even with air.",
     "cpsc_co", "label for charcoal; for gas and wood our judgement", Basis::Judgement},
    {"caution.lp_cylinder", Applies::Gas, "The cylinder",
     "Never shut a gas cylinder in with the burner. Keep it upright. Its own space has one whole "
     "side open, or two openings as high as its valve and two at the floor, opposite each other, "
     "each at least 10 sq in (65 cm2) and 1/2 sq in for each pound of gas (7.1 cm2 for each kg): "
     "gas is heavier than air.",
     "z21_58", "enclosure for cylinders, as manuals give it", Basis::SecondHand},
    {"caution.lp_cylinder_fire_feature", Applies::Gas, "The cylinder's openings, the other form",
     "For fire features another form is published: within 5 in (127 mm) of the top at least two "
     "openings, 1 sq in for each pound of gas in all (14.2 cm2 for each kg); at the floor half of "
     "that, beginning no higher than 1 in (25 mm). Where the manual is silent, take the larger of "
     "the two forms.",
     "z21_97", "enclosure for cylinders, as manuals give it", Basis::SecondHand},
    {"caution.cylinder_place", Applies::Gas, "Where the cylinder stands",
     "A cylinder's relief valve stays at least 3 ft (0.9 m) from any opening of the building below "
     "it and 5 ft (1.5 m) from anything that sparks.",
     "nfpa58", "6.3.4.3, figure I.1(a)", Basis::SecondHand},
    {"caution.leak_test", Applies::Gas, "Leak test",
     "Soapy water on hose and joints before the first use each season. Bubbles: turn it off and "
     "have "
     "it mended. A smell of gas while it burns: leave it where it is, go away and call the fire "
     "service.",
     "nfpa_tips", "", Basis::SecondHand},
    {"caution.relight", Applies::Gas, "Wait before relighting",
     "When the flame goes out, turn the gas off and wait at least 5 minutes with the mouth open.",
     "nfpa_tips", "", Basis::SecondHand},
    {"caution.gas_fitter", Applies::Gas, "Fixed gas lines",
     "A licensed gas fitter makes and tests fixed lines, with the permits that the place asks for. "
     "Call before digging.",
     "judgement", "", Basis::Judgement},
    {"caution.child_free_zone", Applies::Always, "Children and pets",
     "Keep children and pets 3 ft (0.9 m) from the hot oven, until it is cold.", "nfpa_tips", "",
     Basis::SecondHand},
    {"caution.burns", Applies::Always, "Burns",
     "Door, chimney and stone stay hot long after baking. Gloves, a peel long enough, no loose "
     "sleeves, hair tied. Values for heat are averages of healthy adults; children's and older "
     "skin "
     "bears less.",
     "judgement", "", Basis::Judgement},
    {"caution.extinguisher", Applies::Always, "Extinguisher",
     "Have one rated at least 1-A:10-B:C within reach, not behind the oven. Never water on burning "
     "fat.",
     "nfpa10", "ratings", Basis::SecondHand},
    {"caution.ash", Applies::Solid, "Ash",
     "Ash is live for days. Metal container, tight lid, outdoors, at least 10 ft (3 m) from "
     "buildings and never on a deck.",
     "fire_departments", "", Basis::SecondHand},
    {"caution.tipping", Applies::Always, "Tipping",
     "A heavy oven on a high stand tips when pushed, leaned on or climbed. Fix the stand, brace it "
     "and keep children off. Footings, covers, anchors and wind are for an engineer or the "
     "building "
     "office.",
     "judgement", "", Basis::Judgement},
    {"caution.power", Applies::Electric, "Power",
     "Outdoor outlets need a ground-fault breaker and a cover that keeps rain out with the plug "
     "in. "
     "A licensed electrician; never an extension cord as fixed wiring.",
     "nec", "210.8, 406.9(B)", Basis::SecondHand},
    {"caution.lights", Applies::Always, "Lamps and outlets near the oven",
     "Any outlet or lamp at the station needs a ground-fault breaker and parts made for wet "
     "places, "
     "and stays out of the mouth's view. A licensed electrician.",
     "nec", "210.8, 410.10(A)", Basis::SecondHand},
});

constexpr bool rows_sound() {
  for (const Caution& a : kCautions) {
    if (!may_cite(a.source, a.basis) || a.text.empty() || a.title.empty()) return false;
    int same = 0;
    for (const Caution& b : kCautions) same += a.id == b.id ? 1 : 0;
    if (same != 1) return false;
  }
  return true;
}
static_assert(rows_sound(), "a caution without text or source, or two with one id");

using Cautions = PackedTable<kCautions, &Caution::id, &Caution::title, &Caution::text,
                             &Caution::source, &Caution::clause>;

}  // namespace

std::span<const Caution> cautions() { return Cautions::rows(); }

}  // namespace hs::rules
