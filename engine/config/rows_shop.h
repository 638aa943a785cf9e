#pragma once
// The part of the field table about the shop: the stock list, how it is sawn, power, paint, plan.
// Tags 330 to 409. Nothing of it moves a counter; without a stock list the usual sizes are taken.

#include <array>

#include "engine/config/field_row.h"

namespace hs::config {

namespace rows {
inline constexpr std::string_view kStockKinds[] = {
    "sheet", "drawer_sheet", "front_sheet", "face_board", "base_board", "carrier",
    "metal", "slab",         "primer",      "paint",      "bedding",    "hardware"};
inline constexpr std::string_view kGrains[] = {"length", "width", "none"};
inline constexpr std::string_view kCans[] = {"litre", "quart", "gallon", "five_litres"};
inline constexpr std::string_view kSupplies[] = {"120_v", "230_v"};
inline constexpr std::string_view kBreakers[] = {"10_a", "15_a", "16_a", "20_a"};
inline constexpr std::string_view kWireSizes[] = {"awg_14",  "awg_12",  "awg_10", "awg_8",
                                                  "mm2_1_5", "mm2_2_5", "mm2_4",  "mm2_6"};
inline constexpr std::string_view kBuriedWires[] = {"cable", "metal_pipe", "plastic_pipe",
                                                    "gfci_20_a", "low_voltage"};
inline constexpr std::string_view kCodeYears[] = {"2017", "2020", "2023", "2026"};
inline constexpr std::string_view kOutletPlaces[] = {"dough_end", "oven_end", "dough_back"};
inline constexpr std::string_view kWorkDays[] = {"weekdays", "weekends", "every_day"};

inline constexpr auto kShopRows = std::to_array<Row>({

    // Stock list ----------------------------------------------------------------------------------
    STOCK(330, "stock[].name", Quantity::Text, Absent::Default, 0, 40, 0, Words{}, "money.prices",
          "Name", "What do you call it?",
          "Hardware: as the parts list calls it, so that its price is found.", &StockItem::name),
    STOCK(331, "stock[].kind", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kStockKinds},
          "cuts.stock money.prices", "For", "What is it for?",
          "front_sheet: doors and drawer fronts; carrier: boards that carry the cabinets.",
          &StockItem::kind),
    STOCK(332, "stock[].length_mm", kLength, Absent::Unknown, 100, 10000, 10, Words{},
          "cuts.stock cuts.too_large", "Length", "How long is one?", "The longer side of a sheet.",
          &StockItem::length_mm),
    STOCK(333, "stock[].width_mm", kLength, Absent::Unknown, 10, 3000, 1, Words{},
          "cuts.stock cuts.too_large", "Width", "How wide is one?",
          "Measured, not nominal: a 1x6 board is 139.7 mm (5 1/2 in).", &StockItem::width_mm),
    STOCK(334, "stock[].thick_mm", kLength, Absent::Unknown, 0.3, 100, 0.1, Words{}, "cuts.stock",
          "Thickness", "How thick is it?", "Measured. Left out: as the parts need.",
          &StockItem::thick_mm),
    STOCK(335, "stock[].on_hand", Quantity::Count, Absent::Unknown, 0, 200, 1, Words{},
          "cuts.stock", "In the shop", "How many are there already?",
          "Offcuts too: they are used first. Left out: bought when needed.", &StockItem::on_hand),
    STOCK(336, "stock[].price", Quantity::Money, Absent::Unknown, 0, 100000, 1, Words{},
          "money.prices", "Price", "What does one cost?", "One board, sheet, can or piece.",
          &StockItem::price),
    STOCK(337, "stock[].grain", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kGrains},
          "cuts.stock", "Grain", "Which way does its grain run?", "none: parts may be turned.",
          &StockItem::grain),
    STOCK(338, "stock[].can", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kCans},
          "money.prices", "Can", "How much is in one can?", "Paint, primer and bedding only.",
          &StockItem::can),
    STOCK(339, "stock[].bad_from_mm", kLength, Absent::Unknown, 0, 10000, 10, Words{}, "cuts.stock",
          "Defect from", "Where does a knot or split begin?", "From the board's end.",
          &StockItem::bad_from_mm),
    STOCK(340, "stock[].bad_to_mm", kLength, Absent::Unknown, 0, 10000, 10, Words{}, "cuts.stock",
          "Defect to", "And where does it end?", "No part is cut from between.",
          &StockItem::bad_to_mm),

    // The saw -------------------------------------------------------------------------------------
    STATION(350, "shop.kerf_mm", kLength, Absent::Default, 0, 10, 0.1, Words{}, "cuts.kerf", "Kerf",
            "How wide a cut does the saw make?",
            "Measure one: usual blades 3.2 mm (1/8 in), track saws 1.8 to 2.2.", &Config::shop,
            &Shop::kerf_mm),
    STATION(351, "shop.sheet_trim_mm", kLength, Absent::Default, 0, 50, 1, Words{}, "cuts.kerf",
            "Sheet edges", "How much is taken off a sheet's edges?",
            "Along every edge, the cut with it: factory edges are dented.", &Config::shop,
            &Shop::sheet_trim_mm),
    STATION(352, "shop.board_trim_mm", kLength, Absent::Default, 0, 100, 1, Words{}, "cuts.kerf",
            "Board ends", "How much is taken off a board's ends?",
            "At each end, the cut with it: ends are split or out of square.", &Config::shop,
            &Shop::board_trim_mm),
    STATION(353, "shop.currency", Quantity::Text, Absent::Default, 0, 8, 0, Words{}, "money.prices",
            "Currency", "In what are the prices?", "Shown beside each sum.", &Config::shop,
            &Shop::currency),

    // Power ---------------------------------------------------------------------------------------
    STATION(360, "power.supply", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kSupplies},
            "power.drop power.circuit power.code", "Supply", "What is the house's supply?",
            "120_v: North America; 230_v: most of the world.", &Config::power, &Power::supply),
    STATION(361, "power.outlets", Quantity::Count, Absent::Default, 0, 4, 1, Words{},
            "power.none power.box power.cutout", "Outlets", "How many outlets are in the station?",
            "0: none.", &Config::power, &Power::outlets),
    STATION(362, "power.outlet_w", Quantity::Power, Absent::Default, 0, 4000, 100, Words{},
            "power.circuit power.drop", "Plugged in", "How much is plugged in at once?",
            "Watts on the appliances' plates, together.", &Config::power, &Power::outlet_w),
    STATION(363, "power.lamp_w", Quantity::Power, Absent::Default, 0, 500, 1, Words{},
            "power.none power.circuit power.drop power.cutout", "Wired lamp",
            "How many watts has a lamp that is wired in?", "0: none.", &Config::power,
            &Power::lamp_w),
    STATION(364, "power.breaker", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kBreakers},
            "power.circuit", "Breaker", "What does the circuit's breaker say?", "On its handle.",
            &Config::power, &Power::breaker),
    STATION(365, "power.wire", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kWireSizes},
            "power.drop power.box", "Wire", "Which copper wire runs to the station?",
            "On its sheath: 14-2, 12-2, or square millimetres.", &Config::power, &Power::wire),
    STATION(366, "power.run_mm", kLength, Absent::Unknown, 500, 150000, 500, Words{}, "power.drop",
            "Run", "How long is the wire, one way?", "From the breaker to the farthest box.",
            &Config::power, &Power::run_mm),
    STATION(367, "power.buried", Quantity::Choice, Absent::Unknown, 0, 0, 0, Words{kBuriedWires},
            "power.code", "Under ground", "How does it lie in the ground?",
            "gfci_20_a: a home's 120 V circuit of at most 20 A behind a GFCI.", &Config::power,
            &Power::buried),
    STATION(368, "power.under_slab", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "power.code", "Under a slab", "Does it lie under a slab?",
            "At least 4 in of concrete without vehicles, 6 in beyond the wire.", &Config::power,
            &Power::under_slab),
    STATION(369, "power.edition", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kCodeYears},
            "power.code power.box", "Code's edition", "Which edition is in force at your place?",
            "North America: of NFPA 70. Ask the building office.", &Config::power, &Power::edition),
    STATION(370, "power.outlet_at", Quantity::Choice, Absent::Default, 0, 0, 0,
            Words{kOutletPlaces}, "power.cutout", "Outlets in", "Where are the outlets let in?",
            "dough_end, oven_end: that run's end panel; dough_back: a back.", &Config::power,
            &Power::outlet_at),
    STATION(371, "power.outlet_up_mm", kLength, Absent::Default, 100, 1900, 10, Words{},
            "power.cutout", "Outlets' height", "How high are the outlets?",
            "Middle of the box above the ground.", &Config::power, &Power::outlet_up_mm),
    STATION(372, "power.painted_first", Quantity::Flag, Absent::Default, 0, 0, 0, Words{},
            "power.cutout", "Painted before cut", "Are the panels painted already?",
            "Then each cut edge is sealed and touched up.", &Config::power, &Power::painted_first),

    // Paint ---------------------------------------------------------------------------------------
    STATION(380, "finish.body_colour", Quantity::Text, Absent::Default, 0, 30, 0, Words{},
            "finish.amount", "Cabinets' colour", "What colour are the cabinets?", "Your own word.",
            &Config::finish, &Finish::body_colour),
    STATION(381, "finish.front_colour", Quantity::Text, Absent::Default, 0, 30, 0, Words{},
            "finish.amount", "Doors' colour", "What colour are doors and drawer fronts?",
            "Your own word.", &Config::finish, &Finish::front_colour),
    STATION(382, "finish.inside_colour", Quantity::Text, Absent::Default, 0, 30, 0, Words{},
            "finish.amount", "Colour inside", "What colour are the cabinets inside?",
            "Your own word.", &Config::finish, &Finish::inside_colour),
    STATION(383, "finish.coats", Quantity::Count, Absent::Default, 1, 4, 1, Words{},
            "finish.amount finish.gap", "Coats", "How many coats of paint over the primer?",
            "By the label; usually two.", &Config::finish, &Finish::coats),
    STATION(384, "finish.air_c", Quantity::Temperature, Absent::Unknown, -20, 50, 1, Words{},
            "finish.day finish.waits", "Air", "How warm is the day asked about?", "In the shade.",
            &Config::finish, &Finish::air_c),
    STATION(385, "finish.humidity", Quantity::Share, Absent::Unknown, 0, 1, 0.05, Words{},
            "finish.day finish.waits", "Humidity", "How humid is its air?",
            "From a weather report or a hygrometer.", &Config::finish, &Finish::humidity),
    STATION(386, "finish.surface_c", Quantity::Temperature, Absent::Unknown, -20, 90, 1, Words{},
            "finish.day", "Surface", "How warm is the surface to be painted?",
            "With a surface thermometer: it may be colder than the air.", &Config::finish,
            &Finish::surface_c),
    STATION(387, "finish.dry_day", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{}, "finish.day",
            "Dry after", "Does it stay dry for 24 hours after?", "Rain and dew.", &Config::finish,
            &Finish::dry_day),
    STATION(388, "finish.coldest_after_c", Quantity::Temperature, Absent::Unknown, -30, 40, 1,
            Words{}, "finish.day", "Coldest after", "How cold does it get in the 24 hours after?",
            "The night's lowest, from a weather report.", &Config::finish,
            &Finish::coldest_after_c),

    // Plan ----------------------------------------------------------------------------------------
    STATION(400, "plan.start", Quantity::Text, Absent::Default, 0, 10, 0, Words{}, "plan.days",
            "First day", "On which day does the work begin?", "Year, month, day: 2027-04-05.",
            &Config::plan, &Plan::start),
    STATION(401, "plan.days", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kWorkDays},
            "plan.days", "Days of work", "On which days is there time for it?", "Of the week.",
            &Config::plan, &Plan::days),
    STATION(402, "plan.hours_a_day", Quantity::Count, Absent::Default, 1, 14, 1, Words{},
            "plan.days", "Hours a day", "How many hours on such a day?", "Of one person.",
            &Config::plan, &Plan::hours_a_day),
    STATION(403, "plan.wet_days", Quantity::Text, Absent::Default, 0, 150, 0, Words{},
            "plan.weather", "Rain is foretold", "On which days is rain foretold?",
            "Dates with spaces between: 2027-04-07 2027-04-08.", &Config::plan, &Plan::wet_days),
    STATION(404, "plan.off_days", Quantity::Text, Absent::Default, 0, 150, 0, Words{}, "plan.days",
            "Days off", "On which days is nobody there?", "Dates with spaces between.",
            &Config::plan, &Plan::off_days),
});
}  // namespace rows

}  // namespace hs::config
