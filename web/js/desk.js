// What the program's second part answers (web/desk/exports.cpp). Only the document asks for it, so it
// comes with the document.

const tilts = { sight: 0, fall: 1, eye: 2 };
const uses = { sun: 0, dusk: 1, file: 2 };

// `engine` is makeEngine's, once its desk may be asked.
export function makeDesk(engine) {
  const text = engine.desk;
  const json = (name, ...values) => JSON.parse(text(name, ...values));
  return {
    ...engine,
    // Each of these changes the station, and returns the problems that kept it from doing so.
    setField: (path, value) => json('set_field', path, value),
    setBuilt: (name, size) => json('set_built', name, size),
    addCook: () => json('add_cook'),
    removeCook: (index) => json('remove_cook', index),
    // `kind` and `setup` count the choices of the field table.
    addPoint: (x, y, kind, setup) => json('add_point', x, y, kind, setup),
    removePoint: (index) => json('remove_point', index),
    setOutPoints: () => json('set_out_points'),
    addStock: () => json('add_stock'),
    removeStock: (index) => json('remove_stock', index),
    openStock: (csv) => json('open_stock', csv),
    stockCsv: () => text('stock_csv'),
    openJson: (value) => json('open_json', value),
    acceptTrial: () => json('accept_trial'),
    // A station of one's own from two body heights and a kind of oven.
    startOwn: (tallest, shortest, kind) => json('start_own', tallest, shortest, kind),
    // `place`: the row of the stand-in that they are, or -1.
    addPerson: (name, stature, eye, elbow, place) => json('add_person', name, stature, eye, elbow, place),
    // What the second link asks the household of the first (web/desk/reply_json.h), or null; and the
    // first link with what was said to that, or the problems.
    reply: (ours, theirs) => json('reply_json', ours, theirs),
    // `readings` as text, x y z of each; distance typed or ''.
    tilt: (use, person, first, second, distance) => json('tilt_json', tilts[use], person, first, second, distance),
    // A line for each station, its link, a space and its name: { tables, same }.
    compare: (lines) => json('compare_json', lines),
    merged: (ours, theirs, said) => json('merged', ours, theirs, said),
    page: () => json('page_json'),
    // Numbers as this page shows them, heights as marked here; the engine's own are as searched.
    report: () => json('report_json'),
    fields: () => json('fields_json'),
    // Whole documents; `style` is markup for their head.
    reportHtml: (style) => text('report_html', style),
    safetyHtml: (style) => text('safety_html', style),
    // The strips of the base's cuts, to print; '' where nothing is cut.
    stripsHtml: (paper) => text('strips_html', paper === 'letter' ? 1 : 0),
    // The packet in goes (packet.js): { more, done, all, inches } after each; then [{ name, bytes }],
    // the same files as the command's.
    beginPacket: () => text('packet_begin'),
    advancePacket: (steps) => json('packet_advance', steps),
    packetFiles: (address, letter) => json('packet_json', address, letter ? 1 : 0)
      .map(({ name, size }, index) => ({ name, bytes: engine.deskBytes(size, 'packet_bytes', index) })),
    example: () => json('example_json'),  // { link, title }
    // The link under another title, or the problems.
    retitled: (link, title) => json('retitled', link, title),
    // SVG text; '' where the text is too long for such a square.
    square: (value) => text('qr_svg', value),
    // { title, description, svg }; `use`: 'sun' or 'dusk' to show, 'file' to save.
    drawing: (name, person, use) => json('drawing_json', name, person, uses[use]),
  };
}
