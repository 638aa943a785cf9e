#pragma once
// How a row of the field table is written down; for engine/config/fields.cpp and the parts of the
// table (rows_*.h) only. Ends with macros, which fields.cpp undefines.

#include <optional>
#include <span>
#include <string_view>
#include <type_traits>

#include "engine/config/fields.h"

namespace hs::config::rows {

template <typename T>
struct Plain {
  using type = T;
  static constexpr bool optional = false;
};
template <typename T>
struct Plain<std::optional<T>> {
  using type = T;
  static constexpr bool optional = true;
};

template <typename T>
Value to_value(const T& member) {
  if constexpr (Plain<T>::optional) {
    return member ? to_value(*member) : Value{};
  } else if constexpr (std::is_enum_v<T>) {
    return ChoiceIndex{static_cast<std::uint8_t>(member)};
  } else {
    return member;
  }
}

template <typename T>
void from_value(T& member, Quantity quantity, const Value& value) {
  using U = typename Plain<T>::type;
  if constexpr (Plain<T>::optional) {
    if (std::holds_alternative<std::monostate>(value)) {
      member.reset();
      return;
    }
  }
  // A value of another type is a programmer's slip; it leaves the member alone.
  if constexpr (std::is_enum_v<U>) {
    if (const auto* v = std::get_if<ChoiceIndex>(&value)) member = static_cast<U>(v->index);
  } else if constexpr (std::is_same_v<U, double>) {
    if (const auto* v = std::get_if<double>(&value)) member = quantised(quantity, *v);
  } else {
    if (const auto* v = std::get_if<U>(&value)) member = *v;
  }
}

// Accessors through a chain of members: OfStation<Q, &Config::oven, &Oven::width_mm>.
template <Quantity Q, auto... Members>
struct OfStation {
  static Value get(const Config& c, std::size_t) { return to_value((c.*....*Members)); }
  static void set(Config& c, std::size_t, const Value& v) { from_value((c.*....*Members), Q, v); }
};
// A member of row `i` of a list: OfRow<Q, &Cook::name, &Config::cooks>.
template <Quantity Q, auto Member, auto... List>
struct OfRow {
  static Value get(const Config& c, std::size_t i) { return to_value((c.*....*List)[i].*Member); }
  static void set(Config& c, std::size_t i, const Value& v) {
    from_value((c.*....*List)[i].*Member, Q, v);
  }
};
template <Quantity Q, auto Member>
using OfCook = OfRow<Q, Member, &Config::cooks>;
template <Quantity Q, auto Member>
using OfPoint = OfRow<Q, Member, &Config::survey, &Survey::points>;
template <Quantity Q, auto Member>
using OfStock = OfRow<Q, Member, &Config::stock>;

using Words = std::span<const std::string_view>;

constexpr auto kLength = Quantity::Length;

// A row as it is written down. Read when compiled and never linked.
struct Row {
  Field field;
  FieldHelp help;
};

}  // namespace hs::config::rows

// One row of a group, whose accessor is Of<group>; the macros only spare each row its spelling.
#define FIELD(group, tag, path, Q, absent, lo, hi, step, words, rules, label, question, measure, \
              ...)                                                                               \
  Row {                                                                                          \
    {tag,                                                                                        \
     Group::group,                                                                               \
     path,                                                                                       \
     label,                                                                                      \
     Q,                                                                                          \
     absent,                                                                                     \
     lo,                                                                                         \
     hi,                                                                                         \
     step,                                                                                       \
     words,                                                                                      \
     &Of##group<Q, __VA_ARGS__>::get,                                                            \
     &Of##group<Q, __VA_ARGS__>::set},                                                           \
    {                                                                                            \
      question, measure, rules                                                                   \
    }                                                                                            \
  }
#define STATION(...) FIELD(Station, __VA_ARGS__)
#define COOK(...) FIELD(Cook, __VA_ARGS__)
#define POINT(...) FIELD(Point, __VA_ARGS__)
#define STOCK(...) FIELD(Stock, __VA_ARGS__)
