#include <algorithm>
#include <cmath>
#include <cstddef>

#include "engine/base/text.h"
#include "engine/config/json.h"
#include "engine/report/cut_json.h"

namespace hs::report {
namespace {

using config::Node;

std::string range_text(std::int64_t least, std::int64_t most) {
  return "a whole number from " + std::to_string(least) + " to " + std::to_string(most);
}

std::string item(std::string_view list, std::size_t index) {
  return std::string(list) + "." + std::to_string(index);
}

// Walks an object's members and collects what is wrong.
class Reader {
 public:
  explicit Reader(std::vector<Problem>& problems) : problems_(problems) {}

  void problem(std::string path, std::string given, std::string allowed) {
    problems_.push_back({std::move(path), std::move(given), std::move(allowed)});
  }

  std::int64_t whole(const Node& node, const std::string& path, std::int64_t least,
                     std::int64_t most) {
    const bool good = node.kind == Node::Kind::Number && node.number == std::floor(node.number) &&
                      node.number >= static_cast<double>(least) &&
                      node.number <= static_cast<double>(most);
    if (good) return static_cast<std::int64_t>(node.number);
    problem(path, config::shown(node), range_text(least, most));
    return least;
  }

  bool is_list(const Node& node, const std::string& path, const char* of) {
    if (node.kind == Node::Kind::List) return true;
    problem(path, config::shown(node), of);
    return false;
  }

  // Every key must be one of `known`, or is passed over on purpose.
  void check_keys(const Node& object, const std::string& path,
                  const std::vector<std::string_view>& known) {
    for (const std::string& key : object.keys) {
      if (std::find(known.begin(), known.end(), key) != known.end()) continue;
      std::string allowed;
      for (const std::string_view name : known) {
        allowed += (allowed.empty() ? "one of " : ", ") + std::string(name);
      }
      problem(path.empty() ? shortened(key) : path + "." + shortened(key), "an unknown key",
              allowed);
    }
  }

 private:
  std::vector<Problem>& problems_;
};

// What published instances say beside the job.
bool is_passed_over(const std::string& key) {
  constexpr std::string_view kNames[] = {"name",  "unit",      "proof",       "solution",
                                         "grain", "cut_trees", "kerf_plus_1", "ffd_boards"};
  return key.starts_with("optimal_") ||
         std::find(std::begin(kNames), std::end(kNames), key) != std::end(kNames);
}

void read_defects(Reader& in, const Node& node, const std::string& path, cuts::BoardStock& stock) {
  if (!in.is_list(node, path, "a list of [from, to]")) return;
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    const Node& pair = node.items[i];
    if (pair.kind != Node::Kind::List || pair.items.size() != 2) {
      in.problem(item(path, i), config::shown(pair), "[from, to] along the board");
      continue;
    }
    const std::int64_t from = in.whole(pair.items[0], item(path, i) + ".0", 0, stock.length - 1);
    const std::int64_t to = in.whole(pair.items[1], item(path, i) + ".1", from + 1, stock.length);
    stock.blocked.push_back({from, to});
  }
}

std::int64_t read_trim(Reader& in, const Node* node, const std::string& path, std::int64_t length) {
  return node == nullptr ? 0 : in.whole(*node, path, 0, (length - 1) / 2);
}

void read_stocks(Reader& in, const Node& node, cuts::BoardJob& job) {
  if (!in.is_list(node, "stocks", "a list of {\"length\", \"cost\"}")) return;
  if (node.items.empty() || node.items.size() > cuts::kMostStocks) {
    in.problem("stocks", std::to_string(node.items.size()) + " stocks",
               "1 to " + std::to_string(cuts::kMostStocks));
    return;
  }
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    const Node& one = node.items[i];
    const std::string path = item("stocks", i);
    if (one.kind != Node::Kind::Object) {
      in.problem(path, config::shown(one), "an object with length and cost");
      continue;
    }
    in.check_keys(one, path, {"length", "cost", "count", "trim", "defects"});
    cuts::BoardStock stock;
    const Node* count = one.find("count");
    if (count != nullptr && count->kind != Node::Kind::Null) {
      stock.count = static_cast<int>(in.whole(*count, path + ".count", 0, cuts::kMostParts));
    }
    const Node* length = one.find("length");
    const Node* cost = one.find("cost");
    if (length == nullptr) {
      in.problem(path + ".length", "", "missing; give " + range_text(1, cuts::kLongestBoard));
      continue;
    }
    stock.length = in.whole(*length, path + ".length", 1, cuts::kLongestBoard);
    // What there is a count of may be free: it is in the shop already.
    const std::int64_t least = stock.count ? 0 : 1;
    if (cost == nullptr) {
      in.problem(path + ".cost", "", "missing; give " + range_text(least, cuts::kMostCost));
    } else {
      stock.cost = in.whole(*cost, path + ".cost", least, cuts::kMostCost);
    }
    stock.trim = read_trim(in, one.find("trim"), path + ".trim", stock.length);
    if (const Node* defects = one.find("defects")) {
      read_defects(in, *defects, path + ".defects", stock);
    }
    job.stocks.push_back(std::move(stock));
  }
}

void read_lengths(Reader& in, const Node& node, cuts::BoardJob& job) {
  if (!in.is_list(node, "parts", "a list of lengths")) return;
  if (node.items.size() > cuts::kMostParts) {
    in.problem("parts", std::to_string(node.items.size()) + " parts",
               "at most " + std::to_string(cuts::kMostParts));
    return;
  }
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    job.parts.push_back(in.whole(node.items[i], item("parts", i), 1, cuts::kLongestBoard));
  }
}

// The longest part that every uncounted stock together can give; 0: there is none.
std::int64_t longest_room(const cuts::BoardJob& job) {
  std::int64_t low = 0, high = 0;
  for (const cuts::BoardStock& stock : job.stocks) {
    if (!stock.count) high = std::max(high, stock.length);
  }
  while (low < high) {
    const std::int64_t middle = low + (high - low + 1) / 2;
    if (cuts::holds_any(job, middle)) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  return low;
}

void check_fit(Reader& in, const cuts::BoardJob& job, bool priced) {
  const std::int64_t longest = longest_room(job);
  if (longest == 0) {
    in.problem(priced ? "stocks" : "stock", "no length to cut from",
               "a stock without a count that holds the longest part");
    return;
  }
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    if (job.parts[i] <= longest) continue;
    in.problem(
        item("parts", i), std::to_string(job.parts[i]),
        "at most " + std::to_string(longest) + ", the longest that a stock without a count holds");
  }
}

void check_own_keys(Reader& in, const Node& root, const std::vector<std::string_view>& known) {
  Node own = root;
  own.keys.erase(std::remove_if(own.keys.begin(), own.keys.end(), is_passed_over), own.keys.end());
  in.check_keys(own, "", known);
}

void read_boards(Reader& in, const Node& root, CutJob& job) {
  check_own_keys(in, root, {"stock", "stocks", "kerf", "trim", "parts"});
  const Node* stock = root.find("stock");
  const Node* stocks = root.find("stocks");
  const Node* trim = root.find("trim");
  if (stock != nullptr && stocks != nullptr) {
    in.problem("stock", "beside stocks", "one of the two");
  } else if (stocks != nullptr) {
    job.priced = true;
    read_stocks(in, *stocks, job.boards);
    if (trim != nullptr) in.problem("trim", "beside stocks", "it inside each of the stocks");
  } else if (stock != nullptr) {
    cuts::BoardStock one;
    one.length = in.whole(*stock, "stock", 1, cuts::kLongestBoard);
    one.trim = read_trim(in, trim, "trim", one.length);
    job.boards.stocks.push_back(one);
  } else {
    in.problem("stock", "",
               "missing; give " + range_text(1, cuts::kLongestBoard) +
                   ", stocks with lengths and costs, or a sheet's [width, height]");
  }
  if (const Node* kerf = root.find("kerf")) {
    job.boards.kerf = in.whole(*kerf, "kerf", 0, cuts::kLongestBoard);
  }
  const Node* parts = root.find("parts");
  if (parts == nullptr) {
    in.problem("parts", "", "missing; give a list of lengths");
  } else {
    read_lengths(in, *parts, job.boards);
  }
}

cuts::SheetPart read_sides(Reader& in, const Node& node, const std::string& path) {
  if (node.kind != Node::Kind::List || node.items.size() != 2) {
    in.problem(path, config::shown(node), "[width, height]");
    return {1, 1};
  }
  return {in.whole(node.items[0], item(path, 0), 1, cuts::kLongestSide),
          in.whole(node.items[1], item(path, 1), 1, cuts::kLongestSide)};
}

void read_sheets(Reader& in, const Node& root, cuts::SheetJob& job) {
  for (const char* key : {"stock", "stocks"}) {
    if (root.find(key) != nullptr) in.problem(key, "beside sheet", "one of the two");
  }
  check_own_keys(in, root, {"sheet", "kerf", "turn", "trim", "parts", "stock", "stocks"});
  const cuts::SheetPart sheet = read_sides(in, *root.find("sheet"), "sheet");
  job.width = sheet.width;
  job.height = sheet.height;
  if (const Node* kerf = root.find("kerf")) {
    job.kerf = in.whole(*kerf, "kerf", 0, cuts::kLongestSide);
  }
  job.trim = read_trim(in, root.find("trim"), "trim", std::min(job.width, job.height));
  if (const Node* turn = root.find("turn")) {
    job.turn = turn->kind == Node::Kind::Flag && turn->flag;
    if (turn->kind != Node::Kind::Flag) in.problem("turn", config::shown(*turn), "true or false");
  }
  const Node* parts = root.find("parts");
  if (parts == nullptr) {
    in.problem("parts", "", "missing; give a list of [width, height]");
  } else if (in.is_list(*parts, "parts", "a list of [width, height]")) {
    if (parts->items.size() > cuts::kMostSheetParts) {
      in.problem("parts", std::to_string(parts->items.size()) + " parts",
                 "at most " + std::to_string(cuts::kMostSheetParts));
      return;
    }
    for (std::size_t i = 0; i < parts->items.size(); ++i) {
      job.parts.push_back(read_sides(in, parts->items[i], item("parts", i)));
    }
  }
}

void check_sheet_parts(Reader& in, const cuts::SheetJob& job) {
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    const cuts::SheetPart& part = job.parts[i];
    if (cuts::sheet_holds(job, part)) continue;
    in.problem(item("parts", i), std::to_string(part.width) + " x " + std::to_string(part.height),
               "at most " + std::to_string(job.width - 2 * job.trim) + " x " +
                   std::to_string(job.height - 2 * job.trim) +
                   (job.turn ? ", turned or not" : ", not turned: the grain runs one way"));
  }
}

}  // namespace

Result<CutJob> read_cut_job(std::string_view text) {
  const config::Parsed parsed = config::parse_json(text);
  std::vector<Problem> problems = parsed.problems;
  if (!parsed.complete || !problems.empty()) return problems;
  const Node& root = parsed.root;
  if (root.kind != Node::Kind::Object) {
    return Problem{"", config::shown(root),
                   "an object with stock, stocks or sheet, kerf and parts"};
  }
  Reader in(problems);
  CutJob job;
  if (root.find("sheet") != nullptr) {
    read_sheets(in, root, job.sheets.emplace());
    if (problems.empty()) check_sheet_parts(in, *job.sheets);
  } else {
    read_boards(in, root, job);
    if (problems.empty()) check_fit(in, job.boards, job.priced);
  }
  if (!problems.empty()) return problems;
  return job;
}

}  // namespace hs::report
