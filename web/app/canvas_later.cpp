// What is asked for only in pictures that come after the first one.

#include <string_view>

#include "engine/config/fields.h"
#include "web/app/canvas.h"

namespace hs::web {

void Canvas::apply_later(const Intent& intent) {
  switch (intent.ask) {
    case Ask::ThroughEyes:
      view_.through_eyes = intent.value > 0;
      break;
    case Ask::Lean:
      view_.leaning = intent.value > 0;
      break;
    case Ask::ClearZones:
      view_.clear_zones = intent.value > 0;
      break;
    case Ask::PullApart:
      view_.pulled_apart = intent.value > 0;
      break;
    case Ask::Choose: {
      const config::Field& field = *config::find_field(intent.path);
      session_.set_field(intent.path, field.choices[static_cast<std::size_t>(intent.value)],
                         view_.units);
      break;
    }
    case Ask::LampBest: {
      constexpr std::string_view kHead[] = {"light.head.across_mm", "light.head.ahead_mm",
                                            "light.head.up_mm"};
      session_.clear_fields(kHead);
      break;
    }
    default:
      break;
  }
  wake();
}

}  // namespace hs::web
