#include "engine/weather/wind.h"

#include "catch_amalgamated.hpp"

namespace {
using namespace hs::weather;
using hs::config::WindFrom;
}  // namespace

TEST_CASE("wind from in front blows into the mouth, from behind towards the cook", "[weather]") {
  CHECK(at_mouth(WindFrom::Front) == AtMouth::Into);
  CHECK(at_mouth(WindFrom::FrontLeft) == AtMouth::Into);
  CHECK(at_mouth(WindFrom::FrontRight) == AtMouth::Into);
  CHECK(at_mouth(WindFrom::Left) == AtMouth::Across);
  CHECK(at_mouth(WindFrom::Right) == AtMouth::Across);
  CHECK(at_mouth(WindFrom::Back) == AtMouth::Behind);
  CHECK(at_mouth(WindFrom::BackLeft) == AtMouth::Behind);
  CHECK(at_mouth(WindFrom::BackRight) == AtMouth::Behind);
}

TEST_CASE("smoke goes the way the wind goes", "[weather][law]") {
  CHECK(smoke_to_cook(WindFrom::Back));
  CHECK_FALSE(smoke_to_cook(WindFrom::Front));
  CHECK(smoke_to_side(WindFrom::Left, true));
  CHECK_FALSE(smoke_to_side(WindFrom::Left, false));
  CHECK(smoke_to_side(WindFrom::BackRight, false));
  for (int i = 0; i < 8; ++i) {
    const auto from = static_cast<WindFrom>(i);
    const auto mirrored = static_cast<WindFrom>((8 - i) % 8);
    CHECK(smoke_to_cook(from) == smoke_to_cook(mirrored));
    CHECK(smoke_to_side(from, true) == smoke_to_side(mirrored, false));
    CHECK_FALSE((smoke_to_side(from, true) && smoke_to_side(from, false)));
    // Never both into the mouth and at whoever stands before it.
    CHECK_FALSE((at_mouth(from) == AtMouth::Into && smoke_to_cook(from)));
  }
}
