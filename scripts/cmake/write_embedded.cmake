# Run by hearthsight_embed: writes FOLDER/SYMBOL.h and .cpp with the bytes of INPUT.
file(READ "${INPUT}" bytes HEX)
string(LENGTH "${bytes}" digits)
math(EXPR size "${digits} / 2")
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${bytes}")
# Long lines slow editors and compilers down.
string(REGEX REPLACE "((0x[0-9a-f][0-9a-f],){20})" "\\1\n" bytes "${bytes}")
file(WRITE "${FOLDER}/${SYMBOL}.h"
"#pragma once
#include <string_view>
namespace hearthsight::embedded {
std::string_view ${SYMBOL}();
}
")
file(WRITE "${FOLDER}/${SYMBOL}.cpp"
"#include \"${SYMBOL}.h\"
#include <cstddef>
namespace hearthsight::embedded {
namespace {
constexpr std::size_t kSize = ${size};
// The zero at the end is not counted; it keeps an empty file legal.
constexpr unsigned char kBytes[kSize + 1] = {
${bytes}0};
}  // namespace
std::string_view ${SYMBOL}() { return {reinterpret_cast<const char*>(kBytes), kSize}; }
}  // namespace hearthsight::embedded
")
