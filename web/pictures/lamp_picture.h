#pragma once
// The lamp at the oven from the side: its head is dragged in the plane that it is in, between the
// places where it may be and those where it may not.

#include <cstdint>
#include <optional>
#include <string>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/lamp_map.h"
#include "engine/report/drawing.h"
#include "web/app/ui.h"
#include "web/app/view.h"
#include "web/pictures/painter.h"

namespace hs::web {

class LampPicture {
 public:
  // The places are computed again only when what they depend on has changed, coarsely while
  // something is dragged; the drawing only with a new revision, room or plane.
  void draw(Ui& ui, const Rect& rect, const config::Config& config,
            const evaluate::Evaluation& evaluation, std::uint32_t revision, const View& view,
            bool dragging, Intents& intents);

  // For tests: how often the places were computed.
  int computed() const { return computed_; }

 private:
  struct Key {
    std::uint32_t revision = 0;
    int computed = 0;
    float width = 0, height = 0;
    bool operator==(const Key&) const = default;
  };

  void refresh(const config::Config& config, const evaluate::Evaluation& evaluation, bool dragging);
  void place(const Rect& rect, const config::Config& config,
             const evaluate::Evaluation& evaluation);
  void hands(Ui& ui, const Rect& rect, const config::Config& config,
             const evaluate::Evaluation& evaluation, const View& view, Intents& intents);

  std::optional<config::Config> map_of_;  // without the head's place in its plane
  bool coarse_ = false;
  evaluate::LampMap map_;
  int computed_ = 0;

  Key key_;
  bool made_ = false;
  report::Drawing drawing_;
  Projection to_;  // relative to the rectangle's corner
  float text_ = 13;
  Painter painter_;
  // While the head is held: where in it the finger is.
  bool held_ = false;
  float grab_x_ = 0, grab_y_ = 0;
};

// Where the picture shows the head: at its place, or in front of its foot where there is none.
Vec shown_head(const evaluate::Lamp& lamp);
// Asks for the head to be at a place, kept to what its fields take.
void ask_head(const Vec& head, Intents& intents);

}  // namespace hs::web
