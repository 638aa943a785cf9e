// Every test of the real page, in one process with one server and one Chromium.
import './cases/theme.mjs';
import './cases/opening.mjs';
import './cases/controls.mjs';
import './cases/link.mjs';
import './cases/forms.mjs';
import './cases/sheets.mjs';
import './cases/drawings.mjs';
import './cases/plots.mjs';
import './cases/report.mjs';
import './cases/templates.mjs';
import './cases/fallback.mjs';
import './cases/pictures.mjs';
import './cases/scene.mjs';
import './cases/lamp.mjs';
import './cases/reasons.mjs';
import './cases/keep.mjs';
import './cases/gallery.mjs';
