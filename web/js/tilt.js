// The phone as an inclinometer. Here is only the sensor, asked for by a tap, and what to do with the
// phone; every angle, error and word comes from the program (engine/report/tilt_json.h). Nothing goes
// into the plan without a tap of its own.

import { el, setHidden, setText, syncList } from './dom.js';

// Time to bring the phone from the finger to the edge, and the time of one measurement.
const readyMs = 3000;
const measureMs = 2500;

// Puts the sensor's readings into `take({ x, y, z })` until the function that it gives is called.
function listen(take) {
  const heard = ({ accelerationIncludingGravity: g }) => {
    if (g && g.x !== null && g.y !== null && g.z !== null) take(g);
  };
  addEventListener('devicemotion', heard);
  return () => removeEventListener('devicemotion', heard);
}

const wait = (ms) => new Promise((done) => { setTimeout(done, ms); });

// Some platforms ask the person first, and only inside a tap.
async function mayListen() {
  if (typeof globalThis.DeviceMotionEvent === 'undefined') return false;
  if (!globalThis.DeviceMotionEvent.requestPermission) return true;
  try {
    return await globalThis.DeviceMotionEvent.requestPermission() === 'granted';
  } catch {
    return false;
  }
}

const without = 'This device gives no tilt here. What a tape or a level says is typed instead:';

const kinds = {
  sight: {
    title: 'Line of sight into the oven',
    how: 'Stand where you watch, oven cold. Hold the phone\u2019s long edge to the corner of your eye and look along it at the far edge of the oven\u2019s floor. Keep still until it says done. The second time the phone\u2019s other end goes forward: that cancels the phone\u2019s own error.',
    steps: ['Measure', 'Measure turned round'], second: false, who: 'Who is looking?',
    instead: { path: () => 'trial.cold_farthest_seen_mm', text: 'Type the farthest mark seen on a tape' },
  },
  fall: {
    title: 'Slope of the ground (its fall)',
    how: 'A straight board on the paving, along the way water should run. The phone flat on its back on the board, its top end away from the house. The second time on the same place, turned end for end.',
    steps: ['Measure', 'Measure turned round'], second: true,
    instead: { path: () => 'site.fall_mm', text: 'Type the fall that a level and a tape show' },
  },
  eye: {
    title: 'Eye height by two angles',
    how: 'Someone else holds the phone, 2 to 3 m (7 to 10 ft) away on the same ground, and does not move: along its long edge first at the soles of the shoes, then at the outer corner of the eye. Measure the distance from below the phone to the heels.',
    steps: ['At the feet', 'At the eye'], second: true, who: 'Whose eye?',
    instead: { path: (who) => `cooks.${who}.eye_height_mm`, text: 'Type the eye height by tape' },
  },
};

// `host`: names() of the cooks, put(path, text) with the problems, reveal(path) of a field.
function makeKind(use, engine, host) {
  const kind = kinds[use];
  const held = ['', ''];
  const state = el('p', { role: 'status' });
  const said = el('div');
  const offer = el('button', { type: 'button', class: 'main', hidden: true });
  const who = kind.who && el('select', { id: `tilt-who-${use}`, change: show });
  const distance = use === 'eye' && el('input', { id: 'tilt-distance', type: 'text', autocomplete: 'off', change: show });
  let offered = null;
  let busy = false;

  const buttons = kind.steps.map((text, index) => el('button', { type: 'button', class: 'plain', text, click: () => measure(index) }));
  const typed = el('button', { type: 'button', class: 'link', text: kind.instead.text, click: () => host.reveal(kind.instead.path(who ? who.value : 0)) });
  const field = (input, text) => input && el('div', { class: 'field' }, el('label', { for: input.id, text }), input);
  const root = el('details', { class: 'tilt', 'data-use': use }, el('summary', { text: kind.title }), el('p', { text: kind.how }),
    field(who, kind.who), field(distance, 'How far from the phone to the heels?'),
    el('div', { class: 'row' }, ...buttons), state, el('p', {}, typed), said, offer);

  function show() {
    offered = null;
    setHidden(offer, true);
    said.replaceChildren();
    if (!held[0] || (kind.second && !held[1])) return;
    const found = engine.tilt(use, who ? Number(who.value) : 0, held[0], held[1], distance ? distance.value : '');
    said.append(...(found.problem ? [el('p', { class: 'error', text: found.problem })] : found.said.map((text) => el('p', { text }))));
    offered = found.offer;
    setHidden(offer, !offered);
    if (offered) setText(offer, offered.label);
  }

  async function measure(index) {
    if (busy) return;
    busy = true;
    setText(state, '');
    // The permission comes first: it must be asked for inside the tap.
    if (await mayListen()) {
      for (const button of buttons) button.disabled = true;
      setText(state, 'Now hold it still.');
      await wait(readyMs);
      const readings = [];
      const stop = listen(({ x, y, z }) => readings.push([x, y, z].map((g) => g.toFixed(4)).join(' ')));
      setText(state, 'Measuring.');
      await wait(measureMs);
      stop();
      navigator.vibrate?.(200);
      for (const button of buttons) button.disabled = false;
      held[index] = readings.join(' ');
      if (index === 0 && !kind.second) held[1] = '';
      setText(state, readings.length === 0 ? without : 'Done.');
      buttons[index].focus();
    } else {
      setText(state, without);
    }
    busy = false;
    show();
  }
  offer.addEventListener('click', () => {
    const problems = host.put(offered.field, offered.value);
    setText(state, problems.length > 0 ? problems.map(({ message }) => message).join(' ') : 'It is in the plan. Undo takes it out.');
    held.fill('');
    show();
    buttons[0].focus();
  });

  return {
    root, who, buttons,
    update() {
      if (!who) return;
      syncList(who, host.names(), () => el('option'), (option, name, index) => {
        option.value = String(index);
        setText(option, name);
      });
    },
  };
}

export function makeTilt(engine, host) {
  const all = Object.keys(kinds).map((use) => makeKind(use, engine, host));
  const root = el('section', { id: 'tilt' }, el('h3', { text: 'Measure with the phone' }),
    el('p', { text: 'Its tilt, averaged while you hold still. A phone at rest is within 0.3\u00B0 at best (Mourcou and others, Sensors 2015, 15(9), 23168), a hand less: how sure each measurement is stands beside it, and nothing goes into the plan before you say so.' }),
    ...all.map((one) => one.root));
  document.getElementById('trial').after(root);
  return {
    update() { for (const one of all) one.update(); },
    // Brings the measuring of this cook's eye height into view.
    measureEye(index) {
      const one = all[Object.keys(kinds).indexOf('eye')];
      one.root.open = true;
      one.who.value = String(index);
      one.root.scrollIntoView({ block: 'start' });
      one.buttons[0].focus({ preventScroll: true });
    },
  };
}
