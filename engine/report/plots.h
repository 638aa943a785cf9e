#pragma once
// The plots: what changes as one height changes, and what an estimate can move. Each is a sheet for
// a phone held upright, 100 mm wide on paper, with the same values as a table beside it.

#include "engine/report/sheet.h"

namespace hs::report {

// A row for each cook: where dough, and where a peel, is easy on the hands, and how far outside of
// that other heights are. Computed.
Sheet dough_comfort_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                         const SheetView& view);
Sheet oven_comfort_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                        const SheetView& view);

// A row for each oven cook: how much of the pizza shows from the watching distance, over the oven's
// height. Computed.
Sheet share_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                 const SheetView& view);

// Two bars for each estimate: how far oven and dough counter move when it is off by one standard
// error. Needs evaluate(); after evaluate_fit() there is nothing to show. Its table is the one of
// the section it belongs to.
Sheet moves_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                 const SheetView& view);

// A row for each panel of the base: its ground, and the bottom cut to it. Computed. Needs
// evaluate(); its table holds every height of every cut.
Sheet base_profile_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                        const SheetView& view);

}  // namespace hs::report
