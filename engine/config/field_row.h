#pragma once
// How a row of the field table is written down; for engine/config/fields.cpp and the parts of the
// table (rows_*.h) only. Ends with four macros, which fields.cpp undefines.

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
template <Quantity Q, auto Member>
struct OfCook {
  static Value get(const Config& c, std::size_t i) { return to_value(c.cooks[i].*Member); }
  static void set(Config& c, std::size_t i, const Value& v) {
    from_value(c.cooks[i].*Member, Q, v);
  }
};

template <Quantity Q, auto Member>
struct OfPoint {
  static Value get(const Config& c, std::size_t i) { return to_value(c.survey.points[i].*Member); }
  static void set(Config& c, std::size_t i, const Value& v) {
    from_value(c.survey.points[i].*Member, Q, v);
  }
};

template <Quantity Q, auto Member>
struct OfStock {
  static Value get(const Config& c, std::size_t i) { return to_value(c.stock[i].*Member); }
  static void set(Config& c, std::size_t i, const Value& v) {
    from_value(c.stock[i].*Member, Q, v);
  }
};

using Words = std::span<const std::string_view>;

constexpr auto kLength = Quantity::Length;

// A row as it is written down. Read when compiled and never linked.
struct Row {
  Field field;
  FieldHelp help;
};

}  // namespace hs::config::rows

// One row. The macros only spare each row its accessor's spelling.
#define STATION(tag, path, Q, absent, lo, hi, step, words, rules, label, question, measure, ...) \
  Row {                                                                                          \
    {tag,                                                                                        \
     Group::Station,                                                                             \
     path,                                                                                       \
     label,                                                                                      \
     Q,                                                                                          \
     absent,                                                                                     \
     lo,                                                                                         \
     hi,                                                                                         \
     step,                                                                                       \
     words,                                                                                      \
     &OfStation<Q, __VA_ARGS__>::get,                                                            \
     &OfStation<Q, __VA_ARGS__>::set},                                                           \
    {                                                                                            \
      question, measure, rules                                                                   \
    }                                                                                            \
  }
#define COOK(tag, path, Q, absent, lo, hi, step, words, rules, label, question, measure, member) \
  Row {                                                                                          \
    {tag,                                                                                        \
     Group::Cook,                                                                                \
     path,                                                                                       \
     label,                                                                                      \
     Q,                                                                                          \
     absent,                                                                                     \
     lo,                                                                                         \
     hi,                                                                                         \
     step,                                                                                       \
     words,                                                                                      \
     &OfCook<Q, member>::get,                                                                    \
     &OfCook<Q, member>::set},                                                                   \
    {                                                                                            \
      question, measure, rules                                                                   \
    }                                                                                            \
  }
#define STOCK(tag, path, Q, absent, lo, hi, step, words, rules, label, question, measure, member) \
  Row {                                                                                           \
    {tag,                                                                                         \
     Group::Stock,                                                                                \
     path,                                                                                        \
     label,                                                                                       \
     Q,                                                                                           \
     absent,                                                                                      \
     lo,                                                                                          \
     hi,                                                                                          \
     step,                                                                                        \
     words,                                                                                       \
     &OfStock<Q, member>::get,                                                                    \
     &OfStock<Q, member>::set},                                                                   \
    {                                                                                             \
      question, measure, rules                                                                    \
    }                                                                                             \
  }
#define POINT(tag, path, Q, absent, lo, hi, step, words, rules, label, question, measure, member) \
  Row {                                                                                           \
    {tag,                                                                                         \
     Group::Point,                                                                                \
     path,                                                                                        \
     label,                                                                                       \
     Q,                                                                                           \
     absent,                                                                                      \
     lo,                                                                                          \
     hi,                                                                                          \
     step,                                                                                        \
     words,                                                                                       \
     &OfPoint<Q, member>::get,                                                                    \
     &OfPoint<Q, member>::set},                                                                   \
    {                                                                                             \
      question, measure, rules                                                                    \
    }                                                                                             \
  }
