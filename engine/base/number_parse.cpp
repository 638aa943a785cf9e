// The reading half of number_text.
#include <algorithm>
#include <cmath>
#include <cstdint>

#include "engine/base/number_plain.h"
#include "engine/base/number_text.h"

namespace hs {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return c >= 'a' && c <= 'z'; }

// mantissa * 10^exponent. Exact while both sides are exact doubles, which covers 15 digits.
double scaled(std::uint64_t mantissa, int exponent) {
  constexpr int kExactTens = 22;  // 10^22 is the largest power of ten that is a double
  double value = static_cast<double>(mantissa);
  while (exponent != 0 && value != 0 && std::isfinite(value)) {
    const int step = std::min(std::abs(exponent), kExactTens);
    double ten = 1;
    for (int i = 0; i < step; ++i) ten *= 10;
    value = exponent > 0 ? value * ten : value / ten;
    exponent += exponent > 0 ? -step : step;
  }
  return value;
}

// Collects decimal digits; those past the 18th only move the exponent.
struct Digits {
  std::uint64_t mantissa = 0;
  int count = 0;
  int exponent = 0;

  void add(char digit, bool after_mark) {
    ++count;
    if (mantissa < 100'000'000'000'000'000) {
      mantissa = mantissa * 10 + static_cast<std::uint64_t>(digit - '0');
      if (after_mark) --exponent;
    } else if (!after_mark) {
      ++exponent;
    }
  }
};

enum class Mark { None, Mm, Cm, M, Inch, Foot };

struct Number {
  double value = 0;
  bool fraction = false;
  bool whole = true;
  bool maybe_thousands = false;  // "1,051": a comma before exactly three digits
};

struct Part {
  Number number;
  Mark mark = Mark::None;
};

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  bool at_end() const { return at_ == text_.size(); }
  std::string_view rest() const { return text_.substr(at_); }
  void skip_spaces() {
    while (peek() == ' ') ++at_;
  }
  bool take(char c) {
    if (peek() != c) return false;
    ++at_;
    return true;
  }

  // -1 or 1; one sign at most.
  double sign() {
    const double out = peek() == '-' ? -1 : 1;
    if (peek() == '-' || peek() == '+') ++at_;
    skip_spaces();
    return out;
  }

  // "41", "41.375", "3/8", "41 3/8", "41-3/8".
  std::optional<Number> number() {
    const std::size_t start = at_;
    Digits digits;
    while (is_digit(peek())) digits.add(text_[at_++], false);
    const int before_mark = digits.count;
    if ((peek() == '.' || peek() == ',') && is_digit(peek(1))) {
      const bool comma = text_[at_++] == ',';
      while (is_digit(peek())) digits.add(text_[at_++], true);
      if (digits.count > kMostDigits) return std::nullopt;
      const bool grouped = comma && before_mark >= 1 && before_mark <= 3 && text_[start] != '0' &&
                           digits.count - before_mark == 3;
      return Number{scaled(digits.mantissa, digits.exponent), false, false, grouped};
    }
    if (before_mark == 0 || before_mark > kMostDigits) return std::nullopt;
    const double whole = static_cast<double>(digits.mantissa);
    if (peek() == '/') return fraction(0, whole);
    const std::size_t after_whole = at_;
    if (!take('-')) skip_spaces();
    if (is_digit(peek())) {
      Digits top;
      while (is_digit(peek())) top.add(text_[at_++], false);
      if (top.count <= kMostDigits && peek() == '/') {
        const double top_value = static_cast<double>(top.mantissa);
        const auto mixed = fraction(whole, top_value);
        // "41 11/8" is a slip, not a length.
        if (!mixed || mixed->value >= whole + 1) return std::nullopt;
        return mixed;
      }
    }
    at_ = after_whole;
    return Number{whole, false, true, false};
  }

  // The unit at the cursor; None where there is none.
  Mark mark() {
    skip_spaces();
    if (take('\'')) return Mark::Foot;
    if (take('"')) return Mark::Inch;
    struct Word {
      std::string_view text;
      Mark mark;
    };
    constexpr Word kWords[] = {{"mm", Mark::Mm},   {"cm", Mark::Cm},     {"m", Mark::M},
                               {"in", Mark::Inch}, {"inch", Mark::Inch}, {"inches", Mark::Inch},
                               {"ft", Mark::Foot}, {"foot", Mark::Foot}, {"feet", Mark::Foot}};
    std::size_t end = at_;
    while (end < text_.size() && is_letter(text_[end])) ++end;
    for (const Word& word : kWords) {
      if (text_.substr(at_, end - at_) != word.text) continue;
      at_ = end;
      if (word.mark == Mark::Inch || word.mark == Mark::Foot) take('.');
      return word.mark;
    }
    return Mark::None;
  }

  std::optional<Part> part() {
    const auto read = number();
    if (!read) return std::nullopt;
    return Part{*read, mark()};
  }

 private:
  static constexpr int kMostDigits = 15;  // beyond these a double is not exact

  char peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
  }

  // The cursor is on the slash.
  std::optional<Number> fraction(double whole, double top) {
    ++at_;
    Digits bottom;
    while (is_digit(peek())) bottom.add(text_[at_++], false);
    if (bottom.mantissa == 0 || bottom.count > 4) return std::nullopt;
    return Number{whole + top / static_cast<double>(bottom.mantissa), true, false, false};
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

double mm_per(Mark mark) {
  switch (mark) {
    case Mark::Cm:
      return 10;
    case Mark::M:
      return 1000;
    case Mark::Inch:
      return 25.4;
    case Mark::Foot:
      return 304.8;
    case Mark::None:
    case Mark::Mm:
      return 1;
  }
  return 1;
}

struct Suffix {
  Quantity quantity;
  std::string_view text;
  ShownUnit unit;
};
constexpr ShownUnit own{};
constexpr ShownUnit customary(Quantity quantity) { return shown_unit(quantity, Unit::Inch); }
constexpr Suffix kSuffixes[] = {
    {Quantity::Temperature, "c", own},
    {Quantity::Temperature, "f", customary(Quantity::Temperature)},
    {Quantity::Mass, "kg", own},
    {Quantity::Mass, "lb", customary(Quantity::Mass)},
    {Quantity::Mass, "lbs", customary(Quantity::Mass)},
    {Quantity::Angle, "deg", own},
    {Quantity::Angle, "degrees", own},
    {Quantity::Years, "years", own},
    {Quantity::Years, "year", own},
    {Quantity::Speed, "m/s", own},
    {Quantity::Speed, "mph", customary(Quantity::Speed)},
    {Quantity::Speed, "km/h", {{}, 1 / 3.6}},
    {Quantity::Speed, "kn", {{}, 1852.0 / 3600}},
    {Quantity::Power, "w", own},
    {Quantity::Power, "watts", own},
    {Quantity::Share, "%", {{}, 0.01}},
    {Quantity::Flux, "lm", own},
    {Quantity::Flux, "lumens", own},
};

}  // namespace

std::optional<double> parse_decimal(std::string_view text) {
  std::size_t at = 0;
  const bool negative = !text.empty() && text[0] == '-';
  if (negative) ++at;
  Digits digits;
  bool after_mark = false;
  for (; at < text.size(); ++at) {
    if (is_digit(text[at])) {
      digits.add(text[at], after_mark);
    } else if ((text[at] == '.' || text[at] == ',') && !after_mark) {
      after_mark = true;
    } else {
      break;
    }
  }
  if (digits.count == 0 || !is_digit(text[at - 1])) return std::nullopt;
  if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
    ++at;
    const bool down = at < text.size() && text[at] == '-';
    if (at < text.size() && (text[at] == '-' || text[at] == '+')) ++at;
    const std::size_t first = at;
    int exponent = 0;
    for (; at < text.size() && is_digit(text[at]); ++at) {
      exponent = std::min(exponent * 10 + (text[at] - '0'), 100'000);
    }
    if (at == first) return std::nullopt;
    digits.exponent += down ? -exponent : exponent;
  }
  if (at != text.size()) return std::nullopt;
  const double value = scaled(digits.mantissa, digits.exponent);
  if (!std::isfinite(value)) return std::nullopt;
  return negative ? -value : value;
}

std::optional<double> parse_length_mm(std::string_view text, Unit bare) {
  const auto plain = plain_number(text, false);
  if (!plain) return std::nullopt;
  Reader reader(*plain);
  const double sign = reader.sign();
  auto first = reader.part();
  if (!first) return std::nullopt;
  if (first->mark == Mark::None) {
    first->mark = first->number.fraction || bare == Unit::Inch ? Mark::Inch : Mark::Mm;
  }
  const bool fine = first->mark == Mark::Mm || first->mark == Mark::Cm;
  if (fine && first->number.maybe_thousands) return std::nullopt;
  double mm = first->number.value * mm_per(first->mark);
  reader.skip_spaces();
  if (first->mark == Mark::Foot && !reader.at_end()) {
    if (reader.take('-')) reader.skip_spaces();
    const auto second = reader.part();
    const bool inches = second && (second->mark == Mark::Inch || second->mark == Mark::None);
    if (!inches || !first->number.whole || second->number.value >= 12) return std::nullopt;
    mm += second->number.value * mm_per(Mark::Inch);
    reader.skip_spaces();
  }
  if (!reader.at_end()) return std::nullopt;
  return sign * mm;
}

std::optional<double> parse_number(Quantity quantity, std::string_view text, Unit bare) {
  if (quantity == Quantity::Length) return parse_length_mm(text, bare);
  const auto plain = plain_number(text, true);
  if (!plain) return std::nullopt;
  Reader reader(*plain);
  const double sign = reader.sign();
  const auto number = reader.number();
  if (!number || number->fraction || number->maybe_thousands) return std::nullopt;
  reader.skip_spaces();
  if (reader.at_end()) return shown_unit(quantity, bare).to_own(sign * number->value);
  for (const Suffix& suffix : kSuffixes) {
    if (suffix.quantity == quantity && suffix.text == reader.rest()) {
      return suffix.unit.to_own(sign * number->value);
    }
  }
  return std::nullopt;
}

}  // namespace hs
