#pragma once
// The part of the field table about what bears on the cabinets and what holds them. Tags 440 to
// 479.

#include <array>

#include "engine/config/field_row.h"

namespace hs::config {

namespace rows {
inline constexpr std::string_view kHeld[] = {"free", "wall", "ground"};
inline constexpr std::string_view kCarries[] = {"timber", "legs", "masonry", "base_boards"};

inline constexpr auto kLoadsRows = std::to_array<Row>({
    STATION(440, "loads.feet_across_mm", kLength, Absent::Unknown, 50, 3000, 10, Words{},
            "load.deck load.deck_years load.deck_strength load.oven", "Oven's feet, across",
            "How far apart are the oven's feet, left to right?",
            "Middle to middle. Left out: 50 mm (2 in) inside its body.", &Config::loads,
            &Loads::feet_across_mm),
    STATION(441, "loads.feet_deep_mm", kLength, Absent::Unknown, 50, 3000, 10, Words{}, "load.oven",
            "Oven's feet, front to back", "How far apart are the oven's feet, front to back?",
            "Middle to middle. Left out: 50 mm (2 in) inside its body.", &Config::loads,
            &Loads::feet_deep_mm),
    STATION(
        442, "loads.foot_mm", kLength, Absent::Default, 10, 400, 5, Words{},
        "load.deck load.deck_years load.deck_strength", "Foot", "How wide is one foot of the oven?",
        "Across what touches the counter, or a plate under it.", &Config::loads, &Loads::foot_mm),
    STATION(443, "loads.held", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kHeld},
            "load.tip load.child load.pull load.wind", "Held by",
            "What holds the cabinets upright?",
            "free: their own weight; wall: screwed to a wall behind; ground: anchored. Loose "
            "pavers hold no anchor.",
            &Config::loads, &Loads::held),
    STATION(444, "loads.carries", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kCarries},
            "load.path", "Carried by", "What carries the cabinets to the ground?",
            "timber: treated lumber on shims, as drawn; legs; masonry; base_boards: the boards "
            "round the base themselves.",
            &Config::loads, &Loads::carries),
    STATION(445, "loads.gust_m_s", Quantity::Speed, Absent::Unknown, 5, 90, 1, Words{}, "load.wind",
            "Strongest gust", "How hard does the wind blow there at worst?",
            "Gusts, as the weather service or the building office names them: 40 m/s is 90 mph.",
            &Config::loads, &Loads::gust_m_s),
    STATION(446, "loads.low_c", Quantity::Temperature, Absent::Default, -50, 30, 1, Words{},
            "load.growth_base load.growth_fronts load.growth_metal", "Coldest",
            "How cold do its boards get in the year?", "A clear winter night.", &Config::loads,
            &Loads::low_c),
    STATION(447, "loads.high_c", Quantity::Temperature, Absent::Default, 0, 100, 1, Words{},
            "load.growth_base load.growth_fronts load.growth_metal", "Hottest",
            "How hot do its boards get in the year?",
            "In full sun, dark paint and bare metal well above the air.", &Config::loads,
            &Loads::high_c),
    STATION(448, "loads.build_c", Quantity::Temperature, Absent::Default, -20, 50, 1, Words{},
            "load.growth_base load.growth_fronts load.growth_metal", "When built",
            "How warm are the boards when they are put together?",
            "The air in the shop, as a thermometer there says.", &Config::loads, &Loads::build_c),
    STATION(449, "loads.drawer_kg", Quantity::Mass, Absent::Default, 0, 60, 1, Words{},
            "load.tip load.child", "In a drawer", "How much lies in one drawer?",
            "Ten plates are 6 kg (13 lb).", &Config::loads, &Loads::drawer_kg),
});
}  // namespace rows

}  // namespace hs::config
