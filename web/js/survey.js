// Reading the ground with a phone in one hand: tap a point on a small plan, type what the tape says,
// next. Every word about the readings comes from the engine's own findings.

import { el, setHidden, setText, setVerdict, svgEl, syncList, verdictMark } from './dom.js';
import { makeField } from './fields.js';

const path = (key) => `survey.points[].${key}`;
const told = ['survey.readings', 'survey.doubtful', 'survey.closing', 'survey.feet'];
const margin_mm = 250;
// Taps farther than this from every point are meant for none, in CSS pixels.
const farthest = 48;
const lines = ['A', 'B', 'C', 'D'];

// `actions` as for makeField; `after(problems)` ends every change; `openResult(name)` shows what comes of
// the readings, by the words of its button. `engine` is the desk's.
export function makeSurvey(engine, actions, { after, place, openResult }) {
  let chosen = 0;
  let count = 0;
  let points = [];
  let controls = [];
  let table = null;
  let shownFor = '';
  let focusNext = false;
  let asked = false;  // for another line: what it needs is said until it has it

  const say = el('p', { role: 'status', class: 'error' });
  const start = el('div', {},
    el('p', { text: 'A level line over the ground, by laser, hose or straightedge, and a tape: read down to the ground at each point. Heights count from where feet stand, so read there too.' }),
    el('button', { type: 'button', class: 'main', id: 'set-out', text: 'Set out the usual points', click: () => run(() => engine.setOutPoints(), 0) }));
  const plan = svgEl('svg', { class: 'ground-plan', role: 'img', 'aria-label': 'Plan of the points; the same points follow one by one' });
  const head = el('h4', { id: 'point-head', tabindex: '-1' });
  const needs = el('p', { role: 'status', id: 'line-needs' });
  const state = el('p', { id: 'point-state' });
  const reading = el('div', { class: 'fields' });
  const where = el('div', { class: 'fields' });
  const step = (text, id, move) => el('button', { type: 'button', class: 'plain', id, text, click: move });
  const card = el('div', { class: 'card point' }, head, state, reading,
    el('div', { class: 'row' },
      step('Back', 'point-back', () => choose((chosen + count - 1) % count)),
      el('button', { type: 'button', class: 'main', id: 'point-next', text: 'Next', click: next })),
    el('div', { class: 'row' },
      step('Read it again', 'point-again', again),
      step('From a new line', 'point-line', newLine)),
    needs,
    el('details', {}, el('summary', { text: 'Where it is' }), where,
      el('div', { class: 'row' },
        step('Add a point beside it', 'point-add', add),
        step('Remove this point', 'point-remove', remove))));
  const marks = el('p', { class: 'soft', text: '\u25CF read, \u25CB to be read, \u25C6 doubtful, \u25A0 a joint; two rings: read more than once; below the dashed line, the counters\u2019 front: feet.' });
  const howMany = el('p', { id: 'points-left' });
  const findings = el('div', { id: 'ground-told' });
  const lie = el('p', { id: 'ground-lie' });
  const ways = el('div', { class: 'row', id: 'ground-ways' },
    ...['What is high', 'The fall', 'The cuts'].map((text) => el('button', { type: 'button', class: 'plain', text, click: () => openResult(text) })));
  place.append(el('h3', { text: 'The ground, point by point' }), start,
    el('div', { class: 'survey' }, howMany, plan, marks, card, lie, findings, ways), say);
  const body = place.querySelector('.survey');

  function run(change, then) {
    const before = chosen;
    chosen = then;
    const problems = after(change());
    setText(say, problems.map(({ message }) => message).join(' '));
    if (problems.length > 0) chosen = before;
    return problems.length === 0;
  }
  function choose(index) {
    chosen = index;
    draw();
  }
  const input = () => controls[0]?.input;
  // What is typed counts before the next point is shown; what is refused keeps its point.
  function next() {
    input()?.blur();
    if (input()?.getAttribute('aria-invalid')) return;
    points[chosen].reading = input()?.value.trim() || null;
    const others = [...points.keys()].map((i) => (chosen + 1 + i) % count);
    choose(others.find((i) => points[i].reading === null) ?? others[0]);
    input()?.focus();
    input()?.select();
  }
  // The newest line is the one that stands there now: what is read again is read from it.
  const newest = () => Math.max(...points.map(({ setup }) => setup));
  function again() {
    const { x_mm, y_mm, kind } = points[chosen];
    focusNext = run(() => engine.addPoint(x_mm, y_mm, kind, newest()), count);
  }
  // What keeps the newest line from being followed by another; '' when nothing does.
  function lacking() {
    const line = newest();
    const name = lines[line];
    const { level_lines = [], loops = [], not_joined } = engine.report().survey ?? {};
    const read = level_lines.some(({ setup }) => setup === name.toLowerCase());
    if (line === 0) return read ? '' : 'Nothing is read from level line A yet.';
    if (!loops.some(({ setups }) => setups.includes(name.toLowerCase()))) {
      return `Level line ${name} still needs two points that were read from another line too; it has ${read && not_joined === 0 ? 'one' : 'none'}. Tap such a point, then \u201CRead it again\u201D.`;
    }
    return line === lines.length - 1 ? `${name} is the last of ${lines.length} lines.` : '';
  }
  // All that is not read yet will be read from the new line: the station says so, and a reload keeps it.
  function newLine() {
    const lacks = lacking();
    asked = true;
    setText(needs, lacks);
    if (lacks !== '') return;
    const config = engine.config();
    const all = config.survey.points;
    const setup = table.get(path('setup')).choices[newest() + 1].value;
    for (const [index, point] of all.entries()) if (points[index].reading === null) point.setup = setup;
    const { reading_mm, ...place } = all[chosen];
    const again = reading_mm !== undefined;
    if (again) all.push({ ...place, setup });
    focusNext = run(() => engine.openJson(JSON.stringify(config)), again ? count : chosen);
  }
  function remove() {
    const gone = chosen;
    run(() => engine.removePoint(gone), Math.max(0, gone - 1));
  }
  function add() {
    const { x_mm, y_mm, kind } = points[chosen];
    run(() => engine.addPoint(x_mm + 200, y_mm, kind, newest()), count);
  }

  // The plan has its front below, as one stands before it.
  const box = () => {
    const xs = points.map(({ x_mm }) => x_mm);
    const ys = points.map(({ y_mm }) => y_mm);
    const [low, high] = [Math.min(0, ...xs) - margin_mm, Math.max(...xs) + margin_mm];
    const [near, far] = [Math.min(0, ...ys) - margin_mm, Math.max(...ys) + margin_mm];
    return { low, far, wide: high - low, deep: far - near };
  };
  plan.addEventListener('click', (event) => {
    const area = plan.getBoundingClientRect();
    const { low, far, wide, deep } = box();
    // A plan that is too high for the screen stands in the middle of its box.
    const scale = Math.min(area.width / wide, area.height / deep);
    const left = area.x + (area.width - wide * scale) / 2;
    const top = area.y + (area.height - deep * scale) / 2;
    let best = null;
    points.forEach((point, index) => {
      const dx = (point.x_mm - low) * scale + left - event.clientX;
      const dy = (far - point.y_mm) * scale + top - event.clientY;
      const away = Math.hypot(dx, dy);
      // The first of several readings at one place; a tap on the chosen one goes to the next of them.
      if (away <= farthest && (!best || away < best.away - 0.5 || (best.index === chosen && away < best.away + 0.5))) best = { index, away };
    });
    if (best) choose(best.index);
  });

  function drawPlan() {
    const { low, far, wide, deep } = box();
    const unit = wide / 360;
    plan.setAttribute('viewBox', `0 0 ${wide} ${deep}`);
    plan.style.aspectRatio = `${wide} / ${deep}`;
    const at = ({ x_mm, y_mm }) => [x_mm - low, far - y_mm];
    const parts = [svgEl('line', { class: 'front', x1: 0, x2: wide, y1: far, y2: far })];
    for (const panel of engine.report().survey?.panels ?? []) {
      parts.push(svgEl('line', {
        class: panel.shows ? 'edge' : 'edge unseen',
        x1: panel.from_x_mm - low, y1: far - panel.from_y_mm, x2: panel.to_x_mm - low, y2: far - panel.to_y_mm,
      }));
    }
    points.forEach((point, index) => {
      const [x, y] = at(point);
      const mark = point.doubtful ? 'doubtful' : point.reading === null ? 'missing' : 'read';
      const size = (index === chosen ? 9 : 6) * unit;
      const group = svgEl('g', { class: `spot ${mark}${index === chosen ? ' chosen' : ''}`, 'data-point': index });
      if (index === chosen) group.append(svgEl('circle', { class: 'ring', cx: x, cy: y, r: 16 * unit }));
      if (point.repeated) group.append(svgEl('circle', { class: 'twice', cx: x, cy: y, r: size + 4 * unit }));
      if (mark === 'doubtful') {
        group.append(svgEl('path', { d: `M${x} ${y - 1.4 * size}L${x + 1.4 * size} ${y}L${x} ${y + 1.4 * size}L${x - 1.4 * size} ${y}Z` }));
      } else if (point.kind === 1) {
        group.append(svgEl('rect', { x: x - size, y: y - size, width: 2 * size, height: 2 * size }));
      } else {
        group.append(svgEl('circle', { cx: x, cy: y, r: size }));
      }
      parts.push(group);
    });
    plan.replaceChildren(...parts);
  }

  function drawCard() {
    const point = points[chosen];
    const lengthText = (key) => {
      const field = table.get(path(key));
      return `${field.values[chosen]} ${field.unit}`;
    };
    const back = lengthText('y_mm');
    const kinds = table.get(path('kind')).choices;
    setText(head, `Point ${chosen + 1} of ${count}: ${kinds[point.kind].label.toLowerCase()}`);
    setText(state, [
      `${lengthText('x_mm')} along the front, ${back.startsWith('-') ? `${back.slice(1)} before it` : `${back} behind it`}`,
      `level line ${lines[point.setup]}`,
      point.repeated && `read ${point.repeated} times`,
      point.doubtful && 'doubtful: read it again',
      point.reading === null && 'to be read',
    ].filter(Boolean).join('; ') + '.');
    // Controls are made anew where another point is shown, and stay while one is typed in.
    const key = `${chosen}/${count}`;
    if (shownFor !== key) {
      shownFor = key;
      controls = ['reading_mm', 'x_mm', 'y_mm', 'kind', 'setup'].map((name) => makeField(table.get(path(name)), chosen, actions, name === 'reading_mm'));
      reading.replaceChildren(controls[0].root);
      where.replaceChildren(...controls.slice(1).map(({ root }) => root));
      input().enterKeyHint = 'next';
      input().addEventListener('keydown', (event) => {
        if (event.key !== 'Enter') return;
        event.preventDefault();
        next();
      });
    }
    for (const control of controls) control.update(actions.value(control.field, chosen));
    if (focusNext) input().focus();
    focusNext = false;
    setText(document.getElementById('point-next'), points.some(({ reading: r }, i) => r === null && i !== chosen) ? 'Next to read' : 'Next');
  }

  // The first two rows of the section's first table name the highest and the lowest point.
  function showLie(survey, [high, low]) {
    const known = (survey?.highest_point ?? null) !== null && low;
    const { falls_to } = survey?.plane ?? {};
    const falls = falls_to === undefined ? '' : falls_to ? `It falls to the ${falls_to}.` : 'It is level.';
    setText(lie, [known && `${high.join(': ')}; ${low.join(': ').toLowerCase()}; both from where feet stand.`, falls].filter(Boolean).join(' '));
    setHidden(lie, lie.textContent === '');
    setHidden(ways, !known);
    setHidden(ways.children[1], !falls);
    setHidden(ways.lastElementChild, !survey?.base);
  }

  function draw() {
    if (count === 0) return;
    drawPlan();
    drawCard();
  }

  return {
    reveal() {
      card.scrollIntoView({ block: 'start' });
      head.focus({ preventScroll: true });
    },
    update(rows, report, page) {
      table = rows;
      const values = (key) => rows.get(path(key)).values;
      count = values('reading_mm').length;
      setHidden(start, count > 0);
      setHidden(body, count === 0);
      if (count === 0) {
        points = [];
        shownFor = '';
        return;
      }
      chosen = Math.min(chosen, count - 1);
      const choice = (key, index) => rows.get(path(key)).choices.findIndex(({ value }) => value === values(key)[index]);
      // The engine's own places, in mm: a reading belongs to the first one at its place.
      const places = report.survey?.points ?? [];
      const config = engine.config().survey?.points ?? [];
      points = config.map((point, index) => {
        // What equals its default is left out of a file.
        const { x_mm = 0, y_mm = 0 } = point;
        const spot = places.find((one) => Math.abs(one.x_mm - x_mm) <= 2 && Math.abs(one.y_mm - y_mm) <= 2);
        return {
          x_mm, y_mm, reading: values('reading_mm')[index], kind: choice('kind', index), setup: choice('setup', index),
          doubtful: Boolean(spot?.doubtful), repeated: (spot?.readings ?? 0) > 1 ? spot.readings : 0,
        };
      });
      const unread = points.filter(({ reading: r }) => r === null).length;
      setText(howMany, unread > 0 ? `${count - unread} of ${count} read.` : `All ${count} are read.`);
      const ground = page.sections.find(({ id }) => id === 'ground');
      const items = (ground?.items ?? []).filter(({ why }) => told.includes(why));
      showLie(report.survey, ground?.tables?.[0]?.rows ?? []);
      syncList(findings, items, () => el('p', {}, verdictMark(), ' ', el('span')), (line, item) => {
        setVerdict(line.firstElementChild, item.verdict);
        setText(line.lastElementChild, item.sentence);
      });
      if (asked) setText(needs, lacking());
      draw();
    },
  };
}
