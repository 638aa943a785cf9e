#pragma once
// A drawing on a page of a PDF, at a scale: the same marks as its SVG, in the inks of print.

#include "engine/report/drawing.h"
#include "engine/report/pdf.h"

namespace hs::report {

// The drawing's own origin goes to `origin` (mm on the page); a millimetre of the drawing becomes
// `scale` on paper. `text_mm`: its line of text, before scaling.
void draw_on(Pdf& pdf, const Drawing& drawing, double text_mm, Spot origin, double scale);

}  // namespace hs::report
