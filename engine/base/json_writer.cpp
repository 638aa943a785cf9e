#include "engine/base/json_writer.h"

#include <utility>

namespace hs {

std::string json_string(std::string_view text) {
  constexpr char kHex[] = "0123456789abcdef";
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out.push_back('\\');
      out.push_back(c);
    } else if (byte < 0x20 || byte == 0x7F) {
      out += "\\u00";
      out.push_back(kHex[byte >> 4U]);
      out.push_back(kHex[byte & 0x0FU]);
    } else {
      out.push_back(c);
    }
  }
  out.push_back('"');
  return out;
}

void JsonWriter::new_line() {
  out_.push_back('\n');
  out_.append(2 * filled_.size(), ' ');
}

void JsonWriter::separate() {
  if (after_key_) {
    after_key_ = false;
    return;
  }
  if (filled_.empty()) return;
  if (filled_.back()) out_.push_back(',');
  filled_.back() = true;
  new_line();
}

void JsonWriter::begin(char bracket) {
  separate();
  out_.push_back(bracket);
  filled_.push_back(false);
}

void JsonWriter::end(char bracket) {
  const bool filled = filled_.back();
  filled_.pop_back();
  if (filled) new_line();
  out_.push_back(bracket);
}

void JsonWriter::begin_object() { begin('{'); }
void JsonWriter::end_object() { end('}'); }
void JsonWriter::begin_list() { begin('['); }
void JsonWriter::end_list() { end(']'); }

void JsonWriter::key(std::string_view name) {
  separate();
  out_ += json_string(name);
  out_ += ": ";
  after_key_ = true;
}

void JsonWriter::string(std::string_view text) {
  separate();
  out_ += json_string(text);
}

void JsonWriter::number(std::string_view digits) {
  separate();
  out_ += digits;
}

void JsonWriter::boolean(bool value) { number(value ? "true" : "false"); }
void JsonWriter::null() { number("null"); }

std::string JsonWriter::take() {
  out_.push_back('\n');
  filled_.clear();
  after_key_ = false;
  return std::exchange(out_, {});
}

}  // namespace hs
