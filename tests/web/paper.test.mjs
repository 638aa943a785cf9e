// What the real page shows and hands over: pictures, drawings, reports, the packet, and the family's
// answers. hand.test.mjs is the other half.
import './cases/drawings.mjs';
import './cases/plots.mjs';
import './cases/report.mjs';
import './cases/packet.mjs';
import './cases/stock.mjs';
import './cases/templates.mjs';
import './cases/ground.mjs';
import './cases/built.mjs';
import './cases/pictures.mjs';
import './cases/scene.mjs';
import './cases/lamp.mjs';
import './cases/reasons.mjs';
import './cases/family.mjs';
import './cases/compare.mjs';
import './cases/gallery.mjs';
import './cases/tilt.mjs';
