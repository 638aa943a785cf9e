#include "engine/config/json.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>

#include "engine/base/json_writer.h"
#include "engine/base/number_text.h"
#include "engine/base/text.h"

namespace hs::config {

namespace {

// The token around a byte, for a message: from the last separator before it to the next one.
std::string token_around(std::string_view text, std::size_t at) {
  constexpr std::string_view kSeparators = " \t\r\n,:[]{}";
  at = std::min(at, text.size());
  std::size_t first = at;
  while (first > 0 && kSeparators.find(text[first - 1]) == std::string_view::npos) --first;
  const std::size_t end = std::min(text.find_first_of(kSeparators, at), text.size());
  return shortened(text.substr(first, end - first), 30);
}

std::string place_of(std::string_view text, std::size_t at) {
  at = std::min(at, text.size());
  const auto upto = text.substr(0, at);
  const auto line = std::count(upto.begin(), upto.end(), '\n') + 1;
  const std::size_t start = upto.rfind('\n');  // npos + 1 is 0
  return "line " + std::to_string(line) + ", column " + std::to_string(at - (start + 1) + 1);
}

// Builds the tree event by event, because only the events show repeated keys and depth before
// memory is spent on them.
class Builder {
 public:
  using number_integer_t = nlohmann::json::number_integer_t;
  using number_unsigned_t = nlohmann::json::number_unsigned_t;
  using number_float_t = nlohmann::json::number_float_t;
  using string_t = nlohmann::json::string_t;
  using binary_t = nlohmann::json::binary_t;

  Builder(std::string_view text, Parsed& out) : text_(text), out_(out) {}

  bool null() { return add(Node{}) != nullptr; }
  bool boolean(bool value) {
    Node node;
    node.kind = Node::Kind::Flag;
    node.flag = value;
    return add(std::move(node)) != nullptr;
  }
  bool number_integer(number_integer_t value) { return add_number(std::to_string(value)); }
  bool number_unsigned(number_unsigned_t value) { return add_number(std::to_string(value)); }
  bool number_float(number_float_t, const string_t& digits) { return add_number(digits); }
  bool string(string_t& value) {
    Node node;
    node.kind = Node::Kind::Text;
    node.text = std::move(value);
    return add(std::move(node)) != nullptr;
  }
  bool binary(binary_t&) { return false; }  // no such thing in JSON text
  bool start_object(std::size_t) { return open(Node::Kind::Object); }
  bool start_array(std::size_t) { return open(Node::Kind::List); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(string_t& name) {
    Node& object = *open_.back();
    if (std::find(object.keys.begin(), object.keys.end(), name) != object.keys.end()) {
      out_.problems.push_back({path(&name), "the same key twice", "each key once"});
    }
    object.keys.push_back(name);
    return true;
  }
  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::detail::exception& why) {
    const std::size_t at = position == 0 ? 0 : position - 1;  // the library counts from 1
    constexpr int kNumberTooLarge = 406;                      // the library's out_of_range
    const std::string token = token_around(text_, at);
    std::string given;
    std::string allowed = "JSON text";
    if (why.id == kNumberTooLarge) {
      given = token;
      allowed = "a smaller number";
    } else if (at >= text_.size()) {
      given = text_.find_first_not_of(" \t\r\n") == std::string_view::npos ? "empty input"
                                                                           : "JSON that breaks off";
      allowed = "complete JSON text";
    } else {
      given = "broken JSON" + (token.empty() ? "" : " near " + token);
    }
    out_.problems.push_back({path(nullptr), given + " (" + place_of(text_, at) + ")", allowed});
    return false;
  }

 private:
  bool add_number(const std::string& digits) {
    const auto value = parse_decimal(digits);
    if (!value) {
      out_.problems.push_back({path(nullptr), shortened(digits), "a smaller number"});
      return false;
    }
    Node node;
    node.kind = Node::Kind::Number;
    node.number = *value;
    node.text = digits;
    return add(std::move(node)) != nullptr;
  }

  Node* add(Node&& node) {
    if (++values_ > kMostJsonValues) {
      out_.problems.push_back({"",
                               "a text of more than " + std::to_string(kMostJsonValues) + " values",
                               "a config, which has a few hundred"});
      return nullptr;
    }
    if (open_.empty()) {
      out_.root = std::move(node);
      return &out_.root;
    }
    // Only the innermost open node grows, so the pointers to its ancestors stay good.
    open_.back()->items.push_back(std::move(node));
    return &open_.back()->items.back();
  }

  bool open(Node::Kind kind) {
    if (open_.size() >= static_cast<std::size_t>(kDeepestJson)) {
      out_.problems.push_back({path(nullptr), "nesting deeper than " + std::to_string(kDeepestJson),
                               "at most " + std::to_string(kDeepestJson) + " levels"});
      return false;
    }
    Node node;
    node.kind = kind;
    Node* added = add(std::move(node));
    if (added == nullptr) return false;
    open_.push_back(added);
    return true;
  }

  bool close() {
    open_.pop_back();
    return true;
  }

  // Path of the value that is being read, or of `name` in the innermost object.
  std::string path(const std::string* name) const {
    std::string out;
    const auto append = [&out](const std::string& piece) {
      if (!out.empty()) out.push_back('.');
      out += shortened(piece);
    };
    for (const Node* node : open_) {
      const std::size_t begun = node->items.size();
      const bool innermost = node == open_.back();
      if (node->kind == Node::Kind::List) {
        append(std::to_string(innermost ? begun : begun - 1));
      } else if (innermost && name != nullptr) {
        append(*name);
      } else if (!node->keys.empty() && (!innermost || node->keys.size() > begun)) {
        append(node->keys.back());
      }
    }
    return shortened(out, 120);
  }

  std::string_view text_;
  Parsed& out_;
  std::vector<Node*> open_;
  std::size_t values_ = 0;
};

void write(JsonWriter& writer, const Node& node) {
  switch (node.kind) {
    case Node::Kind::Null:
      writer.null();
      return;
    case Node::Kind::Flag:
      writer.boolean(node.flag);
      return;
    case Node::Kind::Number:
      writer.number(node.text);
      return;
    case Node::Kind::Text:
      writer.string(node.text);
      return;
    case Node::Kind::List:
      writer.begin_list();
      for (const Node& item : node.items) write(writer, item);
      writer.end_list();
      return;
    case Node::Kind::Object:
      writer.begin_object();
      for (std::size_t i = 0; i < node.keys.size(); ++i) {
        writer.key(node.keys[i]);
        write(writer, node.items[i]);
      }
      writer.end_object();
      return;
  }
}

}  // namespace

Parsed parse_json(std::string_view text) {
  Parsed out;
  if (text.size() > kMostJsonBytes) {
    out.problems.push_back({"", "more than " + std::to_string(kMostJsonBytes) + " bytes of input",
                            "at most " + std::to_string(kMostJsonBytes) + " bytes"});
    return out;
  }
  Builder builder(text, out);
  out.complete = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
  return out;
}

std::string json_text(const Node& root) {
  JsonWriter writer;
  write(writer, root);
  return writer.take();
}

}  // namespace hs::config
