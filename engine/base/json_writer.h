#pragma once
// JSON text from values, two spaces an indent, keys in the order they are given.
//
// Numbers arrive as text from base/number_text, so that every file shows the decimals it means.
// The caller keeps begin and end in step and gives a key before each member of an object.

#include <string>
#include <string_view>
#include <vector>

namespace hs {

// `text` with quotes and escapes; `text` must be valid UTF-8.
std::string json_string(std::string_view text);

class JsonWriter {
 public:
  void begin_object();
  void end_object();
  void begin_list();
  void end_list();
  void key(std::string_view name);
  void string(std::string_view text);
  void number(std::string_view digits);  // "12.5": already JSON
  void boolean(bool value);
  void null();

  // The whole text with a line break at its end. Leaves the writer empty.
  std::string take();

 private:
  void begin(char bracket);
  void end(char bracket);
  void separate();
  void new_line();

  std::string out_;
  std::vector<bool> filled_;  // for each open bracket: has it a member yet
  bool after_key_ = false;
};

}  // namespace hs
