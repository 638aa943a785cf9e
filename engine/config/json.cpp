#include "engine/config/json.h"

#include <algorithm>
#include <cstdint>
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

// Reads the grammar of RFC 8259 into a tree. It calls itself for each level of nesting, of which
// there are at most kDeepestJson.
class Reader {
 public:
  Reader(std::string_view text, Parsed& out) : text_(text), out_(out) {}

  // False: reading stopped, and a problem says why.
  bool whole() {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (text_.starts_with(kByteOrderMark)) at_ = kByteOrderMark.size();
    if (!value()) return false;
    next();
    return at_ == text_.size() || broken();
  }

 private:
  // The byte at hand; zero at the end.
  char here() const { return at_ < text_.size() ? text_[at_] : '\0'; }
  // The same after spaces.
  char next() {
    at_ = std::min(text_.find_first_not_of(" \t\r\n", at_), text_.size());
    return here();
  }
  bool take(char wanted) {
    if (next() != wanted) return false;
    ++at_;
    return true;
  }

  bool value() {
    switch (next()) {
      case '{':
        return object();
      case '[':
        return list();
      case '"': {
        Node node;
        node.kind = Node::Kind::Text;
        return string(node.text) && add(std::move(node)) != nullptr;
      }
      case 't':
        return word("true", Node::Kind::Flag);
      case 'f':
        return word("false", Node::Kind::Flag);
      case 'n':
        return word("null", Node::Kind::Null);
      default:
        return number();
    }
  }

  bool object() {
    if (!open(Node::Kind::Object)) return false;
    ++at_;
    if (take('}')) return close();
    do {
      std::string name;
      if (next() != '"') return broken();
      if (!string(name)) return false;
      add_key(std::move(name));
      if (!take(':')) return broken();
      if (!value()) return false;
    } while (take(','));
    return take('}') ? close() : broken();
  }

  bool list() {
    if (!open(Node::Kind::List)) return false;
    ++at_;
    if (take(']')) return close();
    do {
      if (!value()) return false;
    } while (take(','));
    return take(']') ? close() : broken();
  }

  bool word(std::string_view letters, Node::Kind kind) {
    for (const char letter : letters) {
      if (here() != letter) return broken();
      ++at_;
    }
    Node node;
    node.kind = kind;
    node.flag = letters == "true";
    return add(std::move(node)) != nullptr;
  }

  // At least one digit.
  bool digits() {
    const std::size_t first = at_;
    while (here() >= '0' && here() <= '9') ++at_;
    return at_ > first || broken();
  }

  bool number() {
    const std::size_t first = at_;
    if (here() == '-') ++at_;
    // A zero in front stands alone.
    if (here() == '0') {
      ++at_;
    } else if (!digits()) {
      return false;
    }
    if (here() == '.') {
      ++at_;
      if (!digits()) return false;
    }
    if (here() == 'e' || here() == 'E') {
      ++at_;
      if (here() == '+' || here() == '-') ++at_;
      if (!digits()) return false;
    }
    const std::string_view written = text_.substr(first, at_ - first);
    return add_number(std::string(written == "-0" ? "0" : written));
  }

  // The four digits after "\u".
  std::optional<std::uint32_t> code_unit() {
    std::uint32_t unit = 0;
    for (int i = 0; i < 4; ++i, ++at_) {
      const char c = here();
      const char letter = static_cast<char>(c | 0x20);
      if (c >= '0' && c <= '9') {
        unit = unit * 16 + static_cast<std::uint32_t>(c - '0');
      } else if (letter >= 'a' && letter <= 'f') {
        unit = unit * 16 + static_cast<std::uint32_t>(letter - 'a' + 10);
      } else {
        return std::nullopt;
      }
    }
    return unit;
  }

  // What follows a backslash. Two halves of a character that UTF-16 writes as a pair come together.
  bool escape(std::string& out) {
    constexpr std::string_view kNames = "\"\\/bfnrt";
    constexpr std::string_view kMeanings = "\"\\/\b\f\n\r\t";
    const std::size_t named = at_ < text_.size() ? kNames.find(here()) : std::string_view::npos;
    if (named != std::string_view::npos) {
      out.push_back(kMeanings[named]);
      ++at_;
      return true;
    }
    if (here() != 'u') return broken();
    ++at_;
    auto unit = code_unit();
    if (!unit) return broken();
    constexpr std::uint32_t kHigh = 0xD800, kLow = 0xDC00, kBeyond = 0xE000;
    if (*unit >= kHigh && *unit < kBeyond) {
      const bool pair = *unit < kLow && text_.substr(at_).starts_with("\\u");
      if (!pair) return broken();
      at_ += 2;
      const auto low = code_unit();
      if (!low || *low < kLow || *low >= kBeyond) return broken();
      unit = 0x10000 + ((*unit - kHigh) << 10U) + (*low - kLow);
    }
    append_code_point(out, *unit);
    return true;
  }

  bool string(std::string& out) {
    ++at_;  // the quote
    while (here() != '"') {
      if (here() == '\\') {
        ++at_;
        if (!escape(out)) return false;
        continue;
      }
      const CodePoint point = code_point_at(text_, at_);
      // Also at the end, where there is none.
      if (point.bytes == 0 || point.value < 0x20) return broken();
      out += text_.substr(at_, point.bytes);
      at_ += point.bytes;
    }
    ++at_;
    return true;
  }

  void add_key(std::string&& name) {
    Node& object = *open_.back();
    if (std::find(object.keys.begin(), object.keys.end(), name) != object.keys.end()) {
      out_.problems.push_back({path(&name), "the same key twice", "each key once"});
    }
    object.keys.push_back(std::move(name));
  }

  // What stands at hand has no place there.
  bool broken() {
    const std::string token = token_around(text_, at_);
    std::string given;
    if (at_ < text_.size()) {
      given = "broken JSON" + (token.empty() ? "" : " near " + token);
    } else {
      const bool empty = text_.find_first_not_of(" \t\r\n") == std::string_view::npos;
      given = empty ? "empty input" : "JSON that breaks off";
    }
    out_.problems.push_back({path(nullptr), given + " (" + place_of(text_, at_) + ")",
                             at_ < text_.size() ? "JSON text" : "complete JSON text"});
    return false;
  }

  bool add_number(const std::string& digits) {
    const auto value = parse_decimal(digits);
    if (!value) {
      out_.problems.push_back({path(nullptr), shortened(digits) + " (" + place_of(text_, at_) + ")",
                               "a smaller number"});
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
  std::size_t at_ = 0;
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
  out.complete = Reader(text, out).whole();
  return out;
}

std::string json_text(const Node& root) {
  JsonWriter writer;
  write(writer, root);
  return writer.take();
}

}  // namespace hs::config
