#include "engine/base/number_text.h"

#include <cmath>
#include <limits>
#include <string>

#include "catch_amalgamated.hpp"

using namespace hs;
using Catch::Matchers::WithinAbs;

namespace {

// Multiplying by 25.4 or 304.8 rounds once or twice; a wrong unit or fraction is far off this.
constexpr double kRounding_mm = 1e-9;
constexpr double kInch_mm = 25.4;

struct Accepted {
  const char* text;
  Unit bare;
  double mm;
};

constexpr Unit kMm = Unit::Mm;
constexpr Unit kInch = Unit::Inch;

const Accepted kAccepted[] = {
    // Feet and inches.
    {"3' 5 3/8\"", kMm, 41.375 * kInch_mm},
    {"3'5 3/8\"", kMm, 41.375 * kInch_mm},
    {"3' 5 3/8", kMm, 41.375 * kInch_mm},
    {"3'-5 3/8\"", kMm, 41.375 * kInch_mm},
    {"3' - 5-3/8\"", kMm, 41.375 * kInch_mm},
    {"3 ft 5 3/8 in", kMm, 41.375 * kInch_mm},
    {"3 FEET 5 3/8 Inches", kMm, 41.375 * kInch_mm},
    {"3 ft. 5 3/8 in.", kMm, 41.375 * kInch_mm},
    {"3ft5in", kMm, 41 * kInch_mm},
    {"3'5''", kMm, 41 * kInch_mm},
    {"3'", kMm, 36 * kInch_mm},
    {"3.5'", kMm, 42 * kInch_mm},
    {"5 1/2 ft", kMm, 66 * kInch_mm},
    {"3' 11.5\"", kMm, 47.5 * kInch_mm},
    {"3' 3/8\"", kMm, 36.375 * kInch_mm},
    {"-3' 5\"", kMm, -41 * kInch_mm},
    // Inches.
    {"41 3/8", kMm, 41.375 * kInch_mm},
    {"41 3/8", kInch, 41.375 * kInch_mm},
    {"41-3/8", kMm, 41.375 * kInch_mm},
    {"41 3/8 in", kMm, 41.375 * kInch_mm},
    {"41 3/8\"", kMm, 41.375 * kInch_mm},
    {"41.375\"", kMm, 41.375 * kInch_mm},
    {"41,375 in", kMm, 41.375 * kInch_mm},
    {"41.375", kInch, 41.375 * kInch_mm},
    {"41,375", kInch, 41.375 * kInch_mm},
    {"3/8", kMm, 0.375 * kInch_mm},
    {"11/8", kMm, 1.375 * kInch_mm},
    {"1 1/3", kMm, 4.0 / 3.0 * kInch_mm},
    {"1 inch", kMm, kInch_mm},
    {"-1/2", kMm, -0.5 * kInch_mm},
    // One-character fractions, the fraction slash, typographic marks.
    {"41\u00BD", kMm, 41.5 * kInch_mm},
    {"41 \u00BC\"", kMm, 41.25 * kInch_mm},
    {"3\u2032 5\u215C\u2033", kMm, 41.375 * kInch_mm},
    {"3\u2019 5 \u215B\u201D", kMm, 41.125 * kInch_mm},
    {"\u00BE in", kMm, 0.75 * kInch_mm},
    {"5\u215D", kMm, 5.625 * kInch_mm},
    {"5\u215E", kMm, 5.875 * kInch_mm},
    {"41 3\u20448 in", kMm, 41.375 * kInch_mm},
    {"41\u00B3\u2044\u2081\u2086 in", kMm, 41.1875 * kInch_mm},
    {"\u00B9\u2075\u2044\u2081\u2086", kMm, 0.9375 * kInch_mm},
    {"\u221241 in", kMm, -41 * kInch_mm},
    {"41\u00A0in", kMm, 41 * kInch_mm},
    // Metric, point or comma.
    {"1051 mm", kMm, 1051},
    {"1051mm", kInch, 1051},
    {"1051.5 mm", kMm, 1051.5},
    {"1051,5", kMm, 1051.5},
    {"105.1 cm", kMm, 1051},
    {"105,1 cm", kInch, 1051},
    {"1.051 m", kMm, 1051},
    {"1,051 m", kMm, 1051},
    {"1051", kMm, 1051},
    {"1051", kInch, 1051 * kInch_mm},
    {" 1051 mm ", kMm, 1051},
    {"+5 mm", kMm, 5},
    {"-5", kMm, -5},
    {"- 5", kMm, -5},
    {".5 mm", kMm, 0.5},
    {"0", kMm, 0},
    {"0,125", kMm, 0.125},
    {"1051.125", kMm, 1051.125},
};

const char* const kRefused[] = {
    "",
    " ",
    "-",
    "mm",
    "in",
    "\"",
    "'",
    "nan",
    "NaN",
    "inf",
    "infinity",
    "-inf",
    "1e3",
    "1e308",
    "1E5 mm",
    "0x10",
    "0x10 mm",
    "abc",
    "12abc",
    "12 mm mm",
    "12 mm cm",
    "12 in mm",
    "--5",
    "+-5",
    "-+5",
    "5-",
    "5 -3",
    "3' -",
    "3' --5",
    "3' 12\"",
    "3' 14\"",
    "3.5' 2\"",
    "3' 5' 2\"",
    "3' 5 mm",
    "5\" 3'",
    "41 11/8",
    "41 8/8",
    "1/0",
    "1/",
    "/2",
    "1/2/3",
    "1 2/",
    "1 1/2 1/2",
    "1 2",
    "1.2.3",
    "1,2,3",
    "1.051,5",
    "1,051.5",
    "1,051,000",
    // A comma before three digits may group thousands; nobody means thousandths of a millimetre.
    "1,051",
    "1,051 mm",
    "105,100 cm",
    "12,345",
    "5.",
    "5. mm",
    "5 m m",
    "5 metres",
    "5 ft 3 ft",
    "\xC3",
    "\xFF",
    "5\u00B2",
    "5 \u2081",
    "\u00B3\u2044",
    "45\u00B0",
    "1\n2",
    "5 mm!",
    "999999999999999999 mm",
    "1/12345",
    "0000000000000000000000000000000000000000000000000000000000000000001",
};

}  // namespace

TEST_CASE("a length is read in every spelling that people type", "[base][number_text]") {
  for (const Accepted& row : kAccepted) {
    CAPTURE(row.text);
    const auto mm = parse_length_mm(row.text, row.bare);
    REQUIRE(mm.has_value());
    CHECK_THAT(*mm, WithinAbs(row.mm, kRounding_mm));
  }
}

TEST_CASE("what is not one clear length is refused in either unit", "[base][number_text]") {
  for (const char* text : kRefused) {
    CAPTURE(text);
    CHECK_FALSE(parse_length_mm(text, Unit::Mm).has_value());
    // In inches and metres a comma before three digits is a decimal mark: "41,375" is 41 3/8.
    const std::string plain(text);
    if (plain != "1,051" && plain != "12,345") {
      CHECK_FALSE(parse_length_mm(text, Unit::Inch).has_value());
    }
  }
}

TEST_CASE("decimals are written through integers and never as minus nought",
          "[base][number_text]") {
  CHECK(fixed(1051.5, 2) == "1051.50");
  CHECK(fixed(1051.5, 0) == "1052");
  CHECK(fixed(-1051.5, 0) == "-1052");
  CHECK(fixed(0.05, 1) == "0.1");
  CHECK(fixed(-0.04, 1) == "0.0");
  CHECK(fixed(-0.0, 0) == "0");
  CHECK(fixed(-0.0, 2) == "0.00");
  CHECK(fixed(0.007, 3) == "0.007");
  CHECK(fixed(1e11, 4) == "100000000000.0000");
  CHECK(fixed(std::numeric_limits<double>::quiet_NaN(), 1) == "null");
  CHECK(fixed(std::numeric_limits<double>::infinity(), 1) == "null");
  CHECK(trimmed(1051.0, 1) == "1051");
  CHECK(trimmed(1051.5, 3) == "1051.5");
  CHECK(trimmed(1000, 0) == "1000");
  CHECK(trimmed(-0.001, 2) == "0");
  CHECK(mm_text(1075.6) == "1076 mm");
  CHECK(mm_text(1075.6, 1) == "1075.6 mm");
}

TEST_CASE("inches are written reduced, carried and signed", "[base][number_text]") {
  CHECK(inches_text(42.5 * kInch_mm) == "42 1/2 in");
  CHECK(inches_text(42.5 * kInch_mm, 16, Fractions::Typographic) == "42\u00BD in");
  CHECK(inches_text(5.1875 * kInch_mm, 16, Fractions::Typographic) ==
        "5\u00B3\u2044\u2081\u2086 in");
  CHECK(inches_text(0.9375 * kInch_mm, 16, Fractions::Typographic) ==
        "\u00B9\u2075\u2044\u2081\u2086 in");
  CHECK(inches_text(1051) == "41 3/8 in");
  CHECK(inches_text(1051, 4) == "41 1/2 in");
  CHECK(inches_text(1051, 1) == "41 in");
  CHECK(inches_text(0) == "0 in");
  CHECK(inches_text(-0.5) == "0 in");
  CHECK(inches_text(-12.7) == "-1/2 in");
  CHECK(feet_inches_text(41.375 * kInch_mm) == "3' 5 3/8\"");
  CHECK(feet_inches_text(36 * kInch_mm) == "3' 0\"");
  CHECK(feet_inches_text(35.99 * kInch_mm) == "3' 0\"");
  CHECK(feet_inches_text(5.375 * kInch_mm) == "5 3/8\"");
  CHECK(feet_inches_text(-41.375 * kInch_mm) == "-3' 5 3/8\"");
  CHECK(feet_inches_text(36.5 * kInch_mm, 16, Fractions::Typographic) == "3' \u00BD\"");
}

TEST_CASE("what is written in inches is read back as the same sixteenth",
          "[base][number_text][law]") {
  for (int parts = -3000; parts <= 3000; parts += 7) {
    const double mm = parts * kInch_mm / 16;
    for (const Fractions style : {Fractions::Ascii, Fractions::Typographic}) {
      for (const std::string& text :
           {inches_text(mm, 16, style), feet_inches_text(mm, 16, style)}) {
        CAPTURE(text);
        const auto back = parse_length_mm(text, Unit::Mm);
        REQUIRE(back.has_value());
        CHECK_THAT(*back, WithinAbs(mm, kRounding_mm));
      }
    }
  }
}

TEST_CASE("a shown range may be typed as it is shown", "[base][number_text]") {
  CHECK(length_range_text(800, 2300, Unit::Mm) == "800 to 2300 mm");
  CHECK(length_range_text(-1500, 1500, Unit::Inch) == "-59 to 59 in");
  CHECK(length_range_text(800, 2300, Unit::Inch) == "31 1/2 to 90 1/2 in");
  CHECK(length_range_text(0, 1000, Unit::Inch) == "0 to 39 5/16 in");
}

TEST_CASE("decimal numbers are read exactly to fifteen digits", "[base][number_text]") {
  CHECK(parse_decimal("1.1") == 1.1);
  CHECK(parse_decimal("-3,5") == -3.5);
  CHECK(parse_decimal("1.5e3") == 1500.0);
  CHECK(parse_decimal("1E-3") == 0.001);
  CHECK(parse_decimal("123456789.123456") == 123456789.123456);
  // Beyond the exact powers of ten each step of 10^22 may round once: 14 steps of 1.2e-16.
  CHECK_THAT(*parse_decimal("1e308"), Catch::Matchers::WithinRel(1e308, 2e-15));
  CHECK(parse_decimal("0e999999999") == 0.0);
  CHECK(parse_decimal("100000000000000000000000") == 1e23);
  for (const char* text :
       {"", "-", ".", "1.", "1..2", "e5", "1e", "1e+", "0x1", "1e309", "nan", " 1", "1 "}) {
    CAPTURE(text);
    CHECK_FALSE(parse_decimal(text).has_value());
  }
}

TEST_CASE("beside inches a bare number is in degrees Fahrenheit, pounds or miles an hour",
          "[base][number_text]") {
  // NIST SP 811 (2008), B.8: (F - 32) / 1.8, 0.45359237 kg to the pound, 0.44704 m/s to the mile an
  // hour.
  CHECK_THAT(*parse_number(Quantity::Temperature, "900", Unit::Inch),
             WithinAbs((900 - 32) / 1.8, 1e-9));
  CHECK_THAT(*parse_number(Quantity::Mass, "77", Unit::Inch), WithinAbs(77 * 0.45359237, 1e-9));
  CHECK_THAT(*parse_number(Quantity::Speed, "20", Unit::Inch), WithinAbs(20 * 0.44704, 1e-9));
  CHECK(parse_number(Quantity::Temperature, "450 C", Unit::Inch) == 450.0);
  CHECK(parse_number(Quantity::Mass, "35 kg", Unit::Inch) == 35.0);
  CHECK(parse_number(Quantity::Years, "12", Unit::Inch) == 12.0);
  CHECK(parse_number(Quantity::Angle, "8", Unit::Inch) == 8.0);
}

TEST_CASE("what is shown to a tenth in either unit is read back as what was kept",
          "[base][number_text]") {
  for (const Quantity quantity : {Quantity::Temperature, Quantity::Mass, Quantity::Speed}) {
    for (const Unit unit : {Unit::Mm, Unit::Inch}) {
      for (int tenths = -400; tenths <= 12000; ++tenths) {
        const double kept = round_to(tenths / 10.0, 10);
        const std::string shown = trimmed(shown_unit(quantity, unit).from_own(kept), 1);
        const auto read = parse_number(quantity, shown, unit);
        REQUIRE(read.has_value());
        if (quantised(quantity, *read) != kept) FAIL(shown << " is not " << kept);
      }
    }
  }
}

TEST_CASE("other quantities take their everyday units", "[base][number_text]") {
  CHECK(parse_number(Quantity::Temperature, "450", kMm) == 450.0);
  CHECK(parse_number(Quantity::Temperature, "450 \u00B0C", kMm) == 450.0);
  CHECK_THAT(*parse_number(Quantity::Temperature, "842\u00B0F", kMm), WithinAbs(450, kRounding_mm));
  CHECK_THAT(*parse_number(Quantity::Temperature, "-40 F", kMm), WithinAbs(-40, kRounding_mm));
  CHECK_THAT(*parse_number(Quantity::Mass, "100 lb", kMm), WithinAbs(45.359237, kRounding_mm));
  CHECK(parse_number(Quantity::Years, "12 years", kMm) == 12.0);
  CHECK_THAT(*parse_number(Quantity::Share, "40 %", kMm), WithinAbs(0.4, kRounding_mm));
  CHECK(parse_number(Quantity::Angle, "8\u00B0", kMm) == 8.0);
  CHECK_FALSE(parse_number(Quantity::Mass, "100 F", kMm).has_value());
  CHECK_FALSE(parse_number(Quantity::Mass, "1,500 kg", kMm).has_value());
  CHECK_FALSE(parse_number(Quantity::Weight, "1 kg", kMm).has_value());
  CHECK_FALSE(parse_number(Quantity::Years, "3/8", kMm).has_value());
}
