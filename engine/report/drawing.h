#pragma once
// A drawing as a list of marks in millimetres, with what each mark is for instead of a colour.
//
// One list serves the screen, a printed sheet and a file, so that all of them agree. x goes to the
// right, y up, origin as the drawing says. The list is flat (points, marks and text in one vector
// each), so that drawing it again while a finger moves costs few allocations.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace hs::report {

struct Spot {
  double x_mm = 0, y_mm = 0;
  bool operator==(const Spot&) const = default;
};

// What a mark stands for; the viewer gives it a colour.
enum class Role : std::uint8_t {
  Ground,
  Cabinet,
  Counter,
  OtherCounter,  // the dough counter where it is beside the oven's cabinet, not under it
  Riser,
  OvenBody,
  OvenInside,
  OvenFloor,
  Pizza,
  Hidden,  // what the eye does not see
  Seen,    // what it sees
  Person,
  PersonLine,  // a line on the person's shape
  Seat,
  Eye,
  Sightline,
  Feet,
  HeatLimit,  // where a face gets too much heat to linger
  Dimension,
  Label,
  // Of the larger sheets.
  Key,        // the letter of an entry in the sheet's key
  Thing,      // what stands at a measured distance
  Cover,      // roof and posts
  ClearRoom,  // free room that somebody asks for
  Unknown,    // free room that nobody has said anything about
  ChildFree,  // where no child and no pet goes
  Landing,    // free counter for a hot pizza
  Room,       // free ground that a rule asks for
  Prep,       // counter for dough
  Peel,       // the peel's way
  OtherPerson,
  EyeLevel,
  Scale,  // a line of known length
  // Of the plots.
  Heading,
  Curve,
  GoodBand,  // what suits everyone
  InUse,     // the height that stands now
  Limit,     // as far as somebody's hands go
};
inline constexpr std::size_t kRoleCount = static_cast<std::size_t>(Role::Limit) + 1;

// How a role is hatched, so that no two zones differ by colour alone.
struct HatchStyle {
  double angle_deg = 50;
  double spacing = 1;    // of the viewer's own
  bool crossed = false;  // a second set of lines at a right angle
};
constexpr HatchStyle hatch_style(Role role) {
  switch (role) {
    case Role::ClearRoom:
      return {135, 1.6, false};
    case Role::Unknown:
      return {45, 1.3, true};
    case Role::Landing:
      return {0, 0.8, false};
    case Role::Prep:
      return {90, 1.4, false};
    case Role::Thing:
      return {45, 0.8, false};
    case Role::GoodBand:
      return {60, 0.9, false};
    case Role::HeatLimit:
      return {120, 1.4, false};
    case Role::Peel:
      return {0, 1.6, false};
    default:
      return {};
  }
}

enum class Shape : std::uint8_t { Polyline, Outline, Polygon, Hatch, Dimension, Text, Dot };
enum class Weight : std::uint8_t { Thin, Normal, Heavy };
enum class Align : std::uint8_t { Left, Centre, Right };
enum class Ends : std::uint8_t { Both, First, Last };  // of a dimension: where it has arrowheads

// One mark. Polyline: open; Outline: closed, not filled; Polygon: filled, simple, any turning;
// Hatch: lines across a simple polygon; Dimension: two points with arrowheads and its text over the
// middle; Text: one line centred in height on its point; Dot: one point.
struct Mark {
  Shape shape = Shape::Polyline;
  Role role = Role::Label;
  Weight weight = Weight::Normal;
  bool dashed = false;
  Align align = Align::Left;
  Ends ends = Ends::Both;
  std::uint32_t first_point = 0, point_count = 0;
  std::uint32_t first_char = 0, char_count = 0;
  double size_mm = 0;  // Dot: its radius. A viewer may draw it larger where it would vanish
  bool boxed = false;  // Text: a length beside its line; no line is seen through it
};

struct Box {
  double left_mm = 0, bottom_mm = 0, right_mm = 0, top_mm = 0;
};

class Drawing {
 public:
  void clear();

  void polyline(Role role, std::span<const Spot> points, Weight weight = Weight::Normal,
                bool dashed = false);
  void line(Role role, Spot from, Spot to, Weight weight = Weight::Normal, bool dashed = false);
  void outline(Role role, std::span<const Spot> points, Weight weight = Weight::Normal,
               bool dashed = false);
  void polygon(Role role, std::span<const Spot> points);
  void hatch(Role role, std::span<const Spot> points);
  void dimension(Spot from, Spot to, std::string_view text, Ends ends = Ends::Both);
  void text(Role role, Spot at, std::string_view text, Align align = Align::Left);
  void length(Spot at, std::string_view text, Align align = Align::Left);
  void dot(Role role, Spot at, double radius_mm, bool filled = true);
  // What is drawn from here on is the key under the picture.
  void begin_key() {
    if (picture_marks_ == 0) picture_marks_ = marks_.size();
  }
  // The picture alone, without its key; all of it where no key was begun.
  Drawing picture() const;
  // A dot on what is meant, a thin line from it to the foot of the words.
  void leader(Spot tip, Spot words, std::string_view text, Align align = Align::Left);

  std::span<const Mark> marks() const { return marks_; }
  std::span<const Spot> points(const Mark& mark) const;
  std::string_view text(const Mark& mark) const;

  // Smallest box around every point; text has no width here. All nought when there is no mark.
  Box bounds() const;

 private:
  Mark& add(Shape shape, Role role, std::span<const Spot> points);

  std::vector<Mark> marks_;
  std::vector<Spot> points_;
  std::string text_;
  std::size_t picture_marks_ = 0;  // 0: no key
};

// Parallel lines across a simple polygon (even-odd), as pairs of ends, appended to `ends`. The
// lines keep their place when the polygon changes: they go through multiples of the spacing, so a
// hatch does not swim while something is dragged. angle_deg counts from the x axis, anticlockwise.
void hatch_lines(std::span<const Spot> polygon, double spacing_mm, double angle_deg,
                 std::vector<Spot>& ends);

// Part of a circle, from one angle to another (from the x axis, anticlockwise).
std::vector<Spot> arc(Spot middle, double radius_mm, double from_deg, double to_deg);

// A square on its corner, from its middle to them: what is doubtful.
std::array<Spot, 4> diamond(Spot centre, double to_corner_mm);

// An ellipse as a polygon, anticlockwise from its rightmost point.
std::vector<Spot> ellipse(Spot middle, double half_width_mm, double half_height_mm);

// A closed smooth curve through the points (centripetal enough for points of like spacing:
// uniform Catmull-Rom), `steps` points for each given one.
std::vector<Spot> smooth_closed(std::span<const Spot> through, int steps);

}  // namespace hs::report
