#include "web/app/theme.h"

#include <array>
#include <cmath>

namespace hs::web {
namespace {

constexpr auto kTones = std::to_array<ToneRow>({
    {Tone::Paper, "paper", 0xFAF4E6, 0x12201A},
    {Tone::Card, "card", 0xFFFDF7, 0x1B2C24},
    {Tone::Ink, "ink", 0x0E2018, 0xF6EFDD},
    {Tone::InkSoft, "ink_soft", 0x30443A, 0xD3D3C0},
    {Tone::Rule, "rule", 0x6F7D74, 0x7F9187},
    {Tone::Control, "control", 0xE9E3CF, 0x26392F},
    {Tone::ControlOn, "control_on", 0xD3DFC6, 0x35503F},
    {Tone::Accent, "accent", 0x14482F, 0xF3C969},
    {Tone::OnAccent, "on_accent", 0xFFFDF7, 0x12201A},
    {Tone::Focus, "focus", 0x1A4FB4, 0x9CC7FF},
    {Tone::Good, "good", 0x0F5230, 0x9BDDA9},
    {Tone::Warn, "warn", 0x6B3D00, 0xFFCB73},
    {Tone::Fail, "fail", 0x8C1710, 0xFFB3A6},
    {Tone::Unknown, "unknown", 0x4B2C78, 0xD9C4FF},
    {Tone::GoodWash, "good_wash", 0xD9EBD3, 0x1C3D2B},
    {Tone::WarnWash, "warn_wash", 0xFBE2AE, 0x43330F},
    {Tone::FailWash, "fail_wash", 0xF9D8D0, 0x4A1F19},
    {Tone::UnknownWash, "unknown_wash", 0xE7DDF4, 0x33264D},
    {Tone::Sky, "sky", 0xFFFDF7, 0x16261F},
    {Tone::Ground, "ground", 0xD8C7A3, 0x3A3A2A},
    {Tone::Cabinet, "cabinet", 0xE6D9BB, 0x33453A},
    {Tone::Counter, "counter", 0x7A5C34, 0xB9A277},
    {Tone::OvenBody, "oven_body", 0x4C5A53, 0x8A998F},
    {Tone::OvenInside, "oven_inside", 0xFFE9C4, 0x46371D},
    {Tone::Pizza, "pizza", 0xC2601A, 0xF0A050},
    {Tone::Hidden, "hidden", 0x8C1710, 0xFFB3A6},
    {Tone::Person, "person", 0x2C5F48, 0x7FB796},
    {Tone::Sightline, "sightline", 0xA63C00, 0xFFC24D},
    {Tone::Seen, "seen", 0xFFDD7A, 0x8A6A1C},
});

constexpr bool in_order() {
  for (std::size_t i = 0; i < kTones.size(); ++i) {
    if (static_cast<std::size_t>(kTones[i].tone) != i) return false;
  }
  return kTones.size() == kToneCount;
}
static_assert(in_order(), "the rows of the theme are in the order of Tone");

double linear(std::uint32_t channel) {
  const double share = channel / 255.0;
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(std::uint32_t rgb) {
  return 0.2126 * linear((rgb >> 16) & 0xFFU) + 0.7152 * linear((rgb >> 8) & 0xFFU) +
         0.0722 * linear(rgb & 0xFFU);
}

}  // namespace

std::span<const ToneRow> tones() { return kTones; }

std::uint32_t tone(Theme theme, Tone which) {
  const ToneRow& row = kTones[static_cast<std::size_t>(which)];
  return theme == Theme::Sun ? row.sun : row.dusk;
}

double contrast(std::uint32_t a, std::uint32_t b) {
  const double first = luminance(a) + 0.05;
  const double second = luminance(b) + 0.05;
  return first > second ? first / second : second / first;
}

}  // namespace hs::web
