// The real page under fingers and keys: its controls, sheets and links, what it keeps and how one
// begins. One process with one server and one Chromium; paper.test.mjs is the other half, takes about
// as long, and the two run side by side.
import './cases/theme.mjs';
import './cases/opening.mjs';
import './cases/controls.mjs';
import './cases/link.mjs';
import './cases/forms.mjs';
import './cases/sheets.mjs';
import './cases/access.mjs';
import './cases/touch.mjs';
import './cases/fallback.mjs';
import './cases/keep.mjs';
import './cases/files.mjs';
import './cases/square.mjs';
import './cases/offline.mjs';
import './cases/start.mjs';
