#pragma once
// The one place that changes the Config: applies intents, keeps undo, evaluates once.
// Knows no ImGui, GL or browser, so the page works without a canvas and native tests can drive it.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::web {

struct FieldNumber {
  std::string_view path;
  double value = 0;
};

// Puts a preset oven of this kind, and what goes with it, into a station.
std::vector<Problem> fit_oven(config::Config& next, std::string_view kind);

class Session {
 public:
  Session();

  const config::Config& config() const { return config_; }
  const evaluate::Evaluation& evaluation() const { return evaluation_; }
  // As the command line tells it: heights as searched, whatever this person's marks.
  evaluate::Evaluation told_evaluation() const;
  std::uint32_t revision() const { return revision_; }  // grows with every change
  bool dragging() const { return dragging_; }

  // The build stage's part of the program has come: from now on it follows each full evaluation,
  // and the one that stands gets it at once.
  void bring_build();

  // To whose marks heights are recommended. No intent: the Config does not change.
  void mark_for(report::Units units);

  // Intents. Each is one undo step, except that all changes of one drag are one step. A refused
  // change leaves everything as it was.
  std::vector<Problem> set_field(std::string_view path, std::string_view text, report::Units bare);
  void drag_field(std::string_view path, double value);     // clamped to range; fit stage only
  void drag_fields(std::span<const FieldNumber> numbers);   // together, and evaluated once
  void end_drag();                                          // full evaluation, one undo step
  std::vector<Problem> clear_field(std::string_view path);  // back to absent or the default
  std::vector<Problem> clear_fields(std::span<const std::string_view> paths);
  std::vector<Problem> load_oven(std::string_view kind);  // sizes of a preset oven
  std::vector<Problem> add_cook();
  std::vector<Problem> remove_cook(std::size_t index);
  std::vector<Problem> add_point(const config::SurveyPoint& point);
  std::vector<Problem> remove_point(std::size_t index);
  // The usual points in the place of those that are there, none of them read.
  std::vector<Problem> set_out_points();
  // The stock list (web/session/shop.cpp): a row more, one less, or all rows of a CSV file.
  std::vector<Problem> add_stock();
  std::vector<Problem> remove_stock(std::size_t index);
  std::vector<Problem> open_stock(std::string_view csv);
  // One piece as it came out, of the text that frame.as_built keeps; nothing: as drawn again.
  std::vector<Problem> set_built(std::string_view name, std::string_view size, report::Units bare);
  std::vector<Problem> open_json(std::string_view text);
  std::vector<Problem> open_link(std::string_view text);
  std::vector<Problem> accept_trial();  // applies the cold trial's correction

  // Of a household (web/session/household.cpp), each one step of undo.
  // Someone who adds themselves: their name, and a height or a measured eye level from which the
  // height is worked out; empty text where they gave none. A height is read as people say it: "168"
  // and "1.68" are no millimetres. `place`: the row of the stand-in that kept their place; they get
  // its height where they say none, and what else it holds.
  struct Person {
    std::string_view name, stature, eye, elbow;
    std::optional<std::size_t> place = {};
  };
  std::vector<Problem> add_person(const Person& person, report::Units bare);
  // A station of one's own from three answers: two body heights, of which the second may be empty,
  // and a kind of oven.
  std::vector<Problem> start_own(std::string_view tallest, std::string_view shortest,
                                 std::string_view kind, report::Units bare);
  bool can_undo() const { return undo_at_ > 0; }
  bool can_redo() const { return undo_at_ + 1 < history_.size(); }
  void undo();
  void redo();
  void forget_history();  // what there is now is where undo ends

  // The page's program comes in two parts, and the survey of the ground is in the later one: until
  // it is told that it may, nothing here calls it. Everywhere else it always may.
  void wait_for_survey() { survey_here_ = false; }
  void survey_here();

  std::string link() const;  // without '#'
  std::string last_error;    // plain words, for the page; empty when all is well

 private:
  std::vector<Problem> adopt(config::Config next);
  void remember();  // one more step of undo; what could be redone is gone
  void evaluate_now(bool full);

  config::Config config_;
  evaluate::Marks marks_ = report::marks_of(report::Units::Inch);
  evaluate::Evaluation evaluation_;
  std::vector<config::Config> history_;
  std::size_t undo_at_ = 0;
  std::uint32_t revision_ = 0;
  bool dragging_ = false;
  bool survey_here_ = true;
  bool builds_ = false;
};

}  // namespace hs::web
