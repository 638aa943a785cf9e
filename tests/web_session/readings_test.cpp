#include "web/desk/readings.h"

#include <string>

#include "catch_amalgamated.hpp"

using namespace hs;

TEST_CASE("readings come as three numbers each, and nothing else", "[desk][measure]") {
  const auto two = web::readings("0.5 9.7 -0.25 1 2 3");
  REQUIRE(two.size() == 2);
  CHECK(two[0].x == 0.5);
  CHECK(two[0].y == 9.7);
  CHECK(two[0].z == -0.25);
  CHECK(two[1].z == 3);
  for (const char* text : {"", "1", "1 2", "1 2 3 4", "1 2 x", "1 2 nan", "1 2 inf", "1  2 3"}) {
    INFO(text);
    CHECK(web::readings(text).empty());
  }
  std::string many;
  for (int i = 0; i < 3000; ++i) many += (i == 0 ? "" : " ") + std::string("1 2 3");
  CHECK(web::readings(many).size() == 3000);
  CHECK(web::readings(many + " 1 2 3").empty());
}
