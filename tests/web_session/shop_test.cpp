#include <string>

#include "catch_amalgamated.hpp"
#include "web/session/session.h"

using namespace hs;
using hs::web::Session;
using report::Units;

TEST_CASE("the stock list grows and shrinks by a row, and a file replaces it whole or not at all",
          "[web][session]") {
  Session session;
  REQUIRE(session.config().stock.empty());
  CHECK(session.remove_stock(0).size() == 1);
  for (std::size_t i = 0; i < config::kMaxStock; ++i) REQUIRE(session.add_stock().empty());
  CHECK(session.config().stock.size() == config::kMaxStock);
  const auto problems = session.add_stock();
  REQUIRE(problems.size() == 1);
  CHECK(sentence(problems.front()).find("at most 40 rows") != std::string::npos);
  CHECK(session.config().stock.size() == config::kMaxStock);

  REQUIRE(session.open_stock("name,kind,length_mm,price\nPly,sheet,8 ft,60\nScrews,hardware,,9.5\n")
              .empty());
  REQUIRE(session.config().stock.size() == 2);
  CHECK(session.config().stock[0].length_mm == 2438.4);
  REQUIRE(session.remove_stock(0).empty());
  REQUIRE(session.config().stock.size() == 1);
  CHECK(session.config().stock[0].name == "Screws");
  CHECK(session.config().stock[0].price == 9.5);

  const config::Config before = session.config();
  const auto refused = session.open_stock("name,price\nPly,60\nBad,dear\n");
  REQUIRE(refused.size() == 1);
  CHECK(sentence(refused.front()).find("line 3") != std::string::npos);
  CHECK(session.config() == before);
  session.undo();
  CHECK(session.config().stock.size() == 2);
}

TEST_CASE("pieces that came out other than drawn are steps of their own", "[web][session]") {
  Session session;
  const std::string text = "base=104.8 dough.box=741";
  REQUIRE(session.set_built("base", "4 1/8", Units::Inch).empty());
  REQUIRE(session.set_built("dough.box", "741 mm", Units::Inch).empty());
  CHECK(session.config().frame.as_built == text);
  for (const char* size : {"4 1/x", "900", "0"}) {
    const auto refused = session.set_built("base", size, Units::Inch);
    REQUIRE(refused.size() == 1);
    CHECK(refused.front().path == "frame.as_built.base");
    CHECK(session.last_error == sentence(refused.front()));
    CHECK(session.config().frame.as_built == text);
  }
  REQUIRE(session.set_built("base", "", Units::Inch).empty());
  CHECK(session.config().frame.as_built == "dough.box=741");
  session.undo();
  CHECK(session.config().frame.as_built == text);

  // More than the text holds is told where it was typed, too.
  std::vector<Problem> problems;
  for (int bay = 1; bay <= 20 && problems.empty(); ++bay) {
    const std::string name = "dough." + std::to_string(bay) + ".opening.width";
    problems = session.set_built(name, "447.5", Units::Millimetre);
    if (!problems.empty()) CHECK(problems.front().path == "frame.as_built." + name);
  }
  CHECK(problems.size() == 1);
}
