#include "web/pictures/scene_colours.h"

#include <cmath>

namespace hs::web {
namespace {

using scene::Colour;
using scene::Material;

Colour from(std::uint32_t rgb, float fourth) {
  const auto part = [rgb](int shift) {
    return static_cast<float>((rgb >> shift) & 0xFFU) / 255.0F;
  };
  return {part(16), part(8), part(0), fourth};
}

std::uint32_t mix(std::uint32_t a, std::uint32_t b, double share) {
  std::uint32_t out = 0;
  for (const int shift : {16, 8, 0}) {
    const double x = (a >> shift) & 0xFFU, y = (b >> shift) & 0xFFU;
    out |= static_cast<std::uint32_t>(std::lround(x + (y - x) * share)) << shift;
  }
  return out;
}

struct Look {
  std::uint32_t rgb;
  float fourth;  // solids: how much it glows by the fire; paints: how much it covers
};

Look look_of(Theme theme, Material material) {
  const auto t = [theme](Tone which) { return tone(theme, which); };
  const bool dusk = theme == Theme::Dusk;
  switch (material) {
    case Material::Ground:
      return {mix(t(Tone::Ground), t(Tone::Sky), dusk ? 0.25 : 0.35), 1};
    case Material::Shadow:
      return {dusk ? 0x000000U : mix(t(Tone::Ink), t(Tone::Counter), 0.3), dusk ? 0.45F : 0.34F};
    case Material::FeetLine:
    case Material::Sightline:
      return {t(Tone::Sightline), 1};
    case Material::ChildZone:
      return {t(Tone::Warn), dusk ? 0.10F : 0.09F};
    case Material::ChildEdge:
      return {t(Tone::Warn), 0.85F};
    case Material::Cabinet:
      return {mix(t(Tone::Cabinet), t(Tone::Card), dusk ? 0.0 : 0.25), 0};
    case Material::Counter:
      return {mix(t(Tone::Counter), t(Tone::Card), dusk ? 0.0 : 0.28), 0};
    case Material::OtherCounter:
      return {mix(t(Tone::Counter), t(Tone::Card), dusk ? 0.0 : 0.40), 0};
    case Material::Riser:
      return {mix(t(Tone::Cabinet), t(Tone::Counter), 0.35), 0};
    case Material::Masonry:
      return {mix(t(Tone::Cabinet), t(Tone::OvenBody), 0.22), 0};
    case Material::Wall:
      return {mix(t(Tone::Ground), t(Tone::Card), 0.55), 0};
    case Material::Cover:
      return {mix(t(Tone::Counter), t(Tone::Card), dusk ? 0.0 : 0.4), 0};
    case Material::Neighbour:
      return {mix(t(Tone::OvenBody), t(Tone::Card), dusk ? 0.0 : 0.5), 0};
    case Material::OvenShell:
      return {mix(t(Tone::OvenBody), t(Tone::Card), dusk ? 0.0 : 0.15), 0};
    case Material::OvenInside:
      return {t(Tone::OvenInside), 1};
    case Material::Hearth:
      return {mix(t(Tone::OvenInside), t(Tone::Counter), 0.25), 0.8F};
    case Material::Unseen:
      return {mix(t(Tone::OvenInside), t(Tone::Card), 0.2), 1};
    case Material::SeenLeaning:
      return {mix(t(Tone::Seen), t(Tone::OvenInside), 0.55), 1};
    case Material::Seen:
      return {t(Tone::Seen), 1};
    case Material::Pizza:
      return {t(Tone::Pizza), 1};
    case Material::PizzaUnseen:
      return {mix(t(Tone::Pizza), t(Tone::OvenInside), 0.6), 1};
    case Material::Cheese:
      return {dusk ? 0xF4C878U : 0xF3CE86U, 1};
    case Material::Topping:
      return {dusk ? 0xB8482CU : 0xA93A1CU, 1};
    case Material::Crust:
      return {dusk ? 0xD79A55U : 0xDDA25CU, 0};
    case Material::Looker:
      return {t(Tone::Person), 0};
    case Material::Person:
      return {mix(t(Tone::Person), t(Tone::Cabinet), 0.45), 0};
    case Material::Furniture:
      return {mix(t(Tone::Counter), t(Tone::Card), dusk ? 0.1 : 0.5), 0};
    case Material::Eye:
      return {t(Tone::Paper), 0};
    case Material::Wedge:
      return {mix(t(Tone::Seen), t(Tone::Sightline), 0.15), dusk ? 0.30F : 0.26F};
    case Material::Edge:
      return {t(Tone::Ink), dusk ? 0.45F : 0.50F};
    case Material::MouthEdge:
      return {t(Tone::Ink), 1};
    case Material::ClearRoom:
      return {t(Tone::Warn), dusk ? 0.16F : 0.13F};
    case Material::ClearEdge:
      return {t(Tone::Warn), 1};
    case Material::UnknownRoom:
      return {t(Tone::Unknown), dusk ? 0.22F : 0.18F};
    case Material::UnknownEdge:
      return {t(Tone::Unknown), 1};
    case Material::WorkRoom:
      return {t(Tone::Accent), dusk ? 0.16F : 0.12F};
    case Material::WorkEdge:
      return {t(Tone::Accent), 0.9F};
    case Material::Landing:
      return {t(Tone::Good), 0.3F};
    case Material::LandingEdge:
      return {t(Tone::Good), 1};
    case Material::Lamp:
      return {mix(t(Tone::Ink), t(Tone::Card), dusk ? 0.3 : 0.1), 0};
    case Material::Beam:
      return {t(Tone::Seen), dusk ? 0.45F : 0.5F};
    case Material::Board:
      return {mix(t(Tone::Counter), t(Tone::Card), dusk ? 0.2 : 0.55), 0};
    case Material::Lumber:
      return {mix(t(Tone::Counter), t(Tone::Ground), 0.45), 0};
    case Material::Picked:
      return {t(Tone::Sightline), 0};
  }
  return {0, 0};
}

}  // namespace

std::uint32_t paint_colour(Theme theme, Material material) { return look_of(theme, material).rgb; }

void scene_colours(Theme theme, bool inside, bool plain, scene::Frame& frame) {
  for (std::size_t i = 0; i < scene::kMaterialCount; ++i) {
    const Look look = look_of(theme, static_cast<Material>(i));
    frame.solids[i] = frame.paints[i] = from(look.rgb, look.fourth);
    frame.patterns[i] = 0;
  }
  const auto paint = [&](Material material) -> Colour& {
    return frame.paints[static_cast<std::size_t>(material)];
  };
  const auto pattern = [&](Material material, float kind) {
    frame.patterns[static_cast<std::size_t>(material)] = kind;
  };
  frame.backdrop = from(tone(theme, Tone::Sky), 1);
  frame.hatch_ink = from(tone(theme, Tone::Hidden), 0.9F);
  frame.dot_ink = from(tone(theme, Tone::Sightline), 0.8F);
  const bool dusk = theme == Theme::Dusk;
  frame.light.sky = dusk ? std::array{0.92F, 0.95F, 1.00F} : std::array{0.98F, 0.98F, 0.98F};
  frame.light.ground = dusk ? std::array{0.50F, 0.48F, 0.44F} : std::array{0.66F, 0.62F, 0.56F};
  frame.light.sun = dusk ? std::array{0.14F, 0.14F, 0.18F} : std::array{0.20F, 0.19F, 0.15F};
  // Embers light the oven from inside; who stands before it sees less of the day.
  frame.light.fire = from(dusk ? 0xF29A45U : 0xFFBE74U, inside ? 0.9F : 0.35F);
  if (plain) {
    paint(Material::Seen) = paint(Material::Pizza) = {1, 1, 1, 1};
    paint(Material::Unseen) = paint(Material::SeenLeaning) =
        paint(Material::PizzaUnseen) = {0, 0, 1, 1};
    frame.backdrop = {1, 0, 0, 1};
    return;
  }
  pattern(Material::Unseen, 1);
  pattern(Material::PizzaUnseen, 1);
  pattern(Material::SeenLeaning, 2);
  pattern(Material::ClearRoom, 1);
  pattern(Material::Landing, 1);
  pattern(Material::UnknownRoom, 2);
}

}  // namespace hs::web
