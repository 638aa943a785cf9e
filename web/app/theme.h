#pragma once
// Every colour and size of the canvas, by what it is for. web/theme.css carries the same colours as
// custom properties of the same names ("--ink_soft"); a test compares the two.
//
// Sun is the first theme: dark ink on warm paper, no text below 7:1, nothing told by colour alone.
// Dusk is for the hour when a bright page would blind the cook.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

namespace hs::web {

enum class Tone : std::uint8_t {
  // Surfaces and text.
  Paper,      // behind everything
  Card,       // what lies on the paper
  Ink,        // text and outlines
  InkSoft,    // second text, still 7:1
  Rule,       // borders, at least 3:1
  Control,    // body of a control
  ControlOn,  // a control that is held or chosen
  Accent,     // filled control, slider's thumb
  OnAccent,   // text on it
  Focus,      // keyboard focus ring
  // Verdicts: text or mark, then the surface behind it.
  Good,
  Warn,
  Fail,
  Unknown,
  GoodWash,
  WarnWash,
  FailWash,
  UnknownWash,
  // The pictures.
  Sky,
  Ground,
  Cabinet,
  Counter,
  OvenBody,
  OvenInside,
  Pizza,
  Hidden,
  Person,
  Sightline,
  Seen,
};
inline constexpr std::size_t kToneCount = 29;

struct ToneRow {
  Tone tone;
  std::string_view name;    // as in theme.css
  std::uint32_t sun, dusk;  // 0xRRGGBB
};
std::span<const ToneRow> tones();

enum class Theme : std::uint8_t { Sun, Dusk };

// 0xRRGGBB.
std::uint32_t tone(Theme theme, Tone which);

// Contrast of two colours, 1 to 21 (WCAG 2.2, definition of contrast ratio).
double contrast(std::uint32_t a, std::uint32_t b);

// One spacing unit and one scale of type, CSS px.
inline constexpr float kUnit = 4;
inline constexpr float kTarget = 48;  // least size of what a finger hits
inline constexpr float kRadius = 10;
inline constexpr float kTextSmall = 13;
inline constexpr float kText = 15;
inline constexpr float kTextLarge = 19;
inline constexpr float kHeadline = 34;
inline constexpr float kHeadlineLarge = 44;

}  // namespace hs::web
