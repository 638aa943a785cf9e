#pragma once
// The part of the field table about what stands around the oven: cover, neighbours, flue, weather,
// ground. Absent always means that nobody has said.

#include <array>

#include "engine/config/field_row.h"

namespace hs::config {

namespace rows {
inline constexpr std::string_view kCovers[] = {"none", "roof", "slats", "fabric"};
inline constexpr std::string_view kWalls[] = {"none", "one", "two", "three", "four"};
inline constexpr std::string_view kDwellings[] = {"one_or_two_family", "other"};
inline constexpr std::string_view kSides[] = {"none", "left", "right"};
inline constexpr std::string_view kFlues[] = {"none", "open", "through_roof"};
inline constexpr std::string_view kGrounds[] = {"paving", "deck", "bare"};
inline constexpr std::string_view kExtinguishers[] = {"in_reach", "behind", "away", "none"};
inline constexpr std::string_view kCylinders[] = {"none", "open_side", "own_cabinet",
                                                  "with_burner"};
inline constexpr std::string_view kWinds[] = {"front", "front_left", "left",  "back_left",
                                              "back",  "back_right", "right", "front_right"};

inline constexpr auto kSurroundingsRows = std::to_array<Row>({

    // The oven and the counter ------------------------------------------------------------------
    STATION(180, "oven.listed", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.side clearance.back clearance.above clearance.front clearance.below",
            "Listed", "Does a testing laboratory's mark stand on the oven?",
            "A mark on its plate or in its manual. No: built by hand, or sold without one.",
            &Config::oven, &Oven::listed),
    STATION(181, "oven.listed_clearance.under_cover", Quantity::Flag, Absent::Unknown, 0, 0, 0,
            Words{}, "clearance.cover", "Manual: cover",
            "May it stand under a roof or cover, by its manual?",
            "A manual that is silent says neither: leave it out.", &Config::oven,
            &Oven::listed_clearance, &Clearance::under_cover),
    STATION(182, "site.local_clearance.under_cover", Quantity::Flag, Absent::Unknown, 0, 0, 0,
            Words{}, "clearance.cover", "Local rule: cover",
            "May it stand under a roof or cover, by a local rule?",
            "The building office or fire service.", &Config::site, &Site::local_clearance,
            &Clearance::under_cover),
    STATION(183, "station.left_combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.side", "Burns on the left",
            "Does the nearest thing on the left of the oven burn?",
            "Wood, plastic, plants and painted boards do; brick, stone and bare metal do not.",
            &Config::station, &Station::left_combustible),
    STATION(184, "station.right_combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.side", "Burns on the right",
            "Does the nearest thing on the right of the oven burn?",
            "Wood, plastic, plants and painted boards do; brick, stone and bare metal do not.",
            &Config::station, &Station::right_combustible),
    STATION(185, "station.back_combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.back", "Burns behind", "Does the nearest thing behind the oven burn?",
            "Wood, plastic, plants and painted boards do; brick, stone and bare metal do not.",
            &Config::station, &Station::back_combustible),
    STATION(186, "station.landing_across", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "reach.landing", "Landing across", "Can you set a hot pizza down across the aisle?",
            "A counter or table no more than 48 in (1220 mm) from the oven's counter, with nobody "
            "passing between.",
            &Config::station, &Station::landing_across),
    STATION(187, "station.opens_mm", kLength, Absent::Unknown, 0, 2000, 10, Words{}, "room.drawer",
            "Doors open", "How far does the deepest door or drawer open into the aisle?",
            "Counter's front edge to the edge of the open door or drawer.", &Config::station,
            &Station::opens_mm),
    STATION(188, "station.opens_across_mm", kLength, Absent::Unknown, 0, 2000, 10, Words{},
            "room.drawer", "Doors across", "How far does a door or drawer across the aisle open?",
            "From where you measure the free ground to the edge of the open door.",
            &Config::station, &Station::opens_across_mm),
    STATION(189, "station.drip_groove", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "weather.drip", "Drip groove", "Is there a groove under the counter's front edge?",
            "A saw cut, or an edge turned down: water must fall there.", &Config::station,
            &Station::drip_groove),

    // Cover ---------------------------------------------------------------------------------------
    STATION(190, "site.cover.kind", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kCovers},
            "clearance.cover", "Cover", "What is over the oven?",
            "none: open sky, no branches, no eaves.", &Config::site, &Site::cover, &Cover::kind),
    STATION(191, "site.cover.combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.cover", "Cover burns", "Does the cover burn?",
            "Wood, fabric and plastic sheets do.", &Config::site, &Site::cover,
            &Cover::combustible),
    STATION(192, "site.cover.out_mm", kLength, Absent::Unknown, -6000, 6000, 50, Words{},
            "weather.rain_counter", "Cover's edge",
            "How far in front of the counter does the cover's edge reach?",
            "Plumb from the edge to the ground, then to the counter's front edge; negative: the "
            "edge is behind it.",
            &Config::site, &Site::cover, &Cover::out_mm),
    STATION(193, "site.cover.walls", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kWalls},
            "clearance.open_sides", "Closed sides", "How many sides under the cover are closed?",
            "A wall, a blind or a hedge that air does not pass.", &Config::site, &Site::cover,
            &Cover::walls),
    STATION(194, "site.cover.post_gap_mm", kLength, Absent::Unknown, 0, 20000, 10, Words{},
            "clearance.post", "Gap to a post",
            "How far is the nearest post of the cover from the oven?", "Oven body to post.",
            &Config::site, &Site::cover, &Cover::post_gap_mm),
    STATION(195, "site.cover.post_combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.post", "Posts burn", "Does that post burn?",
            "Wood, or a sleeve of wood or plastic.", &Config::site, &Site::cover,
            &Cover::post_combustible),

    // Neighbours ----------------------------------------------------------------------------------
    STATION(196, "site.railing_gap_mm", kLength, Absent::Unknown, 0, 20000, 10, Words{},
            "clearance.railing", "Gap to railings",
            "How far is the nearest railing, fence or branch that burns?",
            "Oven body to it, any direction.", &Config::site, &Site::railing_gap_mm),
    STATION(197, "site.house_gap_mm", kLength, Absent::Unknown, 0, 50000, 50, Words{},
            "clearance.house", "Gap to a building", "How far is the nearest building?",
            "Oven body to wall, eaves or balcony.", &Config::site, &Site::house_gap_mm),
    STATION(198, "site.dwelling", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kDwellings},
            "clearance.house", "Kind of house", "What kind of house is it?",
            "one_or_two_family, or other: more homes, a business, a balcony above.", &Config::site,
            &Site::dwelling),
    STATION(199, "site.grill.at", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kSides},
            "clearance.grill", "Grill", "On which side of the oven is a grill?",
            "As the cook sees it.", &Config::site, &Site::grill, &Grill::at),
    STATION(200, "site.grill.gap_mm", kLength, Absent::Unknown, 0, 20000, 10, Words{},
            "clearance.grill", "Gap to the grill", "How far are oven and grill apart?",
            "Body to body.", &Config::site, &Site::grill, &Grill::gap_mm),
    STATION(201, "site.grill.listed_side_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.grill", "Grill's manual: sides",
            "How much room at its sides does the grill ask for?",
            "Its manual: clearance to combustibles.", &Config::site, &Site::grill,
            &Grill::listed_side_mm),
    STATION(202, "site.grill.under_cover", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.grill", "Grill's manual: cover",
            "May the grill stand under a cover, by its manual?",
            "A manual that is silent says neither: leave it out.", &Config::site, &Site::grill,
            &Grill::under_cover),
    STATION(203, "site.flue.kind", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kFlues},
            "clearance.flue clearance.flue_top", "Flue", "Does the oven have a flue or chimney?",
            "open: it ends in the open; through_roof: it passes a roof or cover.", &Config::site,
            &Site::flue, &Flue::kind),
    STATION(204, "site.flue.top_mm", kLength, Absent::Unknown, 500, 20000, 50, Words{},
            "clearance.flue_top", "Flue's top", "How high is the top of the flue?",
            "Ground at the cook's feet to the opening.", &Config::site, &Site::flue, &Flue::top_mm),
    STATION(205, "site.flue.roof_mm", kLength, Absent::Unknown, 1000, 20000, 50, Words{},
            "clearance.flue_top", "Flue through the roof", "How high does it leave the roof?",
            "On the roof's higher side.", &Config::site, &Site::flue, &Flue::roof_mm),
    STATION(206, "site.flue.near_top_mm", kLength, Absent::Unknown, 0, 20000, 50, Words{},
            "clearance.flue_top", "Near the flue",
            "How high is the highest thing within 10 ft (3 m) of it?",
            "Ridge, wall or tree, level distance; 0: nothing.", &Config::site, &Site::flue,
            &Flue::near_top_mm),
    STATION(207, "site.flue.gap_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.flue", "Gap to the flue",
            "How far is the nearest thing that burns from the flue?", "Rafters, boards, cover.",
            &Config::site, &Site::flue, &Flue::gap_mm),
    STATION(208, "site.flue.listed_gap_mm", kLength, Absent::Unknown, 0, 2000, 10, Words{},
            "clearance.flue", "Flue's maker", "How much room does the flue's maker ask for?",
            "On its label: clearance to combustibles.", &Config::site, &Site::flue,
            &Flue::listed_gap_mm),

    // Weather and ground --------------------------------------------------------------------------
    STATION(210, "site.wind_from", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kWinds},
            "weather.wind_mouth", "Wind from",
            "Where does the wind usually come from while you bake?",
            "As the cook at the oven sees it; back: from behind the oven.", &Config::site,
            &Site::wind_from),
    STATION(211, "site.wind_m_s", Quantity::Speed, Absent::Unknown, 0, 40, 0.5, Words{},
            "weather.rain_counter weather.rain_face", "Wind in rain",
            "How strong is the wind when it rains?",
            "A weather station near by; leaves rustle at 3 m/s (7 mph), small trees sway at 9 (20 "
            "mph).",
            &Config::site, &Site::wind_m_s),
    STATION(
        212, "site.ground", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kGrounds},
        "weather.drainage clearance.apron", "Ground", "What is the ground before the oven?",
        "paving: stone, brick, concrete; deck: wood or plastic boards; bare: earth, gravel, lawn.",
        &Config::site, &Site::ground),
    STATION(213, "site.fall_mm", kLength, Absent::Unknown, -1000, 1000, 5, Words{},
            "weather.drainage", "Fall of the ground",
            "How far does the ground fall over 10 ft (3.05 m), away from the house?",
            "A straight board of that length with a level on it: lift its low end until it is "
            "level, measure the gap. Negative: towards the house.",
            &Config::site, &Site::fall_mm),
    STATION(214, "site.extinguisher", Quantity::Choice, Absent::Unknown, 0, 0, 0,
            Words{kExtinguishers}, "clearance.extinguisher", "Extinguisher",
            "Where does the extinguisher hang?",
            "in_reach: on the cook's way out; behind: behind the oven; away: elsewhere.",
            &Config::site, &Site::extinguisher),
    STATION(215, "site.cylinder", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kCylinders},
            "clearance.cylinder", "Gas cylinder", "Where does the gas cylinder stand?",
            "none: piped gas; open_side: one whole side of its space is open; own_cabinet: closed "
            "in by itself; with_burner: in one space with the oven.",
            &Config::site, &Site::cylinder),
    STATION(216, "site.cylinder_kg", Quantity::Mass, Absent::Unknown, 0.2, 50, 1, Words{},
            "clearance.cylinder", "Gas in the cylinder", "How much gas is in a full cylinder?",
            "On the cylinder: 9 kg (20 lb) is usual.", &Config::site, &Site::cylinder_kg),
});
}  // namespace rows

}  // namespace hs::config
