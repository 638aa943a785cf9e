#pragma once
// Published cutting lists with proven optima, and a walker that knows nothing of the planner.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "engine/cuts/boards.h"

namespace hs::test {

inline std::string cuts_file(const char* name) {
  const std::string path = std::string(HEARTHSIGHT_SOURCE_DIR) + "/tests/cuts/" + name;
  std::string text;
  if (std::FILE* file = std::fopen(path.c_str(), "rb")) {
    char block[4096];
    while (const std::size_t got = std::fread(block, 1, sizeof block, file))
      text.append(block, got);
    std::fclose(file);
  }
  return text;
}

struct PublishedBoards {
  std::string name;
  std::int64_t optimum = 0;
  cuts::BoardJob job;
};

// published_boards.txt: "NAME stock optimum length lengthxcount ...", one list a line.
inline std::vector<PublishedBoards> published_boards() {
  std::vector<PublishedBoards> lists;
  const std::string text = cuts_file("published_boards.txt");
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    std::vector<std::string> words(1);
    for (const char c : text.substr(at, end - at)) {
      if (c == ' ') {
        words.emplace_back();
      } else {
        words.back().push_back(c);
      }
    }
    at = end + 1;
    if (words.size() < 4 || words[0] == "#") continue;
    PublishedBoards list{words[0], std::atoll(words[2].c_str()), {}};
    list.job.stocks.push_back({});
    list.job.stocks[0].length = std::atoll(words[1].c_str());
    for (std::size_t i = 3; i < words.size(); ++i) {
      const std::size_t times = words[i].find('x');
      const int count = times == std::string::npos ? 1 : std::atoi(words[i].c_str() + times + 1);
      list.job.parts.insert(list.job.parts.end(), static_cast<std::size_t>(count),
                            std::atoll(words[i].c_str()));
    }
    lists.push_back(std::move(list));
  }
  return lists;
}

// What is wrong with a plan; empty: every part once, none on a defect, a cut between any two parts
// and before what is trimmed or blocked, no stock used more often than there is, the cost right.
inline std::string broken_by(const cuts::BoardJob& job, const cuts::BoardPlan& plan) {
  std::vector<int> seen(job.parts.size(), 0), used(job.stocks.size(), 0);
  std::int64_t cost = 0;
  for (const cuts::Board& board : plan.boards) {
    const cuts::BoardStock& stock = job.stocks[board.stock];
    cost += stock.cost;
    if (stock.count && ++used[board.stock] > *stock.count) return "more boards than there are";
    for (std::size_t i = 0; i < board.pieces.size(); ++i) {
      const cuts::Piece& piece = board.pieces[i];
      const std::int64_t end = piece.at + job.parts[piece.part];
      if (++seen[piece.part] > 1) return "a part twice";
      if (piece.at < stock.trim || end > stock.length - stock.trim) return "over the board's end";
      for (const cuts::Blocked& bad : stock.blocked) {
        if (bad.from < bad.to && piece.at < bad.to && bad.from < end) return "a part on a defect";
      }
      for (std::size_t k = 0; k < i; ++k) {
        const std::int64_t other = board.pieces[k].at;
        const std::int64_t other_end = other + job.parts[board.pieces[k].part];
        if (piece.at < other_end + job.kerf && other < end + job.kerf) return "no room for the cut";
      }
    }
  }
  for (const int times : seen) {
    if (times != 1) return "a part is missing";
  }
  if (cost != plan.cost) return "the cost is not the boards' cost";
  if (plan.lower_bound > plan.cost) return "the bound is above the answer";
  if (plan.proven != (plan.lower_bound == plan.cost)) return "proven without proof";
  return {};
}

// Longest first into the first board that takes it, on the only stock: what a person would do.
inline std::size_t first_fit_boards(const cuts::BoardJob& job) {
  std::vector<std::int64_t> parts = job.parts, left;
  std::sort(parts.rbegin(), parts.rend());
  for (const std::int64_t part : parts) {
    const std::int64_t size = part + job.kerf;
    const auto at =
        std::find_if(left.begin(), left.end(), [size](std::int64_t room) { return room >= size; });
    if (at != left.end()) {
      *at -= size;
    } else {
      left.push_back(job.stocks[0].length + job.kerf - size);
    }
  }
  return left.size();
}

}  // namespace hs::test
