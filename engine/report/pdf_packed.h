#pragma once
// Bytes made smaller for a PDF's streams: zlib's format (RFC 1950) around deflate (RFC 1951) with
// its fixed codes. Drawings are digits and repeat themselves: some third of their size is left.

#include <string>
#include <string_view>

namespace hs::report {

// Reads back as `bytes` with any reader of zlib's format. The same bytes give the same result.
std::string pdf_packed(std::string_view bytes);

}  // namespace hs::report
