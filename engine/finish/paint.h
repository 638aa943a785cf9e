#pragma once
// How much paint: areas by colour, litres and cans, film thickness; what a film takes out of a gap,
// and what is masked.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace hs::finish {

inline constexpr double kQuart_l = 0.946352946, kGallon_l = 4 * kQuart_l;  // US, exact
// Area that one volume covers: ft2 a gallon to m2 a litre.
constexpr double m2_per_l(double ft2_per_gallon) { return ft2_per_gallon * 0.09290304 / kGallon_l; }

// One face or edge of a part as it is painted. Colours are the household's own, by number from 0.
struct Face {
  std::string_view part;  // "door"
  std::string_view face;  // "front"
  int colour = 0;
  double long_mm = 0, wide_mm = 0;
  double cut_out_mm2 = 0;  // openings in one face
  int count = 1;
  bool primer_only = false;  // sealed and not seen: primer, no colour
};

struct Colour {
  std::string_view name;
  int coats = 2;
};

struct Coating {
  int primer_coats = 1;
  // m2 a litre. 300 to 400 ft2/gal: a label (read); 350 to 400 usual (from memory).
  double least_m2_l = m2_per_l(300), most_m2_l = m2_per_l(400);
  double primer_least_m2_l = m2_per_l(300), primer_most_m2_l = m2_per_l(400);
  double lost_share = 0.1;  // in tray, roller and edges: our judgement
};

// Paint of one colour, or the primer.
struct Amount {
  std::string_view name;
  std::vector<std::size_t> faces;  // indices of what it goes on
  double area_m2 = 0;              // once over
  int coats = 0;
  double least_l = 0, most_l = 0;  // by the coverage's two ends, with what is lost
  int quarts = 0, litres = 0;      // to buy, whole cans that hold most_l
};

struct PaintList {
  Amount primer;  // every face, the hidden ones too: the substrate is sealed all round
  std::vector<Amount> colours;  // those used, in their order
};

// What is needed? Faces without area, negative counts and colours that are not there count as
// nothing, told by index in `left_out`. Coverage above 0.
struct PaintAnswer {
  PaintList list;
  std::vector<std::size_t> left_out;
};
PaintAnswer paint_for(std::span<const Face> faces, std::span<const Colour> colours,
                      const Coating& coating);

// Litres for an area: area x coats / coverage. Nothing lost.
double litres(double area_m2, int coats, double coverage_m2_l);

// How thick a coat lies wet, micrometres: 1000 / coverage (computed). 400 ft2/gal is 4.0 mil.
double wet_film_um(double coverage_m2_l);
// And dry: by the label's solids by volume, 0 to 1.
double dry_film_um(double coverage_m2_l, double solids_share);

// A gap between two painted edges gets narrower by a film on each, and on each it is primer and all
// coats. mm.
double film_mm(int primer_coats, double primer_dry_um, int coats, double dry_um);
double gap_after_paint_mm(double cut_gap_mm, double film_one_mm, double film_other_mm);
// The gap to cut so that this one is left.
double gap_to_cut_mm(double wanted_gap_mm, double film_one_mm, double film_other_mm);
// Least gap that is left round an inset door after paint, mm: what a door needs to swing and not to
// stick in the damp: 2 mm, our judgement.
inline constexpr double kInsetLeast_mm = 2;

// What paint must not reach.
enum class Feature : std::uint8_t {
  HingeCup,
  Hinge,
  Slide,
  MetalEdge,
  Outlet,
  WireHole,
  VentMesh,
  Gasket,
  GlueFace,
  Threads,
  Label,
};
struct Masked {
  std::string_view what, why;
};
// Why is it masked? Common practice.
Masked masking(Feature feature);
// The list for a station: each kind once, in the order of Feature, with how many.
struct MaskLine {
  Feature feature = Feature::Hinge;
  Masked words;
  int count = 0;
};
std::vector<MaskLine> masking_list(std::span<const Feature> features);

}  // namespace hs::finish
