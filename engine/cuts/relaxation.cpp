#include "engine/cuts/relaxation.h"

#include <algorithm>
#include <cmath>

#include "engine/cuts/greedy.h"

namespace hs::cuts {
namespace {

constexpr double kGain = 1e-7;     // a column that earns less is left out
constexpr double kPivot = 1e-9;    // smaller ones make the inverse worthless
constexpr double kScale = 0x1p40;  // of the dearest board's cost in whole prices

// Demands a hair apart, so that ties between rows do not make the steps go round in circles.
double nudge(std::size_t row) {
  const std::uint64_t mixed = std::uint64_t{row} * 2654435761u;  // the same where size_t is short
  return 1e-7 * (1.0 + static_cast<double>(mixed % 1000u) / 1000.0);
}

}  // namespace

std::int64_t Prices::bound(const Lines& lines) const {
  if (scale <= 0) return 0;
  return rounded_up(lines, total <= 0 ? 0 : (total + scale - 1) / scale);
}

Relaxation::Relaxation(const Lines& lines, Rest rest, std::vector<Fill>& pool)
    : lines_(lines), rest_(std::move(rest)), pool_(pool) {
  row_of_type_.assign(lines.size.size(), -1);
  row_of_bin_.assign(lines.bins.size(), -1);
  for (std::size_t i = 0; i < lines.size.size(); ++i) {
    if (rest_.demand[i] <= 0) continue;
    row_of_type_[i] = static_cast<int>(types_.size());
    types_.push_back(i);
  }
  rows_ = types_.size();
  std::int64_t dearest = 1;
  for (std::size_t b = 0; b < lines.bins.size(); ++b) {
    dearest = std::max(dearest, lines.bins[b].cost);
    if (rest_.count[b] > 0) row_of_bin_[b] = static_cast<int>(rows_++);
  }
  unit_ = static_cast<double>(dearest);
  rounds_left_ = 200 + 30 * static_cast<int>(rows_);
  for (std::size_t c = 0; c < pool_.size(); ++c) {
    if (fits(pool_[c])) usable_.push_back(c);
  }
  // Start: every size on boards of its own, counted boards unused.
  inverse_.assign(rows_ * rows_, 0);
  level_.assign(rows_, 0);
  basis_.resize(rows_);
  for (std::size_t r = 0; r < types_.size(); ++r) {
    const std::size_t type = types_[r];
    const Place place = cheapest_place(lines, lines.size[type]);
    const std::int64_t room =
        lines.bins[static_cast<std::size_t>(place.bin)].rooms[static_cast<std::size_t>(place.room)];
    const auto count =
        static_cast<int>(std::min<std::int64_t>(rest_.demand[type], room / lines.size[type]));
    pool_.push_back({place.bin, {{static_cast<int>(type), count, place.room}}});
    usable_.push_back(pool_.size() - 1);
    basis_[r] = {Basic::Kind::Fill, pool_.size() - 1};
    inverse_[r * rows_ + r] = 1.0 / count;
    level_[r] = (rest_.demand[type] + nudge(r)) / count;
  }
  for (std::size_t b = 0; b < lines.bins.size(); ++b) {
    if (row_of_bin_[b] < 0) continue;
    const auto r = static_cast<std::size_t>(row_of_bin_[b]);
    basis_[r] = {Basic::Kind::Slack, r};
    inverse_[r * rows_ + r] = -1;
    level_[r] = rest_.count[b] + nudge(r);
  }
  find_duals();
}

bool Relaxation::fits(const Fill& fill) const {
  if (rest_.count[static_cast<std::size_t>(fill.bin)] == 0) return false;
  for (const Take& take : fill.takes) {
    int wanted = 0;
    for (const Take& other : fill.takes) wanted += other.type == take.type ? other.count : 0;
    if (wanted > rest_.demand[static_cast<std::size_t>(take.type)]) return false;
  }
  return true;
}

double Relaxation::cost_of_basic(const Basic& basic) const {
  if (basic.kind == Basic::Kind::Slack) return 0;
  const Bin& bin = lines_.bins[static_cast<std::size_t>(pool_[basic.index].bin)];
  return static_cast<double>(bin.cost) / unit_;
}

void Relaxation::find_duals() {
  dual_.assign(rows_, 0);
  for (std::size_t r = 0; r < rows_; ++r) {
    const double cost = cost_of_basic(basis_[r]);
    if (cost == 0) continue;
    const double* row = &inverse_[r * rows_];
    for (std::size_t c = 0; c < rows_; ++c) dual_[c] += cost * row[c];
  }
}

double Relaxation::worth(const Fill& fill) const {
  double sum = 0;
  for (const Take& take : fill.takes) {
    sum += take.count *
           dual_[static_cast<std::size_t>(row_of_type_[static_cast<std::size_t>(take.type)])];
  }
  const int row = row_of_bin_[static_cast<std::size_t>(fill.bin)];
  if (row >= 0) sum -= dual_[static_cast<std::size_t>(row)];
  return sum - static_cast<double>(lines_.bins[static_cast<std::size_t>(fill.bin)].cost) / unit_;
}

std::vector<double> Relaxation::column_of(const Basic& basic) const {
  std::vector<double> column(rows_, 0);
  const auto add = [&](std::size_t at, double times) {
    for (std::size_t r = 0; r < rows_; ++r) column[r] += times * inverse_[r * rows_ + at];
  };
  if (basic.kind == Basic::Kind::Slack) {
    add(basic.index, -1);
    return column;
  }
  const Fill& fill = pool_[basic.index];
  for (const Take& take : fill.takes) {
    add(static_cast<std::size_t>(row_of_type_[static_cast<std::size_t>(take.type)]), take.count);
  }
  const int row = row_of_bin_[static_cast<std::size_t>(fill.bin)];
  if (row >= 0) add(static_cast<std::size_t>(row), -1);
  return column;
}

bool Relaxation::pivot(const Basic& entering, double gain, Meter& meter) {
  meter.work += static_cast<std::int64_t>(rows_ * rows_);
  const std::vector<double> column = column_of(entering);
  std::size_t leaving = rows_;
  double least = 0;
  for (std::size_t r = 0; r < rows_; ++r) {
    if (column[r] <= kPivot) continue;
    const double ratio = level_[r] / column[r];
    if (leaving == rows_ || ratio < least || (ratio == least && column[r] > column[leaving])) {
      leaving = r;
      least = ratio;
    }
  }
  if (leaving == rows_) return false;
  double* pivot_row = &inverse_[leaving * rows_];
  const double pivot = column[leaving];
  for (std::size_t c = 0; c < rows_; ++c) pivot_row[c] /= pivot;
  level_[leaving] = least;
  for (std::size_t r = 0; r < rows_; ++r) {
    if (r == leaving || column[r] == 0) continue;
    double* row = &inverse_[r * rows_];
    for (std::size_t c = 0; c < rows_; ++c) row[c] -= column[r] * pivot_row[c];
    level_[r] = std::max(0.0, level_[r] - column[r] * least);
  }
  basis_[leaving] = entering;
  for (std::size_t c = 0; c < rows_; ++c) dual_[c] -= gain * pivot_row[c];
  return true;
}

// What gains most of the columns that are known and of leaving a demand more than met.
bool Relaxation::enter_known(Meter& meter) {
  Basic best;
  double most = kGain;
  for (std::size_t r = 0; r < rows_; ++r) {
    if (-dual_[r] <= most) continue;
    most = -dual_[r];
    best = {Basic::Kind::Slack, r};
  }
  meter.work += static_cast<std::int64_t>(usable_.size()) * 8;
  for (const std::size_t c : usable_) {
    const double gain = worth(pool_[c]);
    if (gain <= most) continue;
    most = gain;
    best = {Basic::Kind::Fill, c};
  }
  return most > kGain && pivot(best, most, meter);
}

// Whole prices from the duals; the filling that earns most at them makes a new column, and a bound
// where it is known to be the best.
bool Relaxation::enter_new(Care care, Meter& meter) {
  const auto scale = static_cast<std::int64_t>(kScale / unit_);
  const double whole = static_cast<double>(scale) * unit_;
  std::vector<std::int64_t> value(lines_.size.size(), 0);
  for (std::size_t r = 0; r < types_.size(); ++r) {
    value[types_[r]] = static_cast<std::int64_t>(std::clamp(dual_[r], 0.0, 2.0) * whole);
  }
  std::vector<std::int64_t> most(lines_.bins.size(), 0);
  Worth best;
  double best_gain = kGain;
  bool exact = true;
  for (std::size_t b = 0; b < lines_.bins.size(); ++b) {
    if (rest_.count[b] == 0) continue;
    Worth worth_here = worth_most(lines_, rest_, value, static_cast<int>(b), care, meter);
    if (worth_here.value < 0) return false;
    exact = exact && worth_here.exact;
    most[b] = worth_here.value;
    if (exact && lines_.bins[b].rooms.size() > 1) {
      // The rooms were filled one after another; each alone may hold more.
      most[b] = 0;
      for (const std::int64_t room : lines_.bins[b].rooms) {
        const auto filling = room_alone(lines_, rest_, value, room, meter);
        if (filling < 0) return false;
        most[b] += filling;
      }
    }
    const double gain = worth(worth_here.fill);
    if (gain <= best_gain) continue;
    best_gain = gain;
    best = std::move(worth_here);
  }
  if (exact) note_prices(value, most, scale);
  if (best.value < 0) return false;
  const Fill entering = best.fill;
  pool_.push_back(std::move(best.fill));
  usable_.push_back(pool_.size() - 1);
  const std::size_t column = pool_.size() - 1;
  add_company(entering, value, meter);
  return pivot({Basic::Kind::Fill, column}, best_gain, meter);
}

// Where one filling gains, others of the parts that it leaves often do too: they come along.
void Relaxation::add_company(const Fill& first, const std::vector<std::int64_t>& value,
                             Meter& meter) {
  constexpr int kCompany = 12;
  Rest rest = rest_;
  remove(rest, first);
  for (int n = 0; n < kCompany; ++n) {
    if (rest.count[static_cast<std::size_t>(first.bin)] == 0) return;
    Worth next = worth_most(lines_, rest, value, first.bin, Care::Quick, meter);
    if (next.value <= 0 || worth(next.fill) <= kGain) return;
    remove(rest, next.fill);
    pool_.push_back(std::move(next.fill));
    usable_.push_back(pool_.size() - 1);
  }
}

// Prices are shrunk until no filling earns more than it costs (Farley 1990). `most` is what the
// best filling of each bin earns. The share is a hair smaller than it need be, so that the rounding
// of doubles cannot make a price too high.
void Relaxation::note_prices(const std::vector<std::int64_t>& value,
                             const std::vector<std::int64_t>& most, std::int64_t scale) {
  if (scale < 1) return;
  double share = 1;
  for (std::size_t b = 0; b < lines_.bins.size(); ++b) {
    if (lines_.bins[b].count >= 0 || most[b] == 0) continue;
    const double allowed = static_cast<double>(scale) * static_cast<double>(lines_.bins[b].cost);
    share = std::min(share, allowed / static_cast<double>(most[b]));
  }
  share *= 1 - 1e-12;
  Prices found;
  found.scale = scale;
  for (const std::int64_t v : value) {
    found.value.push_back(static_cast<std::int64_t>(static_cast<double>(v) * share));
  }
  for (std::size_t i = 0; i < found.value.size(); ++i) {
    found.total += found.value[i] * rest_.demand[i];
  }
  for (std::size_t b = 0; b < lines_.bins.size(); ++b) {
    std::int64_t spare = 0;
    if (lines_.bins[b].count >= 0 && rest_.count[b] > 0) {
      // Never more than the filling earned at full prices.
      spare = std::max<std::int64_t>(0, most[b] - scale * lines_.bins[b].cost);
      found.total -= spare * rest_.count[b];
    }
    found.spare.push_back(spare);
  }
  if (prices_.scale == 0 || found.total > prices_.total) prices_ = std::move(found);
}

bool Relaxation::improve(Meter& meter) {
  if (rows_ == 0 || --rounds_left_ < 0) return false;
  return enter_known(meter) || enter_new(Care::Quick, meter) || enter_new(Care::Exact, meter);
}

std::vector<Share> Relaxation::solution() const {
  std::vector<Share> shares;
  for (std::size_t r = 0; r < rows_; ++r) {
    if (basis_[r].kind != Basic::Kind::Fill || level_[r] < 1e-5) continue;
    shares.push_back({basis_[r].index, level_[r]});
  }
  std::sort(shares.begin(), shares.end(),
            [](const Share& a, const Share& b) { return a.column < b.column; });
  return shares;
}

}  // namespace hs::cuts
