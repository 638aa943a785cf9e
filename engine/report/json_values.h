#pragma once
// Numbers into JSON at the report's quanta: 0.1 mm, 0.0001 of a share, 0.1 degree. What is absent
// or not finite becomes null, so that no report ever holds "nan".

#include <optional>
#include <string_view>

#include "engine/base/json_writer.h"

namespace hs::report {

void put_mm(JsonWriter& out, std::string_view key, const std::optional<double>& mm);
void put_deg(JsonWriter& out, std::string_view key, const std::optional<double>& deg);
void put_share(JsonWriter& out, std::string_view key, const std::optional<double>& share);
// At most this many decimals.
void put_number(JsonWriter& out, std::string_view key, const std::optional<double>& value,
                int decimals);
// Two decimals, down as times() says it: never up to a limit that it does not reach.
void put_factor(JsonWriter& out, std::string_view key, const std::optional<double>& factor);
// Two decimals; whole.
void put_flux(JsonWriter& out, std::string_view key, const std::optional<double>& kw_m2);
void put_lux(JsonWriter& out, std::string_view key, const std::optional<double>& lx);
void put_text(JsonWriter& out, std::string_view key, std::string_view text);
// Null where empty.
void put_text_or_null(JsonWriter& out, std::string_view key, std::string_view text);
void put_flag(JsonWriter& out, std::string_view key, bool value);
void put_null(JsonWriter& out, std::string_view key);

}  // namespace hs::report
