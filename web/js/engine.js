// The bridge to the two C++ programs. The one that draws (web/app/exports.cpp) holds the station and
// is there from the start. The desk (web/desk/exports.cpp) reads what is typed and writes what is
// read, and comes with the document. Both hold the same engine, and a link is exact: it carries the
// station to the desk, and what was changed there back.

const numbers = { inch: 0, mm: 1, sun: 0, dusk: 1, section: 0, fit: 1, file: 2 };

// Calls of a program's functions, which all begin with `prefix`. Strings go in as UTF-8 on the heap
// and come out as pointers that hold until the next call that returns one.
function makeCalls(module, prefix) {
  const call = (name, ...values) => {
    const held = [];
    const passed = values.map((value) => {
      if (typeof value !== 'string') return value;
      const size = module.lengthBytesUTF8(value) + 1;
      const pointer = module._malloc(size);
      module.stringToUTF8(value, pointer, size);
      held.push(pointer);
      return pointer;
    });
    const result = module[`_${prefix}_${name}`](...passed);
    for (const pointer of held) module._free(pointer);
    return result;
  };
  const text = (name, ...values) => module.UTF8ToString(call(name, ...values));
  const json = (name, ...values) => JSON.parse(text(name, ...values));
  return { call, text, json };
}

// `module` is em++'s Module object once its `ready` promise has settled.
export function makeEngine(module) {
  const { call, text, json } = makeCalls(module, 'hs');
  const revision = () => call('revision');
  let desk = null;
  let deskHolds = -1;  // the revision of the station that the desk has
  let deskError = { text: '', at: -1 };

  const atDesk = () => {
    desk.call('set_units', call('units'));
    if (deskHolds !== revision()) {
      desk.json('open_link', text('link'));
      deskHolds = revision();
    }
    return desk;
  };
  // A change that is made at the desk: one step of undo here.
  const change = (name, ...values) => {
    const problems = atDesk().json(name, ...values);
    deskError = { text: problems[0]?.message ?? '', at: revision() };
    if (problems.length > 0) return problems;
    deskHolds = -1;
    return json('open_link', desk.text('link'));
  };

  return {
    // The desk's module, once it is there.
    useDesk(other) { desk = makeCalls(other, 'dk'); },
    hasDesk: () => desk !== null,

    // Each of these changes the station, and returns the problems that kept it from doing so.
    start: (link, units) => json('start', link === null ? 0 : link, numbers[units]),
    clearField: (path) => json('clear_field', path),
    loadOven: (kind) => json('load_oven', kind),
    openLink: (value) => json('open_link', value),
    undo: () => call('undo') === 1,
    redo: () => call('redo') === 1,
    // These and what the document shows need the desk.
    setField: (path, value) => change('set_field', path, value),
    addCook: () => change('add_cook'),
    removeCook: (index) => change('remove_cook', index),
    openJson: (value) => change('open_json', value),
    acceptTrial: () => change('accept_trial'),
    page: () => atDesk().json('page_json'),
    fields: () => atDesk().json('fields_json'),
    // { title, description, svg }; `use`: 'sun' or 'dusk' to show, 'file' to save.
    drawing: (name, person, use) => atDesk().json('drawing_json', name, person, numbers[use]),

    canUndo: () => call('can_undo') === 1,
    canRedo: () => call('can_redo') === 1,
    link: () => text('link'),
    config: () => json('config_json'),
    configText: () => text('config_json'),
    report: () => json('report_json'),
    items: () => json('items_json'),
    revision,
    frameCount: () => call('frame_count'),
    lastError: () => (deskError.text && deskError.at === revision() ? deskError.text : text('last_error')),
    focus: () => text('focus'),
    person: () => call('person'),

    setUnits: (units) => call('set_units', numbers[units]),
    setTheme: (theme) => call('set_theme', numbers[theme]),
    setPicture: (picture) => call('set_picture', numbers[picture]),
    setPerson: (index) => call('set_person', index),

    startCanvas: (width, height, ratio) => call('canvas_start', width, height, ratio) === 1,
    resizeCanvas: (width, height, ratio, inset) => call('canvas_resize', width, height, ratio,
      inset.top, inset.right, inset.bottom, inset.left),
    pointer: (kind, id, touch, x, y, time) => call('pointer', kind, id, touch ? 1 : 0, x, y, time),
    wheel: (x, y) => call('wheel', x, y),
    key: (code, down, modifiers) => call('key', code, down ? 1 : 0, modifiers) === 1,
    blur: () => call('blur'),
    frame: (time) => call('frame', time),
  };
}
