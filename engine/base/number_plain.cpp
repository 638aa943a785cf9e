#include "engine/base/number_plain.h"

#include <cstdint>
#include <utility>

#include "engine/base/text.h"

namespace hs {
namespace {

constexpr std::size_t kLongestText = 64;  // more than any number takes, bytes
constexpr std::uint32_t kDegreeSign = 0xB0;
constexpr std::uint32_t kSubscriptZero = 0x2080;

struct Spelling {
  std::uint32_t code_point;
  const char* plain;
};
constexpr Spelling kSpellings[] = {
    {0xBD, " 1/2 "},   {0xBC, " 1/4 "},   {0xBE, " 3/4 "},                       // fractions
    {0x215B, " 1/8 "}, {0x215C, " 3/8 "}, {0x215D, " 5/8 "}, {0x215E, " 7/8 "},  // eighths
    {0x2018, "'"},     {0x2019, "'"},     {0x2032, "'"},                         // quotes, prime
    {0x201C, "\""},    {0x201D, "\""},    {0x2033, "\""},                        // double ones
    {0x2212, "-"},     {0x2010, "-"},     {0x2011, "-"},     {0x2013, "-"},      // minus, dashes
    {'\t', " "},       {0xA0, " "},       {0x2007, " "},                         // tab, hard spaces
    {0x2009, " "},     {0x202F, " "},                                            // thin spaces
};

std::optional<std::uint32_t> superscript_digit(std::uint32_t c) {
  if (c == 0xB9) return 1;
  if (c == 0xB2 || c == 0xB3) return c - 0xB0;
  if (c == 0x2070 || (c >= 0x2074 && c <= 0x2079)) return c - 0x2070;
  return std::nullopt;
}

char digit_character(std::uint32_t digit) { return static_cast<char>('0' + digit); }

class Plain {
 public:
  explicit Plain(bool degree_sign) : degree_sign_(degree_sign) {}

  // False: the character has no place here.
  bool add(std::uint32_t c) {
    if (const auto digit = superscript_digit(c)) {
      if (last_ != Last::Superscript) out_.push_back(' ');
      out_.push_back(digit_character(*digit));
      last_ = Last::Superscript;
      return true;
    }
    if (c >= kSubscriptZero && c <= kSubscriptZero + 9) {
      if (last_ != Last::Slash && last_ != Last::Subscript) return false;
      out_.push_back(digit_character(c - kSubscriptZero));
      last_ = Last::Subscript;
      return true;
    }
    const bool slash = c == '/' || c == 0x2044 || c == 0x2215;
    // Raised digits are the top of a fraction, never a power.
    if (last_ == Last::Superscript && !slash) return false;
    last_ = slash ? Last::Slash : Last::Other;
    if (slash) c = '/';
    if (c >= 'A' && c <= 'Z') c += 'a' - 'A';
    if (c >= ' ' && c < 0x7F) {
      out_.push_back(static_cast<char>(c));
      return true;
    }
    return add_mark(c);
  }

  bool complete() const { return last_ != Last::Superscript; }
  std::string take() { return std::move(out_); }

 private:
  enum class Last { Other, Superscript, Slash, Subscript };

  bool add_mark(std::uint32_t c) {
    if (c == kDegreeSign && degree_sign_) {
      out_.push_back(' ');
      return true;
    }
    for (const Spelling& spelling : kSpellings) {
      if (spelling.code_point != c) continue;
      out_ += spelling.plain;
      return true;
    }
    return false;
  }

  bool degree_sign_;
  std::string out_;
  Last last_ = Last::Other;
};

}  // namespace

std::optional<std::string> plain_number(std::string_view text, bool degree_sign) {
  if (text.size() > kLongestText) return std::nullopt;
  Plain plain(degree_sign);
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = code_point_at(text, at);
    if (point.bytes == 0 || !plain.add(point.value)) return std::nullopt;
    at += point.bytes;
  }
  if (!plain.complete()) return std::nullopt;
  std::string out = plain.take();
  // Two apostrophes are how a keyboard without an inch mark spells it.
  for (std::size_t at = out.find("''"); at != std::string::npos; at = out.find("''", at)) {
    out.replace(at, 2, "\"");
  }
  return std::string(trimmed_ends(out));
}

}  // namespace hs
