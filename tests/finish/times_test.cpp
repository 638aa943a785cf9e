// Waiting times by labels and practice.
#include "engine/finish/times.h"

#include "catch_amalgamated.hpp"

using namespace hs::finish;
using Catch::Matchers::WithinAbs;

TEST_CASE("coats wait as the label says", "[finish][source]") {
  // A maker's label (read): 77 F and 50 %: touch dry 30 min, next coat 4 h; 35 F: 3 to 6 h and 24
  // h.
  const PaintLabel label;
  const auto warm = wait_for(label, 25, 50);
  REQUIRE(warm.has_value());
  CHECK_THAT(warm->touch_h, WithinAbs(0.5, 1e-12));
  CHECK_THAT(warm->recoat_h, WithinAbs(4, 1e-12));
  const auto cold = wait_for(label, 1.7, 50);
  CHECK_THAT(cold->touch_h, WithinAbs(6, 1e-12));
  CHECK_THAT(cold->recoat_h, WithinAbs(24, 1e-12));
  // Hotter does not shorten it, colder than the label speaks of is no answer.
  CHECK(wait_for(label, 32, 50)->recoat_h == 4);
  CHECK_FALSE(wait_for(label, 1.6, 50).has_value());
  // Half way, half the way: 14 h; and never sooner when it is colder.
  CHECK_THAT(wait_for(label, 13.35, 50)->recoat_h, WithinAbs(14, 1e-9));
  for (int t = 2; t < 25; ++t) {
    CHECK(wait_for(label, t, 50)->recoat_h > wait_for(label, t + 1, 50)->recoat_h);
  }
  // Damp air: overnight at least, and above 90 % no answer (sags: paint institute, read).
  CHECK(wait_for(label, 25, 50.1)->recoat_h == 16);
  CHECK(wait_for(label, 1.7, 80)->recoat_h == 24);
  CHECK_FALSE(wait_for(label, 25, 90.1).has_value());
}

TEST_CASE("solvent cement sets by bands of temperature", "[finish][source]") {
  // Pipe practice, D2855 family (read): 60-100 F 15 min and 1 h; 40-60 F 1 h and 2 h; 0-40 F 3 h
  // and 8 h; above 60 % humidity half as long again.
  const auto f = [](double fahrenheit) { return (fahrenheit - 32) / 1.8; };
  CHECK(cement_times(f(60), 50)->set_h == 0.25);
  CHECK(cement_times(f(100), 50)->handle_h == 1);
  CHECK(cement_times(f(59.9), 50)->set_h == 1);
  CHECK(cement_times(f(40), 50)->handle_h == 2);
  CHECK(cement_times(f(39.9), 50)->set_h == 3);
  CHECK(cement_times(f(0), 50)->handle_h == 8);
  CHECK(cement_times(f(70), 60)->handle_h == 1);
  CHECK(cement_times(f(70), 60.1)->handle_h == 1.5);
  CHECK_FALSE(cement_times(f(-1), 50).has_value());
  CHECK_FALSE(cement_times(f(101), 50).has_value());
}

TEST_CASE("an adhesive's grab is not its strength", "[finish]") {
  const Adhesive trim = trim_adhesive();
  CHECK(joint_after(trim, 0.05) == Joint::Move);
  CHECK(joint_after(trim, 0.5) == Joint::Leave);
  CHECK(joint_after(trim, 1) == Joint::Handle);
  CHECK(joint_after(trim, 23.9) == Joint::Handle);
  CHECK(joint_after(trim, 24) == Joint::Load);
  // Waiting is the label's full cure.
  CHECK(waiting_h(trim) == 24);
  CHECK(waiting_h(bedding_adhesive()) == 72);
  CHECK(joint_after(bedding_adhesive(), 71) == Joint::Unknown);
  CHECK_FALSE(waiting_h({.name = "unread"}).has_value());
  CHECK(joint_after({.name = "unread"}, 500) == Joint::Unknown);
}
