// Cut plans as drawings: what is sawn is plain, and the passes' numbers do not hide it.
#include <cmath>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/packet.h"
#include "engine/report/cut_sheets.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;

TEST_CASE("numbers of saw passes stand apart, and nothing leads to them across a part",
          "[report][packet]") {
  std::size_t rings = 0;
  for (const char* name : {"demo", "stations/four_cooks", "stations/settled_yard"}) {
    const config::Config config = test::preset(name);
    const auto e = evaluate::evaluate_packet(config);
    REQUIRE(e.packet);
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      for (const double more : {1.0, 1.4}) {
        for (const CutSheet& which : cut_sheets(e.packet->cutting)) {
          const Sheet own = cut_sheet(config, e, {.units = units}, which);
          const Sheet sheet =
              cut_sheet(config, e, {.units = units, .line_mm = more * own.text_mm}, which);
          const auto& group = e.packet->cutting.groups[which.group];
          const auto& stick = group.sticks[which.stick];
          std::vector<Spot> numbers;
          for (const Mark& mark : sheet.drawing.marks()) {
            const auto points = sheet.drawing.points(mark);
            INFO(name << ", " << sheet.title << ", " << sheet.drawing.text(mark));
            if (mark.role == Role::Key) {
              for (const Spot& other : numbers) {
                REQUIRE(std::hypot(other.x_mm - points[0].x_mm, other.y_mm - points[0].y_mm) >
                        1.1 * sheet.text_mm);
              }
              numbers.push_back(points[0]);
            }
            if (mark.role != Role::Dimension || !mark.dashed) continue;
            const Spot middle{(points[0].x_mm + points[1].x_mm) / 2,
                              (points[0].y_mm + points[1].y_mm) / 2};
            for (const evaluate::SawnPiece& piece : stick.pieces) {
              if (piece.kind != evaluate::SawnPiece::Kind::Part) continue;
              REQUIRE_FALSE((middle.x_mm > piece.x_mm && middle.y_mm > piece.y_mm &&
                             middle.x_mm < piece.x_mm + piece.length_mm &&
                             middle.y_mm < piece.y_mm + piece.width_mm));
            }
          }
          CHECK(numbers.size() == stick.passes.size());
          rings += numbers.size();
        }
      }
    }
  }
  CHECK(rings > 500);
}
