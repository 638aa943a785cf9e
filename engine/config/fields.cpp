#include "engine/config/fields.h"

#include <array>

#include "engine/base/packed_table.h"
#include "engine/config/field_row.h"
#include "engine/config/rows_frame.h"
#include "engine/config/rows_loads.h"
#include "engine/config/rows_shop.h"
#include "engine/config/rows_surroundings.h"
#include "engine/config/rows_survey.h"

namespace hs::config {
namespace {

using namespace rows;

constexpr std::string_view kBuilds[] = {"adult", "adult_a", "adult_b", "child"};
constexpr std::string_view kHands[] = {"right", "left"};
constexpr std::string_view kPlaces[] = {"both", "oven", "prep"};
constexpr std::string_view kKinds[] = {
    "tabletop_gas_small", "tabletop_gas_large", "tabletop_multi_fuel", "steel_cabinet",
    "masonry_dome_28",    "masonry_dome_36",    "masonry_barrel",      "other"};
constexpr std::string_view kShapes[] = {"rectangle", "arch", "half_round"};
constexpr std::string_view kFloors[] = {"rectangle", "round"};
constexpr std::string_view kFuels[] = {"gas",    "wood",     "gas_and_wood",
                                       "pellet", "charcoal", "electric"};
constexpr std::string_view kTargets[] = {"pizza", "far_crust", "whole_floor"};
constexpr std::string_view kGloves[] = {"none", "gauntlet"};
constexpr std::string_view kShields[] = {"none", "plate"};
constexpr std::string_view kMounts[] = {"none", "left", "right"};
constexpr std::string_view kArrangements[] = {"one_level", "riser", "two_level"};

constexpr auto kRows = std::to_array<Row>({
    STATION(1, "title", Quantity::Text, Absent::Default, 0, 80, 0, Words{}, "", "Title",
            "What is this station called?", "Any name; it is shown on the page and the packet.",
            &Config::title),

    // Cooks -----------------------------------------------------------------------------------
    COOK(100, "cooks[].name", Quantity::Text, Absent::Derived, 1, 40, 0, Words{}, "", "Name",
         "Who is this?", "Any name that tells this cook from the others.", &Cook::name),
    COOK(101, "cooks[].stature_mm", kLength, Absent::Default, 800, 2300, 5, Words{},
         "cook.survey_adult cook.survey_child", "Height", "How tall, barefoot?",
         "Heels to a wall, a book flat on the head, measure to its underside. People overstate "
         "their own height by about 25 mm (1 in).",
         &Cook::stature_mm),
    COOK(102, "cooks[].build", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kBuilds},
         "cook.survey_adult cook.survey_child", "Build", "Which body proportions fit best?",
         "adult: not said, both survey groups with the wider spread; adult_a: the survey's men; "
         "adult_b: the survey's women; child: 3 to 17 years.",
         &Cook::build),
    COOK(103, "cooks[].age_years", Quantity::Years, Absent::Unknown, 3, 17.9, 1, Words{},
         "cook.survey_child cook.child_place", "Age", "How old, if a child?",
         "3 to 17 years; adults leave it out.", &Cook::age_years),
    COOK(104, "cooks[].eye_height_mm", kLength, Absent::Unknown, 500, 2250, 5, Words{},
         "sight.pizza_share", "Eye height", "Eye height in the shoes worn at the oven?",
         "Look straight ahead beside a door frame; someone marks the outer corner of the eye. "
         "Seated cooks measure seated.",
         &Cook::eye_height_mm),
    COOK(105, "cooks[].elbow_height_mm", kLength, Absent::Unknown, 350, 1500, 5, Words{},
         "height.hand_ceiling height.dough_band", "Elbow height",
         "Elbow height in the shoes worn at the oven?",
         "Arm hanging, find the outer elbow joint where the forearm bone starts to turn; measure "
         "from the ground to it.",
         &Cook::elbow_height_mm),
    COOK(106, "cooks[].shoulder_height_mm", kLength, Absent::Unknown, 450, 1950, 5, Words{},
         "reach.prep_depth", "Shoulder height", "Shoulder height in the shoes worn at the oven?",
         "From the ground to the bony tip at the outer end of the shoulder.",
         &Cook::shoulder_height_mm),
    COOK(107, "cooks[].handed", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kHands},
         "reach.landing", "Peel hand", "Which hand holds the peel?",
         "The hand at the far end of the handle.", &Cook::handed),
    COOK(108, "cooks[].shoe_mm", kLength, Absent::Default, 0, 120, 5, Words{},
         "cook.shoe_allowance", "Shoes", "How thick are the soles?",
         "Under the heel. 25 mm is an outdoor shoe; clogs and boots are 40 to 50 mm.",
         &Cook::shoe_mm),
    COOK(109, "cooks[].seated", Quantity::Flag, Absent::Default, 0, 0, 0, Words{},
         "cook.seated reach.seated_reach reach.knee_room", "Seated", "Does this cook work seated?",
         "A wheelchair, or a fixed stool.", &Cook::seated),
    COOK(110, "cooks[].seat_height_mm", kLength, Absent::Default, 300, 800, 5, Words{},
         "cook.seated", "Seat height", "How high is the occupied seat?",
         "From the ground to the top of the cushion with the cook sitting.", &Cook::seat_height_mm),
    COOK(111, "cooks[].at", Quantity::Choice, Absent::Derived, 0, 0, 0, Words{kPlaces},
         "cook.child_place", "Works at", "Where does this cook work?",
         "Only those at the oven pull its height. Left out: both, or prep for a child.", &Cook::at),
    COOK(112, "cooks[].share", Quantity::Share, Absent::Default, 0, 1, 0.1, Words{},
         "height.compromise", "Share", "How much of the cooking does this cook do?",
         "1 for the one who always cooks, 0.2 for a guest who helps.", &Cook::share),

    // Oven ------------------------------------------------------------------------------------
    STATION(10, "oven.kind", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kKinds},
            "oven.masonry_base", "Kind", "What kind of oven is it?",
            "Picking a kind on the page fills in typical, invented sizes; measure your own.",
            &Config::oven, &Oven::kind),
    STATION(11, "oven.width_mm", kLength, Absent::Default, 200, 3500, 10, Words{}, "clearance.side",
            "Body width", "How wide is the oven's body?", "Widest part, handles and chimney apart.",
            &Config::oven, &Oven::width_mm),
    STATION(12, "oven.depth_mm", kLength, Absent::Default, 200, 3500, 10, Words{}, "clearance.back",
            "Body depth", "How deep is the oven's body?", "From the outer mouth plane to the back.",
            &Config::oven, &Oven::depth_mm),
    STATION(13, "oven.height_mm", kLength, Absent::Default, 150, 3500, 10, Words{},
            "clearance.above", "Body height", "How high is the oven's body?",
            "From what it stands on to the top, chimney apart.", &Config::oven, &Oven::height_mm),
    STATION(14, "oven.floor_above_base_mm", kLength, Absent::Default, 0, 1800, 5, Words{},
            "height.hand_ceiling sight.pizza_share", "Floor above base",
            "How far is the oven's floor above what it stands on?",
            "From the counter or slab under the feet to the stone the pizza lies on.",
            &Config::oven, &Oven::floor_above_base_mm),
    STATION(15, "oven.mouth_width_mm", kLength, Absent::Default, 100, 2000, 5, Words{},
            "reach.peel_fits reach.pizza_fits", "Mouth width", "How wide is the mouth?",
            "The clear opening at the floor.", &Config::oven, &Oven::mouth_width_mm),
    STATION(16, "oven.mouth_height_mm", kLength, Absent::Default, 40, 1200, 5, Words{},
            "sight.pizza_share", "Mouth height", "How high is the mouth in its middle?",
            "From the oven's floor to the lowest edge above it.", &Config::oven,
            &Oven::mouth_height_mm),
    STATION(17, "oven.mouth_shape", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kShapes},
            "sight.pizza_share", "Mouth shape", "What shape is the mouth?",
            "arch: straight sides, then a curve; half_round: a curve from the floor.",
            &Config::oven, &Oven::mouth_shape),
    STATION(18, "oven.mouth_side_height_mm", kLength, Absent::Default, 0, 1200, 5, Words{},
            "sight.pizza_share", "Arch side height",
            "How high are the straight sides where the arch starts?",
            "Arch mouths only: from the floor to where the curve springs.", &Config::oven,
            &Oven::mouth_side_height_mm),
    STATION(19, "oven.throat_mm", kLength, Absent::Default, 0, 1000, 5, Words{},
            "sight.pizza_share", "Throat", "How thick is the wall that the mouth goes through?",
            "From the outer face to where the oven's floor begins.", &Config::oven,
            &Oven::throat_mm),
    STATION(20, "oven.brow_mm", kLength, Absent::Default, 0, 600, 5, Words{}, "sight.pizza_share",
            "Brow", "How far does the face above the mouth stick out?",
            "From the outer mouth plane toward the cook.", &Config::oven, &Oven::brow_mm),
    STATION(21, "oven.floor_shape", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kFloors},
            "sight.pizza_share", "Floor shape", "What shape is the oven's floor?",
            "round: the ellipse that fills the floor's width and depth.", &Config::oven,
            &Oven::floor_shape),
    STATION(22, "oven.floor_width_mm", kLength, Absent::Default, 150, 3000, 10, Words{},
            "reach.pizza_fits", "Floor width", "How wide is the oven's floor?",
            "Inside, wall to wall.", &Config::oven, &Oven::floor_width_mm),
    STATION(23, "oven.floor_depth_mm", kLength, Absent::Default, 150, 3000, 10, Words{},
            "sight.pizza_share", "Floor depth", "How deep is the oven's floor?",
            "Inside, from the inner end of the mouth to the back.", &Config::oven,
            &Oven::floor_depth_mm),
    STATION(24, "oven.floor_temp_c", Quantity::Temperature, Absent::Default, 0, 600, 10, Words{},
            "heat.face", "Floor temperature", "How hot is the floor when you bake?",
            "By an infrared thermometer; 0 for a cold oven.", &Config::oven, &Oven::floor_temp_c),
    STATION(25, "oven.mass_kg", Quantity::Mass, Absent::Default, 1, 6000, 5, Words{}, "", "Mass",
            "How heavy is the oven?", "From its manual; a masonry oven: ask its builder.",
            &Config::oven, &Oven::mass_kg),
    STATION(26, "oven.fuel", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kFuels}, "", "Fuel",
            "What does it burn?", "From its manual.", &Config::oven, &Oven::fuel),
    STATION(30, "oven.listed_clearance.side_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.side", "Clear at the sides",
            "Clearance at the sides that the oven's manual asks for?",
            "Look for 'clearance to combustibles' in the oven's own manual.", &Config::oven,
            &Oven::listed_clearance, &Clearance::side_mm),
    STATION(31, "oven.listed_clearance.back_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.back", "Clear at the back",
            "Clearance at the back that the oven's manual asks for?", "The oven's own manual.",
            &Config::oven, &Oven::listed_clearance, &Clearance::back_mm),
    STATION(32, "oven.listed_clearance.above_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.above", "Clear above", "Clearance above that the oven's manual asks for?",
            "The oven's own manual.", &Config::oven, &Oven::listed_clearance, &Clearance::above_mm),
    STATION(33, "oven.listed_clearance.front_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.front", "Clear in front",
            "Clearance in front that the oven's manual asks for?", "The oven's own manual.",
            &Config::oven, &Oven::listed_clearance, &Clearance::front_mm),
    STATION(34, "oven.listed_clearance.below_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.below", "Clear below", "Clearance below that the oven's manual asks for?",
            "The oven's own manual.", &Config::oven, &Oven::listed_clearance, &Clearance::below_mm),
    STATION(35, "oven.listed_clearance.on_combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0,
            Words{}, "clearance.on_combustible", "May stand on wood",
            "May it stand on a combustible top, by its manual?", "The oven's own manual.",
            &Config::oven, &Oven::listed_clearance, &Clearance::on_combustible),
    STATION(40, "oven.outer_mouth.width_mm", kLength, Absent::Unknown, 100, 3000, 5, Words{},
            "sight.pizza_share", "Outer mouth width",
            "How wide is the outer opening, if it is larger?",
            "Masonry ovens: the opening in the outer face.", &Config::oven, &Oven::outer_mouth,
            &OuterMouth::width_mm),
    STATION(41, "oven.outer_mouth.height_mm", kLength, Absent::Unknown, 40, 2000, 5, Words{},
            "sight.pizza_share", "Outer mouth height",
            "How high is the outer opening, if it is larger?",
            "From the level of the oven's floor.", &Config::oven, &Oven::outer_mouth,
            &OuterMouth::height_mm),
    STATION(42, "oven.outer_mouth.side_height_mm", kLength, Absent::Unknown, 0, 2000, 5, Words{},
            "sight.pizza_share", "Outer arch side height",
            "How high are the outer opening's straight sides?", "Arch mouths only.", &Config::oven,
            &Oven::outer_mouth, &OuterMouth::side_height_mm),
    STATION(43, "oven.outer_mouth.shape", Quantity::Choice, Absent::Unknown, 0, 0, 0,
            Words{kShapes}, "sight.pizza_share", "Outer mouth shape",
            "What shape is the outer opening?", "As for the mouth.", &Config::oven,
            &Oven::outer_mouth, &OuterMouth::shape),

    // View and peel ---------------------------------------------------------------------------
    STATION(50, "view.standoff_mm", kLength, Absent::Default, 100, 4000, 10, Words{},
            "sight.pizza_share sight.full_view", "Watching distance",
            "How far back do you watch from?",
            "Eye to the outer mouth plane, level, standing upright a step back.", &Config::view,
            &View::standoff_mm),
    STATION(51, "view.working_standoff_mm", kLength, Absent::Default, 100, 4000, 10, Words{},
            "sight.working_share reach.nearest_standoff", "Working distance",
            "How far back do you stand with the peel in hand?",
            "Eye to the outer mouth plane, level.", &Config::view, &View::working_standoff_mm),
    STATION(52, "view.lateral_mm", kLength, Absent::Default, -1500, 1500, 10, Words{},
            "sight.pizza_share", "Sideways", "How far to one side of the mouth's middle?",
            "Positive to the cook's right.", &Config::view, &View::lateral_mm),
    STATION(53, "view.target", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kTargets},
            "sight.pizza_share sight.full_view", "Must see", "What must the cook see?",
            "pizza: all of it; far_crust: also the top of its far rim; whole_floor: the middle "
            "line to the back.",
            &Config::view, &View::target),
    STATION(54, "view.pizza_diameter_mm", kLength, Absent::Default, 100, 1000, 10, Words{},
            "sight.pizza_share reach.pizza_fits", "Pizza", "How large is the pizza?",
            "Across; it lies in the middle of the oven's floor.", &Config::view,
            &View::pizza_diameter_mm),
    STATION(55, "view.crust_mm", kLength, Absent::Default, 0, 120, 5, Words{}, "sight.far_crust",
            "Risen crust", "How high does the far rim rise?", "Above the oven's floor.",
            &Config::view, &View::crust_mm),
    STATION(60, "peel.blade_width_mm", kLength, Absent::Default, 80, 1000, 5, Words{},
            "reach.peel_fits", "Peel width", "How wide is the peel's blade?", "Across its widest.",
            &Config::peel, &Peel::blade_width_mm),
    STATION(61, "peel.length_mm", kLength, Absent::Default, 200, 3000, 10, Words{},
            "reach.peel_room heat.hand", "Peel length", "How long is the peel in all?",
            "Tip to handle end.", &Config::peel, &Peel::length_mm),

    // Station ---------------------------------------------------------------------------------
    STATION(70, "station.arrangement", Quantity::Choice, Absent::Default, 0, 0, 0,
            Words{kArrangements}, "height.compromise", "Levels", "How are the two heights built?",
            "one_level: oven and dough on one counter; riser: a block under the oven on one "
            "counter; two_level: two cabinet heights.",
            &Config::station, &Station::arrangement),
    STATION(71, "station.counter_height_mm", kLength, Absent::Unknown, 300, 1600, 5, Words{},
            "height.dough_band height.given", "Dough counter height",
            "How high is the dough counter?",
            "Ground at the cook's feet to the top of the counter. Left out: the recommended one.",
            &Config::station, &Station::counter_height_mm),
    STATION(72, "station.oven_base_height_mm", kLength, Absent::Unknown, 0, 1800, 5, Words{},
            "height.hand_ceiling sight.pizza_share height.given", "Oven counter height",
            "How high is what the oven stands on?",
            "Ground at the cook's feet to under the oven. Left out: the recommended one.",
            &Config::station, &Station::oven_base_height_mm),
    STATION(73, "station.existing_counter_mm", kLength, Absent::Unknown, 0, 1600, 5, Words{},
            "height.existing_counter", "Existing cabinet",
            "How high is a cabinet or counter that is already there?",
            "Ground to its top. The page answers with the block or the platform it needs.",
            &Config::station, &Station::existing_counter_mm),
    STATION(74, "station.prep_depth_mm", kLength, Absent::Default, 200, 1500, 10, Words{},
            "reach.prep_depth reach.prep_area", "Dough counter depth",
            "How deep is the dough counter?", "Front edge to back edge or wall.", &Config::station,
            &Station::prep_depth_mm),
    STATION(75, "station.prep_width_mm", kLength, Absent::Default, 200, 6000, 10, Words{},
            "reach.prep_area cook.child_place", "Prep width", "How wide is the dough counter?",
            "Along the front, beside the oven.", &Config::station, &Station::prep_width_mm),
    STATION(76, "station.oven_setback_mm", kLength, Absent::Default, 0, 1000, 5, Words{},
            "reach.nearest_standoff", "Setback",
            "How far is the mouth behind the counter's front edge?",
            "Outer mouth plane to the counter's front edge.", &Config::station,
            &Station::oven_setback_mm),
    STATION(77, "station.overhang_mm", kLength, Absent::Default, 0, 400, 5, Words{},
            "reach.nearest_standoff", "Overhang",
            "How far does the counter overhang the cabinet's face?", "Front edge to cabinet face.",
            &Config::station, &Station::overhang_mm),
    STATION(78, "station.toe_space_mm", kLength, Absent::Default, 0, 300, 5, Words{},
            "reach.nearest_standoff", "Toe space",
            "How deep is the recess for the toes under the cabinet?",
            "Cabinet face to the kick board.", &Config::station, &Station::toe_space_mm),
    STATION(79, "station.board_mm", kLength, Absent::Default, 0, 100, 5, Words{},
            "height.dough_band", "Board", "How thick is the board the dough lies on?",
            "0 when you work on the counter itself.", &Config::station, &Station::board_mm),
    STATION(80, "station.top_combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0, Words{},
            "clearance.on_combustible", "Wood under the oven",
            "Is anything in the counter under the oven combustible?",
            "Wood, plywood, plastic or cellular PVC anywhere in the top counts.", &Config::station,
            &Station::top_combustible),
    STATION(81, "station.left_gap_mm", kLength, Absent::Unknown, 0, 20000, 10, Words{},
            "clearance.side", "Gap on the left", "How far is the nearest thing on the oven's left?",
            "Oven body to wall, post, shelf or neighbour.", &Config::station,
            &Station::left_gap_mm),
    STATION(82, "station.right_gap_mm", kLength, Absent::Unknown, 0, 20000, 10, Words{},
            "clearance.side", "Gap on the right",
            "How far is the nearest thing on the oven's right?",
            "Oven body to wall, post, shelf or neighbour.", &Config::station,
            &Station::right_gap_mm),
    STATION(83, "station.back_gap_mm", kLength, Absent::Unknown, 0, 20000, 10, Words{},
            "clearance.back", "Gap behind", "How far is the nearest thing behind the oven?",
            "Oven body to wall, rail or fence.", &Config::station, &Station::back_gap_mm),
    STATION(84, "station.landing_left_mm", kLength, Absent::Unknown, 0, 6000, 10, Words{},
            "reach.landing", "Landing left", "How much free counter is there on the oven's left?",
            "Along the front, at a height to set a peel down.", &Config::station,
            &Station::landing_left_mm),
    STATION(85, "station.landing_right_mm", kLength, Absent::Unknown, 0, 6000, 10, Words{},
            "reach.landing", "Landing right", "How much free counter is there on the oven's right?",
            "Along the front, at a height to set a peel down.", &Config::station,
            &Station::landing_right_mm),
    STATION(86, "station.aisle_mm", kLength, Absent::Unknown, 0, 20000, 10, Words{},
            "reach.aisle reach.peel_room clearance.front", "Room behind the cook",
            "How much free ground is there in front of the counter?",
            "Counter's front edge to the wall, rail, table or drop behind the cook.",
            &Config::station, &Station::aisle_mm),
    STATION(87, "station.knee_height_mm", kLength, Absent::Unknown, 0, 1500, 5, Words{},
            "reach.knee_room", "Knee room", "How high is the free space under the dough counter?",
            "For a seated cook: ground to the lowest thing above the knees.", &Config::station,
            &Station::knee_height_mm),

    // Cold trial, site, weights ---------------------------------------------------------------
    STATION(90, "trial.cold_farthest_seen_mm", kLength, Absent::Unknown, 0, 4000, 5, Words{},
            "sight.cold_trial", "Farthest mark seen",
            "Cold oven, tape on its floor: which farthest mark can you see?",
            "The tape starts at the outer mouth plane and runs back along the middle.",
            &Config::trial, &Trial::cold_farthest_seen_mm),
    STATION(91, "trial.at.oven_base_height_mm", kLength, Absent::Unknown, 0, 1800, 5, Words{},
            "sight.cold_trial", "Height in the trial",
            "What height was the oven blocked up to in the trial?",
            "Ground at your feet to under the oven. Left out: the height in use.", &Config::trial,
            &Trial::oven_base_height_mm),
    STATION(92, "trial.at.standoff_mm", kLength, Absent::Unknown, 100, 4000, 10, Words{},
            "sight.cold_trial", "Distance in the trial", "How far back was the eye in the trial?",
            "Eye to the outer mouth plane, level. Left out: the watching distance.", &Config::trial,
            &Trial::standoff_mm),
    STATION(93, "trial.at.cook", Quantity::Text, Absent::Unknown, 0, 40, 0, Words{},
            "sight.cold_trial", "Who looked", "Who looked in the trial?",
            "A cook's name. Left out: the first who works at the oven.", &Config::trial,
            &Trial::cook),
    STATION(120, "site.cover_height_mm", kLength, Absent::Unknown, 1200, 12000, 10, Words{},
            "clearance.above height.cover_ceiling", "Cover height",
            "How high is the underside of the roof or cover?",
            "Ground to the lowest part above the oven. Left out: not known; open sky needs none.",
            &Config::site, &Site::cover_height_mm),
    STATION(121, "site.local_clearance.side_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.side", "Local rule: sides",
            "Clearance at the sides that a local rule asks for?",
            "The building office or fire service.", &Config::site, &Site::local_clearance,
            &Clearance::side_mm),
    STATION(122, "site.local_clearance.back_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.back", "Local rule: back",
            "Clearance at the back that a local rule asks for?",
            "The building office or fire service.", &Config::site, &Site::local_clearance,
            &Clearance::back_mm),
    STATION(123, "site.local_clearance.above_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.above", "Local rule: above", "Clearance above that a local rule asks for?",
            "The building office or fire service.", &Config::site, &Site::local_clearance,
            &Clearance::above_mm),
    STATION(124, "site.local_clearance.front_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.front", "Local rule: front",
            "Clearance in front that a local rule asks for?",
            "The building office or fire service.", &Config::site, &Site::local_clearance,
            &Clearance::front_mm),
    STATION(125, "site.local_clearance.below_mm", kLength, Absent::Unknown, 0, 5000, 10, Words{},
            "clearance.below", "Local rule: below", "Clearance below that a local rule asks for?",
            "The building office or fire service.", &Config::site, &Site::local_clearance,
            &Clearance::below_mm),
    STATION(126, "site.local_clearance.on_combustible", Quantity::Flag, Absent::Unknown, 0, 0, 0,
            Words{}, "clearance.on_combustible", "Local rule: on wood",
            "May it stand on a combustible top, by a local rule?",
            "The building office or fire service.", &Config::site, &Site::local_clearance,
            &Clearance::on_combustible),
    STATION(150, "heat.glove", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kGloves},
            "heat.hand", "Glove", "What is on the hand that holds the peel?",
            "gauntlet: thick, dry, well past the wrist. Wet ones scald.", &Config::heat,
            &Heat::glove),
    STATION(151, "heat.shield", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kShields},
            "heat.hand", "Shield", "Does a plate stand between the mouth and the hand?",
            "plate: metal, fixed beside the peel's way; not on the peel's blade.", &Config::heat,
            &Heat::shield),
    STATION(160, "light.mount", Quantity::Choice, Absent::Default, 0, 0, 0, Words{kMounts},
            "light.pizza", "Lamp", "On which side of the mouth is a lamp's neck fixed?",
            "A fixed lamp that nobody holds, as the cook sees it; none: there is no such lamp.",
            &Config::light, &Light::mount),
    STATION(161, "light.mount_across_mm", kLength, Absent::Default, 0, 2000, 10, Words{},
            "light.pizza", "Neck beside the mouth", "How far beside the mouth does its neck start?",
            "From the middle of the mouth, level.", &Config::light, &Light::mount_across_mm),
    STATION(162, "light.mount_ahead_mm", kLength, Absent::Default, -1000, 1000, 10, Words{},
            "light.pizza", "Neck in front", "How far in front of the mouth does its neck start?",
            "From the outer mouth plane; negative: further back, beside the oven.", &Config::light,
            &Light::mount_ahead_mm),
    STATION(163, "light.mount_up_mm", kLength, Absent::Default, 0, 2000, 10, Words{}, "light.pizza",
            "Neck above the counter", "How far above what the oven stands on does its neck start?",
            "0: on the counter itself.", &Config::light, &Light::mount_up_mm),
    STATION(164, "light.neck_mm", kLength, Absent::Default, 100, 2000, 10, Words{}, "light.neck",
            "Neck", "How long is the lamp's neck?", "From where it is fixed to the lamp's head.",
            &Config::light, &Light::neck_mm),
    STATION(165, "light.lumens", Quantity::Flux, Absent::Default, 10, 5000, 50, Words{},
            "light.pizza", "Lamp's light", "How many lumens does the lamp give?", "From its box.",
            &Config::light, &Light::lumens),
    STATION(166, "light.beam_deg", Quantity::Angle, Absent::Default, 10, 150, 5, Words{},
            "light.pizza", "Beam", "How wide is the lamp's beam?", "From its box, full width.",
            &Config::light, &Light::beam_deg),
    STATION(167, "light.head.across_mm", kLength, Absent::Unknown, -1500, 1500, 10, Words{},
            "light.pizza light.head", "Head sideways", "How far to the right is the lamp's head?",
            "From the mouth's middle, negative to the left. Left out: the best place found.",
            &Config::light, &Light::head, &LampHead::across_mm),
    STATION(168, "light.head.ahead_mm", kLength, Absent::Unknown, 10, 2000, 10, Words{},
            "light.pizza light.head", "Head in front", "How far in front is the lamp's head?",
            "From the outer mouth plane. Left out: the best place found.", &Config::light,
            &Light::head, &LampHead::ahead_mm),
    STATION(169, "light.head.up_mm", kLength, Absent::Unknown, 0, 2000, 10, Words{},
            "light.pizza light.head", "Head above the floor", "How high is the lamp's head?",
            "Above the oven's floor. Left out: the best place found.", &Config::light, &Light::head,
            &LampHead::up_mm),
    STATION(170, "light.general_lumens", Quantity::Flux, Absent::Unknown, 10, 20000, 100, Words{},
            "light.prep", "General lamp", "How many lumens has the lamp over the dough counter?",
            "From its box. Left out: not known.", &Config::light, &Light::general_lumens),
    STATION(171, "light.general_up_mm", kLength, Absent::Unknown, 300, 5000, 50, Words{},
            "light.prep", "General lamp's height", "How far above the dough counter does it hang?",
            "From the counter's top to the lamp.", &Config::light, &Light::general_up_mm),
    STATION(130, "weights.sight", Quantity::Weight, Absent::Default, 0, 10, 0.1, Words{},
            "height.compromise", "Seeing counts", "How much does seeing the target upright count?",
            "Our judgement: 1. The report shows how the answer moves.", &Config::weights,
            &Weights::sight),
    STATION(131, "weights.prep", Quantity::Weight, Absent::Default, 0, 10, 0.1, Words{},
            "height.compromise", "Dough counts", "How much does a good dough height count?",
            "Our judgement. The report shows how the answer moves.", &Config::weights,
            &Weights::prep),
    STATION(132, "weights.hands", Quantity::Weight, Absent::Default, 0, 10, 0.1, Words{},
            "height.compromise", "Hands count",
            "How much do easy hands at the oven count, below their hard ceiling?",
            "Our judgement. The ceiling itself is never averaged away.", &Config::weights,
            &Weights::hands),
    STATION(133, "weights.worst_off", Quantity::Share, Absent::Default, 0, 1, 0.1, Words{},
            "height.compromise", "Worst-off counts",
            "How much does the worst-off cook count against the mean?",
            "0: the mean alone; 1: the worst-off alone.", &Config::weights, &Weights::worst_off),
});

#undef STATION
#undef COOK
#undef POINT
#undef STOCK
#undef FIELD

// "site.cover" of "site.cover.kind"; empty: of no group.
constexpr std::string_view group_of(std::string_view path) {
  const std::size_t dot = path.rfind('.');
  return dot == std::string_view::npos ? std::string_view{} : path.substr(0, dot);
}

// Every group's rows stand together, as the schema and files want them: a row of another part goes
// behind the last of its group, or of the nearest group around it that is there.
constexpr auto in_order() {
  std::array<const Row*, kRows.size() + kSurroundingsRows.size() + kSurveyRows.size() +
                             kFrameRows.size() + kLoadsRows.size() + kShopRows.size()>
      all{};
  std::size_t count = 0;
  for (const Row& row : kRows) all[count++] = &row;
  const auto place = [&](const Row& row) {
    std::size_t at = count;
    for (std::string_view group = group_of(row.field.path); !group.empty() && at == count;
         group = group_of(group)) {
      std::size_t last = count;
      while (last > 0 && !(all[last - 1]->field.path.starts_with(group) &&
                           all[last - 1]->field.path[group.size()] == '.')) {
        --last;
      }
      if (last == count) break;  // the last row of all
      if (last > 0) at = last;
    }
    for (std::size_t i = count; i > at; --i) all[i] = all[i - 1];
    all[at] = &row;
    ++count;
  };
  for (const Row& row : kSurroundingsRows) place(row);
  for (const Row& row : kSurveyRows) place(row);
  for (const Row& row : kFrameRows) place(row);
  for (const Row& row : kLoadsRows) place(row);
  for (const Row& row : kShopRows) place(row);
  return all;
}
constexpr auto kOrdered = in_order();

template <typename Part>
constexpr auto each(Part Row::*part) {
  std::array<Part, kOrdered.size()> all{};
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = kOrdered[i]->*part;
  return all;
}

constexpr auto kTable = each(&Row::field);
constexpr auto kHelp = each(&Row::help);

constexpr bool tags_unique() {
  for (std::size_t i = 0; i < kTable.size(); ++i) {
    for (std::size_t j = i + 1; j < kTable.size(); ++j) {
      if (kTable[i].tag == kTable[j].tag || kTable[i].path == kTable[j].path) return false;
    }
  }
  return true;
}
static_assert(tags_unique(), "two fields share a tag or a path");

using Fields = PackedTable<kTable, &Field::path, &Field::label>;
using Help = LaterTable<kHelp, &FieldHelp::question, &FieldHelp::measure, &FieldHelp::rules>;
constexpr List kLists[] = {{Group::Cook, "cooks", "cook", 1, kMaxCooks},
                           {Group::Point, "survey.points", "point", 0, kMaxPoints},
                           {Group::Stock, "stock", "stock row", 0, kMaxStock}};

}  // namespace

std::span<const Field> fields() { return Fields::rows(); }

const FieldHelp& help_of(const Field& field) {
  return Help::rows()[static_cast<std::size_t>(&field - fields().data())];
}

std::span<const List> lists() { return kLists; }

const List* list_of(Group group) {
  for (const List& list : kLists) {
    if (list.group == group) return &list;
  }
  return nullptr;
}

const List* list_around(std::string_view path) {
  for (const List& list : kLists) {
    const std::size_t size = list.path.size();
    if (path.size() > size && path.starts_with(list.path) && path[size] == '.') return &list;
  }
  return nullptr;
}

std::size_t rows_of(const Config& config, Group group) {
  switch (group) {
    case Group::Station:
      return 1;
    case Group::Cook:
      return config.cooks.size();
    case Group::Point:
      return config.survey.points.size();
    case Group::Stock:
      return config.stock.size();
  }
  return 0;
}

void set_rows(Config& config, Group group, std::size_t count) {
  if (group == Group::Cook) config.cooks.resize(count);
  if (group == Group::Point) config.survey.points.resize(count);
  if (group == Group::Stock) config.stock.resize(count);
}

const Field* find_field(std::string_view path) {
  std::string_view key;
  const List* list = list_around(path);
  if (list != nullptr) {
    const std::size_t dot = path.find('.', list->path.size() + 1);
    if (dot == std::string_view::npos) return nullptr;
    key = path.substr(dot + 1);
  }
  for (const Field& field : fields()) {
    if (field.path == path) return &field;
    if (list != nullptr && field.group == list->group && key_of(field) == key) return &field;
  }
  return nullptr;
}

const Field* find_tag(std::uint16_t tag) {
  for (const Field& field : fields()) {
    if (field.tag == tag) return &field;
  }
  return nullptr;
}

Value default_value(const Field& field) {
  static const Config defaults = [] {
    Config config;
    set_rows(config, Group::Point, 1);
    set_rows(config, Group::Stock, 1);
    return config;
  }();
  return field.get(defaults, 0);
}

std::string path_of(const Field& field, std::size_t row) {
  const List* list = list_of(field.group);
  if (list == nullptr) return std::string(field.path);
  return std::string(list->path) + "." + std::to_string(row) + "." + std::string(key_of(field));
}

std::string_view key_of(const Field& field) {
  const std::size_t dot = field.path.rfind('.');
  return dot == std::string_view::npos ? field.path : field.path.substr(dot + 1);
}

std::string default_cook_name(std::size_t index) { return "Cook " + std::to_string(index + 1); }

}  // namespace hs::config
