#pragma once
// The one table of input fields. Controls, HTML form, JSON, schema, link, --set and the field
// reference all read it; to add an input is to add a member to Config and a row here.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "engine/base/quantity.h"
#include "engine/config/config.h"

namespace hs::config {

// A field's value whatever its type. monostate: absent (unknown, or "use the recommended").
struct ChoiceIndex {
  std::uint8_t index = 0;
  bool operator==(const ChoiceIndex&) const = default;
};
using Value = std::variant<std::monostate, double, bool, std::string, ChoiceIndex>;

// Station: once; the others: once for each row of their list.
enum class Group : std::uint8_t { Station, Cook, Point, Stock };

// What an absent or null key means for this field.
enum class Absent : std::uint8_t {
  Default,  // absent takes the default; null is refused
  Derived,  // absent means "as the rest implies" (a cook's place); null is refused
  Unknown,  // absent or null: nobody has said
};

struct Field {
  std::uint16_t tag;  // permanent: never reused, never renumbered (links go by it)
  Group group;
  std::string_view path;   // "oven.width_mm"; of a list: "cooks[].stature_mm"
  std::string_view label;  // two or three words, for a control
  Quantity quantity;
  Absent absent;
  double min, max;  // inclusive, in the field's unit; text: bytes
  double step;      // of a stepper
  std::span<const std::string_view> choices;
  Value (*get)(const Config&, std::size_t row);
  // The value must have the field's type; numbers are rounded to the quantum.
  void (*set)(Config&, std::size_t row, const Value&);
};

// A list of rows that have fields of their own.
struct List {
  Group group;
  std::string_view path;  // "cooks"
  std::string_view item;  // "cook": one of them, in a message
  std::size_t least, most;
};
std::span<const List> lists();
// nullptr for the station, or for a path that is no list's or inside none ("cooks.0.share" is).
const List* list_of(Group group);
const List* list_around(std::string_view path);

// Rows of this group in a config: 1 for the station.
std::size_t rows_of(const Config& config, Group group);
// Rows are added with their defaults, or dropped at the end. The station is left as it is.
void set_rows(Config& config, Group group, std::size_t count);

// What a form says beside the control. Kept apart, so that a program without forms need not carry
// it.
struct FieldHelp {
  std::string_view question;  // the question in plain words
  std::string_view measure;   // how to find the answer
  std::string_view rules;     // ids of the rules that read it, space-separated
};

// `field` is one of fields().
const FieldHelp& help_of(const Field& field);

// Every field, by section then by tag.
std::span<const Field> fields();

// nullptr when there is none. Path with or without an index: "cooks[].share", "cooks.0.share".
const Field* find_field(std::string_view path);
const Field* find_tag(std::uint16_t tag);

// Value of the field in a default Config (of a list: its first default row).
Value default_value(const Field& field);

// "cooks.2.stature_mm" for cook 2 (counted from 0); a station field's own path otherwise.
std::string path_of(const Field& field, std::size_t row);

// The key inside its section: "stature_mm" of "cooks[].stature_mm".
std::string_view key_of(const Field& field);

}  // namespace hs::config
