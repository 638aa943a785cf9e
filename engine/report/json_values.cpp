#include "engine/report/json_values.h"

#include <cassert>
#include <cmath>

#include "engine/base/number_text.h"

namespace hs::report {
namespace {

constexpr int kMmDecimals = 1, kDegDecimals = 1, kShareDecimals = 4;
constexpr int kFluxDecimals = 2, kLuxDecimals = 0;

}  // namespace

void put_number(JsonWriter& out, std::string_view key, const std::optional<double>& value,
                int decimals) {
  out.key(key);
  // The engine promises finite numbers; a release that breaks the promise still writes JSON.
  assert(!value || std::isfinite(*value));
  if (value && std::isfinite(*value)) {
    out.number(trimmed(*value, decimals));
  } else {
    out.null();
  }
}

void put_mm(JsonWriter& out, std::string_view key, const std::optional<double>& mm) {
  put_number(out, key, mm, kMmDecimals);
}

void put_deg(JsonWriter& out, std::string_view key, const std::optional<double>& deg) {
  put_number(out, key, deg, kDegDecimals);
}

void put_share(JsonWriter& out, std::string_view key, const std::optional<double>& share) {
  put_number(out, key, share, kShareDecimals);
}

void put_factor(JsonWriter& out, std::string_view key, const std::optional<double>& factor) {
  constexpr double kHundredths = 100;
  put_number(
      out, key,
      factor ? std::optional(std::floor(*factor * kHundredths + 1e-6) / kHundredths) : factor, 2);
}

void put_flux(JsonWriter& out, std::string_view key, const std::optional<double>& kw_m2) {
  put_number(out, key, kw_m2, kFluxDecimals);
}

void put_lux(JsonWriter& out, std::string_view key, const std::optional<double>& lx) {
  put_number(out, key, lx, kLuxDecimals);
}

void put_text(JsonWriter& out, std::string_view key, std::string_view text) {
  out.key(key);
  out.string(text);
}

void put_text_or_null(JsonWriter& out, std::string_view key, std::string_view text) {
  if (text.empty()) {
    put_null(out, key);
  } else {
    put_text(out, key, text);
  }
}

void put_flag(JsonWriter& out, std::string_view key, bool value) {
  out.key(key);
  out.boolean(value);
}

void put_null(JsonWriter& out, std::string_view key) {
  out.key(key);
  out.null();
}

}  // namespace hs::report
