#pragma once
// The fit map: the oven floor's height across, the watching distance up, how much of the pizza the
// worst-placed oven cook sees as shade and hatch, the places that suit everyone outlined, each
// cook's own border, the present place to drag, and what holds under the finger.

#include <optional>
#include <string>
#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "web/app/ui.h"
#include "web/app/view.h"

namespace hs::web {

class FitPicture {
 public:
  // The map is computed again only when what it depends on has changed; coarsely while something is
  // dragged.
  void draw(Ui& ui, const Rect& rect, const config::Config& config,
            const evaluate::Evaluation& evaluation, const View& view, bool dragging,
            Intents& intents);

  // For tests: how often the map was computed, what stands under the finger now, and where the
  // cooks' names do.
  int computed() const { return computed_; }
  const std::vector<std::string>& flag() const { return flag_; }
  const std::vector<Rect>& names() const { return names_; }

 private:
  void refresh(const config::Config& config, bool dragging);

  std::optional<config::Config> key_;  // without the two values that the point itself sets
  bool coarse_ = false;
  evaluate::FitMap map_;
  int computed_ = 0;
  std::vector<std::string> flag_;
  std::vector<Rect> names_;
  // While the point is held: what its first touch was, so that it follows instead of jumping.
  bool held_ = false;
  float grab_x_ = 0, grab_y_ = 0;
};

}  // namespace hs::web
