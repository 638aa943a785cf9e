#pragma once
// The linear relaxation: boards may be bought in parts. Column generation (Gilmore and Gomory
// 1961): a price for every size, then the filling that earns most at those prices, until none earns
// more than it costs. Only + - * / on doubles, so that every machine takes the same way; what is
// claimed as a bound is checked in whole numbers.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "engine/cuts/knapsack.h"
#include "engine/cuts/lines.h"

namespace hs::cuts {

// Whole prices that no filling beats: for every filling of bin b, the sum of its sizes' values is
// at most scale * cost_b + spare_b. So no plan costs less than total / scale.
struct Prices {
  std::int64_t scale = 0;           // 0: none found yet
  std::vector<std::int64_t> value;  // of each size of Lines
  std::vector<std::int64_t> spare;  // of each bin; 0 for uncounted ones
  std::int64_t total = 0;           // demand * value - count * spare

  std::int64_t bound(const Lines& lines) const;
};

struct Share {
  std::size_t column = 0;  // in the pool
  double boards = 0;
};

class Relaxation {
 public:
  // Columns that fit `rest` are taken from the pool, and new ones are put there. At most
  // kMostSizes sizes may be left in `rest`.
  Relaxation(const Lines& lines, Rest rest, std::vector<Fill>& pool);

  // One column more. False when the relaxation is solved, or goes on without gain.
  bool improve(Meter& meter);
  // The best bound so far, over the sizes in `rest`.
  const Prices& prices() const { return prices_; }
  std::vector<Share> solution() const;

  static constexpr std::size_t kMostSizes = 700;

 private:
  struct Basic {
    enum class Kind : std::uint8_t { Fill, Slack };
    Kind kind = Kind::Slack;
    std::size_t index = 0;  // column in the pool, or row
  };

  double cost_of_basic(const Basic& basic) const;
  void find_duals();
  bool enter_known(Meter& meter);
  bool enter_new(Care care, Meter& meter);
  void add_company(const Fill& first, const std::vector<std::int64_t>& value, Meter& meter);
  bool pivot(const Basic& entering, double gain, Meter& meter);
  std::vector<double> column_of(const Basic& basic) const;
  double worth(const Fill& fill) const;
  bool fits(const Fill& fill) const;
  void note_prices(const std::vector<std::int64_t>& value, const std::vector<std::int64_t>& most,
                   std::int64_t scale);

  const Lines& lines_;
  Rest rest_;
  std::vector<Fill>& pool_;
  std::vector<std::size_t> usable_;  // columns of the pool
  std::vector<int> row_of_type_, row_of_bin_;
  std::vector<std::size_t> types_;  // of each demand row
  std::size_t rows_ = 0;
  double unit_ = 1;              // dearest board
  std::vector<double> inverse_;  // of the basis, row by row
  std::vector<double> level_;    // of the basic columns
  std::vector<Basic> basis_;
  std::vector<double> dual_;
  Prices prices_;
  int rounds_left_ = 0;
};

}  // namespace hs::cuts
