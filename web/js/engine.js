// The bridge to the C++ program, which comes in two files. What draws and takes a finger
// (web/app/exports.cpp, hs_...) is there from the start; the desk (web/desk/exports.cpp, dk_...; here
// desk.js), which reads what is typed and writes what is read, comes with the document. Both are one
// program over one memory, with one station.

const numbers = { inch: 0, mm: 1, sun: 0, dusk: 1, section: 0, fit: 1, scene: 2 };

// `module` is em++'s Module object once its `ready` promise has settled. Strings go in as UTF-8 on
// the heap and come out as pointers that hold until the next call that returns one.
export function makeEngine(module) {
  const run = (name, values) => {
    const held = [];
    const passed = values.map((value) => {
      if (typeof value !== 'string') return value;
      const size = module.lengthBytesUTF8(value) + 1;
      const pointer = module._malloc(size);
      module.stringToUTF8(value, pointer, size);
      held.push(pointer);
      return pointer;
    });
    const result = module[`_${name}`](...passed);
    for (const pointer of held) module._free(pointer);
    return result;
  };
  const call = (name, ...values) => run(`hs_${name}`, values);
  const text = (name, ...values) => module.UTF8ToString(call(name, ...values));
  const json = (name, ...values) => JSON.parse(text(name, ...values));

  return {
    // Settles when the desk may be asked.
    async bringDesk() {
      await module.bringLater();
      call('later_here');
    },
    // What a function of the desk answers, as text; desk.js knows them by name.
    desk: (name, ...values) => module.UTF8ToString(run(`dk_${name}`, values)),
    // So many bytes from where it points to.
    deskBytes: (size, name, ...values) => {
      const start = run(`dk_${name}`, values);
      return module.HEAPU8.slice(start, start + size);
    },

    // Each of these changes the station, and returns the problems that kept it from doing so.
    start: (link, units) => json('start', link === null ? 0 : link, numbers[units]),
    clearField: (path) => json('clear_field', path),
    loadOven: (kind) => json('load_oven', kind),
    openLink: (value) => json('open_link', value),
    undo: () => call('undo') === 1,
    redo: () => call('redo') === 1,

    canUndo: () => call('can_undo') === 1,
    canRedo: () => call('can_redo') === 1,
    link: () => text('link'),
    config: () => json('config_json'),
    configText: () => text('config_json'),
    report: () => json('report_json'),
    wholeReport: () => json('whole_report_json'),
    items: () => json('items_json'),
    revision: () => call('revision'),
    frameCount: () => call('frame_count'),
    lastError: () => text('last_error'),
    focus: () => text('focus'),
    person: () => call('person'),

    setUnits: (units) => call('set_units', numbers[units]),
    setTheme: (theme) => call('set_theme', numbers[theme]),
    setPicture: (picture) => call('set_picture', numbers[picture]),
    setPerson: (index) => call('set_person', index),
    setStill: (still) => call('set_still', still ? 1 : 0),

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
