#pragma once
// The parts of the canvas. Each reads the station and what follows from it, draws itself in its
// place and says what is asked for; none of them changes or computes anything.

#include <string>
#include <string_view>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"
#include "web/app/layout.h"
#include "web/app/ui.h"
#include "web/app/view.h"
#include "web/app/widgets.h"

namespace hs::web {

// What every panel reads.
struct Station {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  const report::Summary& summary;
  bool can_undo = false, can_redo = false;
};

void draw_headlines(Ui& ui, const Layout& layout, const Station& station, Intents& intents);
void draw_tools(Ui& ui, const Layout& layout, const Station& station, const View& view,
                Intents& intents);
void draw_lines(Ui& ui, const Layout& layout, const Station& station, const View& view,
                Intents& intents);
void draw_caution(Ui& ui, const Layout& layout, const Station& station, Intents& intents);
void draw_controls(Ui& ui, const Layout& layout, const Station& station, const View& view,
                   Hold& hold, Intents& intents);
// In their place beside the picture of the lamp; needs a lamp.
void draw_lamp_panel(Ui& ui, const Layout& layout, const Station& station, const View& view,
                     Hold& hold, Intents& intents);

// The cook who looks: the chosen one where they work at the oven, else the first who does, else the
// chosen one.
std::size_t looking(const config::Config& config, std::size_t chosen);

// The oven kinds that the page offers, in the order of the arrows, and what they are called.
std::string_view kind_word(config::OvenKind kind);
std::string kind_name(config::OvenKind kind);

}  // namespace hs::web
