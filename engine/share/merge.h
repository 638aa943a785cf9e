#pragma once
// Two forms of one station brought together: the household's own, and the one that came back by a
// link after someone had added themselves. Nothing is taken over unasked: differences() lists what
// a person has to decide, merged() does what they decided.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/config/fields.h"

namespace hs::share {

enum class Differs : std::uint8_t {
  NewCook,    // there and not here, by name
  OtherCook,  // the same name with other values
  Station,    // a field, or fields that only make sense together
  Ground,     // the readings of the ground, all of them
  Stock,      // the stock list, all of it
};

// One question. `fields`: what differs; of a new cook, what is not a new cook's default.
struct Difference {
  Differs kind = Differs::Station;
  std::size_t ours = 0, theirs = 0;  // rows of the cook
  std::vector<const config::Field*> fields{};
  // A new cook stands in the row where ours has a stand-in ("Tallest") whom theirs has not: most
  // likely it is who that is. The row is `ours`.
  bool for_stand_in = false;
};

// What a person says to one of them. Both: only of a cook of the same name, who then comes in under
// a name that is free ("Ana 2"); elsewhere as Ours. InPlace: only of a new cook for a stand-in, who
// makes room; of any other new cook as Theirs, elsewhere as Ours.
enum class Say : std::uint8_t { Ours, Theirs, Both, InPlace };

// Every difference of `theirs` that can be taken over: new cooks, then other cooks, then the
// station's fields in the field table's order. A cook who is here and not there is no question: a
// link from before they were added does not take them away. Names are compared as they are written.
std::vector<Difference> differences(const config::Config& ours, const config::Config& theirs);

// Is `theirs` this household's station with people in it who are new or have other numbers? The
// oven's kind is the same, somebody is in both with the same numbers (or only people differ, one of
// whom is in both or in a stand-in's place), and
// at most kMostElse other questions follow: our judgement of where another station begins.
inline constexpr std::size_t kMostElse = 8;
bool is_reply(const config::Config& ours, const config::Config& theirs);

// `ours` with what was said, one word for each difference of the two; a missing word is Ours. All
// of `theirs` is valid and so is `ours`; the problems say what does not go together (more than 12
// cooks, a trial by someone who is left out). Cooks keep their order, new ones come last.
Result<config::Config> merged(const config::Config& ours, const config::Config& theirs,
                              std::span<const Say> said);

}  // namespace hs::share
