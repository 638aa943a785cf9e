#pragma once
// Random ovens and eyes for the sight tests and the bench: every shape of mouth and floor, with
// and without throat, brow and outer mouth, within the ranges of the field table.

#include "engine/config/config.h"
#include "engine/sight/sight.h"
#include "tests/support/random.h"

namespace hs::test {

struct Look {
  config::Oven oven;
  sight::Eye eye;
};

// Sizes that people own: a tabletop oven up to a large masonry one, eyes around its mouth.
inline Look usual_look(Random& random) {
  using config::MouthShape;
  Look look;
  config::Oven& oven = look.oven;
  oven.mouth_width_mm = random.between(250, 700);
  oven.mouth_height_mm = random.between(80, 350);
  oven.mouth_shape = static_cast<MouthShape>(random.below(3));
  oven.mouth_side_height_mm = random.between(0, oven.mouth_height_mm);
  oven.throat_mm = random.one_in(3) ? 0 : random.between(0, 350);
  oven.brow_mm = random.one_in(2) ? 0 : random.between(10, 200);
  oven.floor_shape = static_cast<config::FloorShape>(random.below(2));
  oven.floor_width_mm = random.between(300, 1100);
  oven.floor_depth_mm = random.between(300, 1200);
  if (random.one_in(3)) {
    oven.outer_mouth.width_mm = oven.mouth_width_mm + random.between(0, 200);
    oven.outer_mouth.height_mm = oven.mouth_height_mm + random.between(0, 150);
    oven.outer_mouth.side_height_mm = random.between(0, *oven.outer_mouth.height_mm);
    oven.outer_mouth.shape = static_cast<MouthShape>(random.below(3));
  }
  look.eye.x_mm = random.one_in(3) ? 0 : random.between(-700, 700);
  look.eye.distance_mm = random.one_in(5) ? random.between(20, 250) : random.between(250, 1500);
  // Some eyes lower than the mouth's top, most of them above it.
  look.eye.height_mm =
      random.one_in(4) ? random.between(5, oven.mouth_height_mm) : random.between(100, 900);
  return look;
}

// Anything the field table lets through, however odd: a stress, not an oven.
inline Look odd_look(Random& random) {
  using config::MouthShape;
  Look look;
  config::Oven& oven = look.oven;
  oven.mouth_width_mm = random.between(100, 2000);
  oven.mouth_height_mm = random.between(40, 1200);
  oven.mouth_shape = static_cast<MouthShape>(random.below(3));
  // Now and then an arch as flat as the file format can hold.
  oven.mouth_side_height_mm = random.one_in(4) ? oven.mouth_height_mm - 0.1 * random.below(3)
                                               : random.between(0, oven.mouth_height_mm);
  oven.throat_mm = random.one_in(3) ? 0 : random.between(0, 1000);
  oven.brow_mm = random.one_in(2) ? 0 : random.between(0, 600);
  oven.floor_shape = static_cast<config::FloorShape>(random.below(2));
  oven.floor_width_mm = random.between(150, 3000);
  oven.floor_depth_mm = random.between(150, 3000);
  if (random.one_in(2)) {
    oven.outer_mouth.width_mm = oven.mouth_width_mm + random.between(0, 1000);
    oven.outer_mouth.height_mm = oven.mouth_height_mm + random.between(0, 800);
    oven.outer_mouth.side_height_mm = random.between(0, *oven.outer_mouth.height_mm);
    oven.outer_mouth.shape = static_cast<MouthShape>(random.below(3));
  }
  look.eye.x_mm = random.between(-1500, 1500);
  look.eye.distance_mm = random.one_in(4) ? random.between(0.1, 200) : random.between(100, 4000);
  look.eye.height_mm = random.one_in(4) ? random.between(0.1, 100) : random.between(0.1, 2300);
  return look;
}

}  // namespace hs::test
