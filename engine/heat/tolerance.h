#pragma once
// What radiant heat and hot surfaces do to people: bands, times, layers, touch.
//
// Averages of healthy adults; children's and older skin bears less. A low figure permits nothing:
// flames, sparks and hot air come on top, and no clearance is ever read from here.

#include <cstdint>
#include <optional>

namespace hs::heat {

// 450 Btu/(h ft2): what people outdoors without protection, children among them, are allowed: US
// law, 24 CFR 51.203(a)(2), read.
inline constexpr double kLinger_kw_m2 = 1.42;
// Severe pain within half a minute: SFPE Handbook 5th ed. Table 63.20 and PD 7974-6 Table I.4,
// second hand; 2 to 2.5 in an NCHRP tunnel report, read.
inline constexpr double kBrief_kw_m2 = 2.5;
// Four seconds, from the same tables.
inline constexpr double kSnatch_kw_m2 = 10;

enum class Band : std::uint8_t { Linger, Brief, Hot };

// Up to kLinger, up to kBrief, above. Compared at the report's quantum, 0.01 kW/m2.
Band band_of(double flux_kw_m2);

// Seconds to severe pain of bare skin: 60 x 1.33 / q^1.33, q in kW/m2 (SFPE Handbook 5th ed.
// eq. 63.43, second hand). nullopt beyond an hour and for no heat at all: the law says nothing
// there. Sources differ by a factor of two.
std::optional<double> tolerance_s(double flux_kw_m2);

// Share (0..1) of the flux that comes through opaque layers in front of the skin, each of which
// takes up all and gives half of it back to where it came from: 1 / (layers + 1). Radiation shields
// between black faces, textbook, from memory; soot is black. It holds once the layers are warm:
// before that they hold back more, and wet ones scald.
double through_layers(int layers);

// Wood that is never held warmer than this does not catch fire after years, degrees Celsius:
// Babrauskas, Gray and Janssens 2007, abstract read. A surface's temperature is measured, never
// worked out here.
inline constexpr double kWoodForLong_c = 77;

enum class Material : std::uint8_t { Metal, Stone, Plastic, Wood, Textile };

// Highest surface temperature (degrees Celsius) that bare skin bears for this contact, 1 s to 8 h;
// outside that the nearest end. Between the published times on their logarithm; of a published
// range the lower end. ISO 13732-1 through a table that an insulation firm prints (metal, wood,
// textile; second hand) and from memory (stone, plastic and what the table leaves out).
double touch_limit_c(Material material, double contact_s);

}  // namespace hs::heat
