#pragma once
// What a person chose or measured. Everything else follows from it (engine/evaluate).
//
// A default-constructed Config is a valid station: one adult at a large tabletop gas oven. Defaults
// are frozen per format version, because links leave out every value that equals its default.
// Ranges, questions and units of each member stand in engine/config/fields.cpp and nowhere else.
// Station frame: x to the cook's right, y from the cook into the oven, z up from the ground at the
// cook's feet. Oven frame: origin at the middle of the outer mouth plane, on the oven floor.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace hs::config {

inline constexpr int kFormatVersion = 1;
inline constexpr std::size_t kMaxCooks = 12;
inline constexpr std::size_t kMaxPoints = 40;  // of the ground's survey
inline constexpr std::size_t kMaxStock = 40;   // rows of the stock list

enum class Build : std::uint8_t { Adult, AdultA, AdultB, Child };
enum class Hand : std::uint8_t { Right, Left };
enum class At : std::uint8_t { Both, Oven, Prep };
enum class OvenKind : std::uint8_t {
  TabletopGasSmall,
  TabletopGasLarge,
  TabletopMultiFuel,
  SteelCabinet,
  MasonryDome28,
  MasonryDome36,
  MasonryBarrel,
  Other,
};
// Built of brick or stone: it stands on masonry or a slab, never on a cabinet.
constexpr bool is_masonry(OvenKind kind) {
  switch (kind) {
    case OvenKind::MasonryDome28:
    case OvenKind::MasonryDome36:
    case OvenKind::MasonryBarrel:
      return true;
    case OvenKind::TabletopGasSmall:
    case OvenKind::TabletopGasLarge:
    case OvenKind::TabletopMultiFuel:
    case OvenKind::SteelCabinet:
    case OvenKind::Other:
      return false;
  }
  return false;
}
enum class MouthShape : std::uint8_t { Rectangle, Arch, HalfRound };
enum class FloorShape : std::uint8_t { Rectangle, Round };
enum class Fuel : std::uint8_t { Gas, Wood, GasAndWood, Pellet, Charcoal, Electric };
enum class Target : std::uint8_t { Pizza, FarCrust, WholeFloor };
enum class Glove : std::uint8_t { None, Gauntlet };
enum class Shield : std::uint8_t { None, Plate };
enum class Mount : std::uint8_t { None, Left, Right };
enum class Arrangement : std::uint8_t { OneLevel, Riser, TwoLevel };
enum class CoverKind : std::uint8_t { None, Roof, Slats, Fabric };
enum class Walls : std::uint8_t { None, One, Two, Three, Four };
enum class Dwelling : std::uint8_t { OneOrTwoFamily, Other };
enum class GrillAt : std::uint8_t { None, Left, Right };
enum class FlueKind : std::uint8_t { None, Open, ThroughRoof };
enum class Ground : std::uint8_t { Paving, Deck, Bare };
enum class Extinguisher : std::uint8_t { InReach, Behind, Away, None };
enum class Cylinder : std::uint8_t { None, OpenSide, OwnCabinet, WithBurner };
enum class Setup : std::uint8_t { A, B, C, D };
enum class PointKind : std::uint8_t { Panel, Joint, Feet, Other };
enum class LevelTool : std::uint8_t { Laser, WaterLevel, Straightedge };
enum class Footing : std::uint8_t { Slab, SetPavers, LoosePavers, Deck };
// As the cook sees it, clockwise from in front of the oven: Front blows into the mouth, Right comes
// from the cook's right. Ordered round the compass.
enum class WindFrom : std::uint8_t {
  Front,
  FrontLeft,
  Left,
  BackLeft,
  Back,
  BackRight,
  Right,
  FrontRight,
};

// How cabinets are made: boxes with bare edges, or with a frame of boards before them; doors and
// drawer fronts before the edges, or between them.
enum class FaceKind : std::uint8_t { Frameless, FaceFrame };
enum class FrontKind : std::uint8_t { Overlay, Inset };
enum class Holds : std::uint8_t { Doors, Drawers, DrawerAndDoors, Open, Gas };
enum class Layers : std::uint8_t { One, Two };
enum class Hem : std::uint8_t { None, Closed, Open };
enum class Held : std::uint8_t { Free, Wall, Ground };
enum class Carries : std::uint8_t { Timber, Legs, Masonry, BaseBoards };

// What a row of the stock list is for. The first eight are frame::Material, in its order.
enum class StockKind : std::uint8_t {
  Sheet,
  DrawerSheet,
  FrontSheet,
  FaceBoard,
  BaseBoard,
  Carrier,
  Metal,
  Slab,
  Primer,
  Paint,
  Bedding,
  Hardware,
};
// Which way its grain runs; None: parts may be turned.
enum class Grain : std::uint8_t { Length, Width, None };
enum class Can : std::uint8_t { Litre, Quart, Gallon, FiveLitres };
enum class Supply : std::uint8_t { V120, V230 };
enum class Breaker : std::uint8_t { A10, A15, A16, A20 };
enum class WireSize : std::uint8_t { Awg14, Awg12, Awg10, Awg8, Mm2_1_5, Mm2_2_5, Mm2_4, Mm2_6 };
enum class BuriedWire : std::uint8_t { Cable, MetalPipe, PlasticPipe, Gfci20A, LowVoltage };
enum class CodeYear : std::uint8_t { Y2017, Y2020, Y2023, Y2026 };
enum class OutletAt : std::uint8_t { DoughEnd, OvenEnd, DoughBack };
enum class WorkDays : std::uint8_t { Weekdays, Weekends, EveryDay };

struct Cook {
  std::string name;  // never empty after reading: "Cook 1", "Cook 2" where none is given
  double stature_mm = 1700;
  Build build = Build::Adult;
  std::optional<double> age_years{};  // children only
  // Measured in shoes; each overrides the estimate.
  std::optional<double> eye_height_mm{};
  std::optional<double> elbow_height_mm{};
  std::optional<double> shoulder_height_mm{};
  Hand handed = Hand::Right;
  double shoe_mm = 25;
  bool seated = false;
  double seat_height_mm = 485;
  std::optional<At> at{};  // absent: both, or prep for a child
  double share = 1;

  bool operator==(const Cook&) const = default;
};

// Where this cook works once the default is filled in.
constexpr At place_of(const Cook& cook) {
  return cook.at.value_or(cook.build == Build::Child ? At::Prep : At::Both);
}
constexpr bool works_at_oven(const Cook& cook) { return place_of(cook) != At::Prep; }
constexpr bool works_at_prep(const Cook& cook) { return place_of(cook) != At::Oven; }

// Absent members are unknown; all absent is the same as no clearance given.
struct Clearance {
  std::optional<double> side_mm, back_mm, above_mm, front_mm, below_mm;
  std::optional<bool> on_combustible;
  std::optional<bool> under_cover;  // may stand under a roof or cover

  bool operator==(const Clearance&) const = default;
};

// A larger opening in front of the mouth; absent members are the mouth's own.
struct OuterMouth {
  std::optional<double> width_mm, height_mm, side_height_mm;
  std::optional<MouthShape> shape;

  bool operator==(const OuterMouth&) const = default;
  bool given() const { return width_mm || height_mm || side_height_mm || shape; }
};

struct Oven {
  OvenKind kind = OvenKind::TabletopGasLarge;
  double width_mm = 600, depth_mm = 650, height_mm = 400;
  double floor_above_base_mm = 150;
  double mouth_width_mm = 430, mouth_height_mm = 130;
  MouthShape mouth_shape = MouthShape::Rectangle;
  double mouth_side_height_mm = 80;  // arch only
  double throat_mm = 0;
  double brow_mm = 0;
  FloorShape floor_shape = FloorShape::Rectangle;
  double floor_width_mm = 430, floor_depth_mm = 430;
  double floor_temp_c = 450;
  double mass_kg = 35;
  Fuel fuel = Fuel::Gas;
  std::optional<bool> listed;  // a testing laboratory's mark is on it
  Clearance listed_clearance;
  OuterMouth outer_mouth;

  bool operator==(const Oven&) const = default;
};

struct View {
  double standoff_mm = 700;          // watching: eye in front of the outer mouth plane, upright
  double working_standoff_mm = 500;  // peel in hand
  double lateral_mm = 0;             // positive to the cook's right
  Target target = Target::Pizza;
  double pizza_diameter_mm = 320;
  double crust_mm = 25;

  bool operator==(const View&) const = default;
};

struct Peel {
  double blade_width_mm = 330;
  double length_mm = 900;

  bool operator==(const Peel&) const = default;
};

struct Station {
  Arrangement arrangement = Arrangement::Riser;
  std::optional<double> counter_height_mm;    // prep surface; absent: the recommended one
  std::optional<double> oven_base_height_mm;  // what the oven stands on; absent: the recommended
  std::optional<double> existing_counter_mm;  // one that is already there
  double prep_depth_mm = 610;
  double prep_width_mm = 900;
  double oven_setback_mm = 80;  // outer mouth plane behind the counter's front edge
  double overhang_mm = 25;
  double toe_space_mm = 75;
  double board_mm = 20;                 // what the dough lies on, on the counter
  std::optional<bool> top_combustible;  // what the oven stands on
  std::optional<double> left_gap_mm, right_gap_mm, back_gap_mm;  // oven body to the nearest thing
  std::optional<double> landing_left_mm, landing_right_mm;       // free counter beside the oven
  std::optional<double> aisle_mm;         // counter edge to what stands behind the cook
  std::optional<double> knee_height_mm;   // free height under the prep counter, for a seated cook
  std::optional<bool> landing_across;     // a table or counter across the aisle takes a hot pizza
  std::optional<double> opens_mm;         // farthest that a door or drawer opens into the aisle
  std::optional<double> opens_across_mm;  // and one on the aisle's other side
  std::optional<bool> drip_groove;        // under the counter's front edge
  std::optional<bool> left_combustible, right_combustible, back_combustible;  // the nearest thing

  bool operator==(const Station&) const = default;
};

struct Trial {
  std::optional<double> cold_farthest_seen_mm;  // farthest tape mark, from the outer mouth plane
  // Where the trial was made; absent members are the station's own.
  std::optional<double> oven_base_height_mm;
  std::optional<double> standoff_mm;
  std::optional<std::string> cook;

  bool operator==(const Trial&) const = default;
};

struct Grill {
  std::optional<GrillAt> at;
  std::optional<double> gap_mm;          // oven body to grill body
  std::optional<double> listed_side_mm;  // from the grill's manual
  std::optional<bool> under_cover;       // from the grill's manual

  bool operator==(const Grill&) const = default;
};

// Heights above the ground.
struct Flue {
  std::optional<FlueKind> kind;
  std::optional<double> top_mm;
  std::optional<double> roof_mm;      // where it leaves the roof, on the roof's higher side
  std::optional<double> near_top_mm;  // top of the highest thing within 10 ft (3 m)
  std::optional<double> gap_mm;       // to the nearest thing that burns
  std::optional<double> listed_gap_mm;

  bool operator==(const Flue&) const = default;
};

struct Cover {
  std::optional<CoverKind> kind;
  std::optional<bool> combustible;
  std::optional<double> out_mm;  // its edge in front of the counter's edge; negative: behind it
  std::optional<Walls> walls;    // closed sides under it
  std::optional<double> post_gap_mm;  // oven body to the nearest post
  std::optional<bool> post_combustible;

  bool operator==(const Cover&) const = default;
};

struct Site {
  std::optional<double> cover_height_mm;  // underside of roof or cover above the ground
  Cover cover;
  Clearance local_clearance;
  std::optional<double> railing_gap_mm;  // oven body to the nearest railing, fence or branch
  std::optional<double> house_gap_mm;    // oven body to the nearest building
  std::optional<Dwelling> dwelling;
  Grill grill;
  Flue flue;
  std::optional<WindFrom> wind_from;  // prevailing while baking
  std::optional<double> wind_m_s;     // of wind with rain
  std::optional<Ground> ground;
  std::optional<double> fall_mm;  // of the ground over 10 ft (3048 mm), away from the house
  std::optional<Extinguisher> extinguisher;
  std::optional<Cylinder> cylinder;
  std::optional<double> cylinder_kg;  // gas in one full cylinder

  bool operator==(const Site&) const = default;
};

// What stands between the mouth and the hand.
struct Heat {
  Glove glove = Glove::None;
  Shield shield = Shield::None;

  bool operator==(const Heat&) const = default;
};

// Where the head of the lamp is, oven frame; all members absent: the best place found.
struct LampHead {
  std::optional<double> across_mm;  // positive to the cook's right
  std::optional<double> ahead_mm;   // in front of the outer mouth plane
  std::optional<double> up_mm;      // above the oven's floor

  bool operator==(const LampHead&) const = default;
  bool given() const { return across_mm && ahead_mm && up_mm; }
};

struct Light {
  Mount mount = Mount::None;  // which side of the mouth a fixed lamp's neck starts; none: no lamp
  double mount_across_mm = 350;  // from the mouth's middle to that side
  double mount_ahead_mm = 0;     // in front of the outer mouth plane; negative: beside the oven
  double mount_up_mm = 0;        // above what the oven stands on
  double neck_mm = 800;
  double lumens = 400;
  double beam_deg = 45;
  LampHead head;
  std::optional<double> general_lumens;  // lamp over the middle of the dough counter
  std::optional<double> general_up_mm;   // its height above that counter

  bool operator==(const Light&) const = default;
};

// The cabinets under the counters. Bays are counted from the oven.
struct Frame {
  FaceKind face = FaceKind::Frameless;
  FrontKind fronts = FrontKind::Overlay;
  Holds dough_bays = Holds::Doors;
  Holds oven_bays = Holds::Open;
  std::optional<Holds> bay_1, bay_2, bay_3;  // of the dough counter; absent: as dough_bays
  double bay_mm = 600;                       // widest bay under the dough counter
  double oven_bay_mm = 450;                  // and under the oven
  double base_mm = 100;                      // least height of the base under the cabinets
  std::optional<double> box_mm;              // height of the dough counter's cabinets
  double rail_mm = 38.1;                     // width of a face frame's boards
  double overlay_mm = 12.7;                  // of a door over a face frame
  std::optional<double> grill_counter_mm;    // height of the grill's own shelf
  std::string as_built;                      // "base=104.2 dough.box=741": engine/frame/as_built.h

  bool operator==(const Frame&) const = default;
};

// What it is made of, at actual sizes, and what is left round each part.
struct Materials {
  double sheet_mm = 18.3;
  double drawer_sheet_mm = 11.9;
  double front_mm = 19.1;
  double base_board_mm = 19.1;
  double metal_mm = 1.6;
  Layers layers = Layers::Two;                   // of sheet under the metal top
  double bedding_mm = 1;                         // between substrate and metal
  double fit_mm = 1.5;                           // a metal edge to the substrate, each side
  double drip_mm = 12;                           // how far a metal edge hangs below the substrate
  Hem hem = Hem::None;                           // of the metal's lower edges
  std::optional<double> bend_radius_mm, bend_k;  // the fabricator's own: inside radius, and K
  double gap_mm = 3;                             // round doors and drawer fronts
  double slide_mm = 12.7;                        // a drawer to its bay, each side
  double shim_mm = 12;                           // room for shims under what carries the cabinets
  double rough_mm = 3;  // sheet parts are first cut larger by this, both ways

  bool operator==(const Materials&) const = default;
};

// What bears on the cabinets, and what holds them.
struct Loads {
  std::optional<double> feet_across_mm, feet_deep_mm;  // of the oven, between their middles
  double foot_mm = 40;                                 // across one foot
  std::optional<Held> held;
  std::optional<Carries> carries;  // under the boxes; absent: as drawn, treated lumber
  std::optional<double> gust_m_s;  // strongest of the place
  // Of the materials over the year, and when they are put together.
  double low_c = -15, high_c = 60, build_c = 20;
  double drawer_kg = 10;  // in one drawer

  bool operator==(const Loads&) const = default;
};

// Our judgement, changeable; the report shows how the answer moves with them.
struct Weights {
  double sight = 1, prep = 0.1, hands = 0.1;
  double worst_off = 0.5;  // 0: the household's mean counts, 1: only its worst-off cook

  bool operator==(const Weights&) const = default;
};

// One reading down from a level line to the ground.
struct SurveyPoint {
  // From the front left corner of the counters, as the cook sees them; y back, negative in front.
  double x_mm = 0, y_mm = 0;
  std::optional<double> reading_mm{};  // absent: still to be taken
  Setup setup = Setup::A;  // readings of one level line; A, B are joined by shared points
  PointKind kind = PointKind::Panel;

  bool operator==(const SurveyPoint&) const = default;
};

struct Anchor {
  std::optional<double> diameter_mm, spacing_mm, edge_mm;

  bool operator==(const Anchor&) const = default;
};

// The ground under the station, and the base that is cut to it.
struct Survey {
  std::vector<SurveyPoint> points;
  std::optional<LevelTool> tool;
  std::optional<double> laser_mm;  // stated by its maker, over 10 m
  double board_mm = 139.7;         // height of the boards that the base is cut from: 1x6
  std::optional<double> base_mm;   // top of the base above the feet; absent: the best one found
  double least_mm = 50;            // of board that must stay above the highest ground
  double step_mm = 100;            // between ordinates
  std::optional<Footing> footing;
  std::optional<bool> weeps;          // openings at the low side
  std::optional<bool> gas_vent_open;  // the gas bay's floor opening leads out under the base
  Anchor anchor;

  bool operator==(const Survey&) const = default;
};

// What is in the shop or can be bought. Prices are the household's own.
struct StockItem {
  std::string name;
  StockKind kind = StockKind::Sheet;
  std::optional<double> length_mm{}, width_mm{}, thick_mm{};  // absent: as the part needs
  std::optional<double> on_hand{};  // how many there are already; absent: bought when needed
  std::optional<double> price{};    // of one board, sheet, can or piece
  Grain grain = Grain::Length;
  Can can = Can::Litre;  // of paint, primer and bedding
  // A stretch of a board, from its end, that no part may touch.
  std::optional<double> bad_from_mm{}, bad_to_mm{};

  bool operator==(const StockItem&) const = default;
};

// How it is sawn, and in what it is paid.
struct Shop {
  double kerf_mm = 3.2;
  double sheet_trim_mm = 6;   // lost along every edge of a sheet, the trimming cut with it
  double board_trim_mm = 10;  // and at each end of a board
  std::string currency;

  bool operator==(const Shop&) const = default;
};

struct Power {
  Supply supply = Supply::V120;
  double outlets = 0;
  double outlet_w = 1500;  // the most that is plugged in at once
  double lamp_w = 0;       // 0: no lamp that is wired in
  Breaker breaker = Breaker::A20;
  std::optional<WireSize> wire;
  std::optional<double> run_mm;  // one way, from the breaker to the station
  std::optional<BuriedWire> buried;
  std::optional<bool> under_slab;
  CodeYear edition = CodeYear::Y2023;
  OutletAt outlet_at = OutletAt::DoughEnd;
  double outlet_up_mm = 600;  // middle of the box above the ground
  bool painted_first = false;

  bool operator==(const Power&) const = default;
};

struct Finish {
  std::string body_colour, front_colour, inside_colour;  // as the household calls them
  double coats = 2;
  std::optional<double> air_c, humidity, surface_c;  // of the day asked about
  std::optional<bool> dry_day;                       // no rain in the 24 hours after
  std::optional<double> coldest_after_c;             // in those hours

  bool operator==(const Finish&) const = default;
};

struct Plan {
  std::string start;  // "2027-04-05"; empty: no days
  WorkDays days = WorkDays::Weekdays;
  double hours_a_day = 6;
  std::string wet_days, off_days;  // dates with spaces between

  bool operator==(const Plan&) const = default;
};

struct Config {
  std::string title;
  std::vector<Cook> cooks{Cook{.name = "Cook 1"}};
  Oven oven;
  View view;
  Peel peel;
  Station station;
  Trial trial;
  Site site;
  Heat heat;
  Light light;
  Frame frame;
  Materials build;
  Loads loads;
  Weights weights;
  Survey survey;
  std::vector<StockItem> stock;
  Shop shop;
  Power power;
  Finish finish;
  Plan plan;

  bool operator==(const Config&) const = default;
};

// The name a cook has when none was given.
std::string default_cook_name(std::size_t index);

// The names of two people of whom only the heights were given.
inline constexpr std::string_view kTallest = "Tallest", kShortest = "Shortest";

// Does the name only keep a place for someone who has not said yet who they are? So do the names
// above.
bool is_stand_in(std::string_view name);

}  // namespace hs::config
