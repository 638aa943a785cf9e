// What the shop has and what came out of it: the stock list's rows, and pieces that are measured
// when they are built. All of it comes after the first picture.

#include <cstddef>
#include <string>
#include <utility>

#include "engine/config/fields.h"
#include "engine/config/stock_csv.h"
#include "engine/frame/as_built.h"
#include "web/session/session.h"

namespace hs::web {

std::vector<Problem> Session::add_stock() {
  const config::List& list = *config::list_of(config::Group::Stock);
  config::Config next = config_;
  if (next.stock.size() >= list.most) {
    return {{"stock", "one more row", "at most " + std::to_string(list.most) + " rows"}};
  }
  config::set_rows(next, config::Group::Stock, next.stock.size() + 1);
  return adopt(std::move(next));
}

std::vector<Problem> Session::remove_stock(std::size_t index) {
  config::Config next = config_;
  if (index >= next.stock.size()) {
    return {{"stock", "row " + std::to_string(index + 1), "one of the rows"}};
  }
  next.stock.erase(next.stock.begin() + static_cast<std::ptrdiff_t>(index));
  return adopt(std::move(next));
}

std::vector<Problem> Session::open_stock(std::string_view csv) {
  Result<config::Config> next = config::with_stock(config_, csv);
  if (!next) return next.error();
  return adopt(std::move(next.value()));
}

std::vector<Problem> Session::set_built(std::string_view name, std::string_view size,
                                        report::Units bare) {
  const Result<std::string> text =
      frame::with_built(config_.frame.as_built, name, size, report::unit_of(bare));
  std::vector<Problem> problems = text ? set_field("frame.as_built", *text, bare) : text.error();
  // What is wrong is told where this one is typed.
  for (Problem& problem : problems) problem.path = "frame.as_built." + std::string(name);
  if (!problems.empty()) last_error = sentence(problems.front());
  return problems;
}

}  // namespace hs::web
