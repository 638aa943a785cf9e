#pragma once
// What every part of the canvas draws and listens with: text, colours, touch targets, the
// keyboard's place. Nothing of Dear ImGui's own look is used; it gives the draw list, the fonts and
// the pointer.

#include <cstdint>
#include <string>
#include <string_view>

#include "engine/base/finding.h"
#include "imgui.h"
#include "web/app/items.h"
#include "web/app/layout.h"
#include "web/app/theme.h"

namespace hs::web {

enum class KeyAction : std::uint8_t {
  None,
  Less,
  More,
  MuchLess,
  MuchMore,
  Least,
  Most,
  Press,
  Closer,
  Farther,
};

// The keyboard's place among the items. The ring shows only after a key was used.
struct Focus {
  std::string id;
  bool ring = false;
  KeyAction action = KeyAction::None;  // of the last key, until its item has taken it
  bool sideways = false;               // that key was the left or the right arrow
};

// What a finger, a mouse or a key does to one target in this frame.
struct Touch {
  bool pressed = false;  // tapped, clicked, or Enter: acts on release, sliding off cancels
  bool began = false;    // went down in this frame
  bool held = false;
  bool ended = false;  // let go in this frame, wherever
  bool hovered = false;
  KeyAction key = KeyAction::None;
};

enum class Side : std::uint8_t { Left, Centre, Right };

struct Ui {
  ImDrawList* draw = nullptr;
  ImFont* regular = nullptr;
  ImFont* bold = nullptr;
  Theme theme = Theme::Sun;
  float pixel = 1;  // CSS px of one device pixel
  Items* items = nullptr;
  Focus* focus = nullptr;
  std::string_view cursor;  // of the mouse, after the frame; empty: the usual one

  ImU32 colour(Tone which) const;

  // Width of one line, CSS px.
  float width(std::string_view text, float size, bool heavy = false) const;
  // The size at which the text fits, between least and size.
  float fitted(std::string_view text, float size, float least, float room, bool heavy) const;
  // One line with its middle at y; cut with an ellipsis where it is wider than `room` (0: never).
  void text(float x, float y, std::string_view text, float size, Tone tone, bool heavy = false,
            Side side = Side::Left, float room = 0) const;
  // Lines broken at spaces, at most `lines`, centred in height in the box; shrunk to `least` first.
  void paragraph(const Rect& box, std::string_view text, float size, float least, int lines,
                 Tone tone, bool heavy = false, Side side = Side::Left) const;

  void fill(const Rect& rect, Tone tone, float radius = kRadius) const;
  void frame(const Rect& rect, Tone tone, float thickness = 1.5F, float radius = kRadius) const;
  void line(float x1, float y1, float x2, float y2, Tone tone, float thickness = 1.5F) const;

  // A place to touch. Registers it under its id, gives it the keyboard, draws its focus ring.
  Touch target(std::string_view id, std::string_view label, const Rect& rect,
               std::string_view value = {});

  // A verdict told by shape: tick in a disc, mark in a triangle, cross in a square, query in a
  // diamond.
  void badge(float x, float y, float radius, Verdict verdict) const;
};

Tone tone_of(Verdict verdict);
Tone wash_of(Verdict verdict);

}  // namespace hs::web
