#include "web/app/theme.h"

#include "catch_amalgamated.hpp"

using namespace hs::web;
using Catch::Matchers::WithinAbs;

TEST_CASE("contrast is WCAG's", "[theme][source]") {
  // WCAG 2.2, contrast ratio: 21 for black on white, 1 for equal colours. #767676 on white is the
  // lightest grey that reaches 4.5 (4.54).
  CHECK_THAT(contrast(0x000000, 0xFFFFFF), WithinAbs(21, 0.001));
  CHECK_THAT(contrast(0x123456, 0x123456), WithinAbs(1, 1e-12));
  CHECK_THAT(contrast(0x767676, 0xFFFFFF), WithinAbs(4.54, 0.005));
}

TEST_CASE("text reads at 7 to 1 on everything it stands on", "[theme]") {
  struct Pair {
    Tone text, behind;
  };
  constexpr Pair kPairs[] = {
      {Tone::Ink, Tone::Paper},     {Tone::Ink, Tone::Card},        {Tone::Ink, Tone::Control},
      {Tone::Ink, Tone::ControlOn}, {Tone::Ink, Tone::Sky},         {Tone::Ink, Tone::Ground},
      {Tone::Ink, Tone::Cabinet},   {Tone::Ink, Tone::GoodWash},    {Tone::Ink, Tone::WarnWash},
      {Tone::Ink, Tone::FailWash},  {Tone::Ink, Tone::UnknownWash}, {Tone::InkSoft, Tone::Card},
      {Tone::InkSoft, Tone::Paper}, {Tone::OnAccent, Tone::Accent}, {Tone::Good, Tone::Card},
      {Tone::Warn, Tone::Card},     {Tone::Fail, Tone::Card},       {Tone::Unknown, Tone::Card},
      {Tone::Good, Tone::Paper},    {Tone::Warn, Tone::Paper},      {Tone::Fail, Tone::Paper},
      {Tone::Unknown, Tone::Paper}, {Tone::Card, Tone::Unknown},
  };
  for (const Theme theme : {Theme::Sun, Theme::Dusk}) {
    for (const Pair& pair : kPairs) {
      INFO(tones()[static_cast<std::size_t>(pair.text)].name
           << " on " << tones()[static_cast<std::size_t>(pair.behind)].name);
      CHECK(contrast(tone(theme, pair.text), tone(theme, pair.behind)) >= 7);
    }
  }
}

TEST_CASE("what a shape is told by stands out at 3 to 1", "[theme]") {
  // WCAG 2.2, 1.4.11 Non-text Contrast.
  struct Pair {
    Tone shape, behind;
  };
  constexpr Pair kPairs[] = {
      {Tone::Rule, Tone::Paper},      {Tone::Rule, Tone::Card},
      {Tone::Rule, Tone::Control},    {Tone::Accent, Tone::Card},
      {Tone::Focus, Tone::Paper},     {Tone::Focus, Tone::Card},
      {Tone::Person, Tone::Sky},      {Tone::OvenBody, Tone::Sky},
      {Tone::Sightline, Tone::Sky},   {Tone::Sightline, Tone::OvenInside},
      {Tone::Sightline, Tone::Seen},  {Tone::Hidden, Tone::OvenInside},
      {Tone::Hidden, Tone::FailWash}, {Tone::Hidden, Tone::WarnWash},
      {Tone::Counter, Tone::Sky},     {Tone::Pizza, Tone::OvenInside},
  };
  for (const Theme theme : {Theme::Sun, Theme::Dusk}) {
    for (const Pair& pair : kPairs) {
      INFO(tones()[static_cast<std::size_t>(pair.shape)].name
           << " on " << tones()[static_cast<std::size_t>(pair.behind)].name);
      CHECK(contrast(tone(theme, pair.shape), tone(theme, pair.behind)) >= 3);
    }
  }
}
