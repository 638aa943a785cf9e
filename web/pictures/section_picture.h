#pragma once
// The side section on the screen, with the oven's floor from above beside it.

#include <cstddef>
#include <cstdint>
#include <string>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/section.h"
#include "web/app/ui.h"
#include "web/app/view.h"
#include "web/pictures/painter.h"

namespace hs::web {

// The button that gives the recommended height back, at the picture's upper right.
inline constexpr float kGiveBack = 132;  // its width

class SectionPicture {
 public:
  // Drawn anew from the display lists each frame; the lists are made again only when the revision,
  // the view or the room has changed.
  // The ground runs across the whole `backdrop`; everything else stays in `rect`.
  void draw(const Ui& ui, const Rect& backdrop, const Rect& rect, const config::Config& config,
            const evaluate::Evaluation& evaluation, std::uint32_t revision, const View& view);

 private:
  struct Key {
    std::uint32_t revision = 0;
    std::size_t person = 0;
    report::Units units = report::Units::Inch;
    float width = 0, height = 0, label = 0;
    bool operator==(const Key&) const = default;
  };

  void place(const Ui& ui, const Rect& rect, const config::Config& config,
             const evaluate::Evaluation& evaluation, const View& view);

  Key key_;
  bool made_ = false;
  report::Drawing section_, plan_;
  Projection to_;  // relative to the rectangle's corner
  Projection plan_to_;
  Rect plan_box_;
  float text_ = 13;
  float ground_ = 0;  // its level under the rectangle's top
  std::string caption_;
  Painter painter_;
};

}  // namespace hs::web
