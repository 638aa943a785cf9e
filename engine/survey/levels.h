#pragma once
// Readings taken down from level lines, brought to one: the height of the ground at every point.
//
// A level line stands still while its readings are taken. A second one (the laser was moved) is
// joined to the first by points that were read from both. Heights are above a datum of their own;
// take them relative to a point. The earth's curve is left out: 0.07 mm at 1 km squared, below
// 0.00001 m at 10 m.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace hs::survey {

enum class Kind : unsigned char { Panel, Joint, Feet, Other };

struct Reading {
  double x_mm = 0, y_mm = 0;
  std::optional<double> reading_mm{};  // line to ground; absent: not taken yet
  int setup = 0;                       // which level line, 0 to 3
  Kind kind = Kind::Panel;
};

// A place on the ground: readings within kSamePlace_mm of each other are of one place.
inline constexpr double kSamePlace_mm = 2;
struct Point {
  double x_mm = 0, y_mm = 0;
  Kind kind = Kind::Panel;  // of the first reading that names it
  std::size_t first = 0;    // index of that reading
  int readings = 0;
  std::optional<double> height_mm{};  // absent: no reading, or its line is not joined
  double spread_mm = 0;               // between its readings, brought to one line
  double off_mm = 0;                  // from the plane of the rest; 0: it belongs to it
  bool judged = false;                // something speaks for or against it: others, or itself again
  bool doubtful = false;              // to be read again before anything is cut
  bool step = false;  // feet stand on another level than the base: no part of its plane
};

struct Line {
  int setup = 0;
  int readings = 0;
  std::optional<double> height_mm{};  // above the datum; absent: shares no point with the others
};

// From one line to another and back by another way. 0 where every reading is exact.
struct Loop {
  std::vector<int> setups;
  double error_mm = 0;
  int readings = 0;  // that the error is made of
};

struct Levels {
  std::vector<Point> points;
  std::vector<Line> lines;
  std::vector<Loop> loops;
  std::size_t missing = 0;   // places without a reading
  std::size_t unjoined = 0;  // places whose line is not joined
  bool one_line = false;     // all that is read lies on one line as seen from above
};

// Where does the ground stand, and how well do the readings agree?
// Least squares over the heights of points and lines: every reading is line minus ground, all
// weigh the same. Readings from lines that no shared point joins to the largest group get no
// height. A place is doubtful where its readings differ by more than kRepeat_mm, or where a single
// reading is off the plane of the rest (outliers() in plane.h); two that agree are believed, and so
// are places of feet that are off alike, to kLip_mm: they stand below or above a step.
// Source: method of levelling with several instrument heights, common practice; least squares.
// Exact to a millionth of a mm, to which it is rounded; see reading_error_mm() for what a reading
// itself is worth.
inline constexpr double kRepeat_mm = 4;  // two tape readings of 2 mm each: our judgement
Levels levels_of(std::span<const Reading> readings);

// What a reading is worth, plus or minus mm, at this distance from the level line's tool: tape 2 mm
// (1 to 2 mm at best: common practice) and the line's own error, added as squares. A laser's is
// stated over 10 m; a hose is read twice by eye, 2 mm; a board with a level on it is 0.5 mm/m (a
// usual builder's level; from memory). Not known: the tape alone.
enum class Tool : unsigned char { Unknown, Laser, WaterLevel, Straightedge };
inline constexpr double kTape_mm = 2;
double reading_error_mm(Tool tool, const std::optional<double>& laser_mm, double distance_mm);

// Largest closing error to expect of so many readings: twice a standard error of half of
// `error_mm` each, added as squares. Computed.
double closing_limit_mm(double error_mm, int readings);

}  // namespace hs::survey
