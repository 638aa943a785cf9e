// Puts the controls of the field table into the parts of the document, and keeps them in step
// with the station. A new row of the table appears by itself, at worst under "More".

import { el, setHidden, setText, syncList } from './dom.js';
import { makeField } from './fields.js';

// The first group whose prefix fits takes a field. `closed` ones open by a tap.
const stationGroups = [
  { into: 'main-controls', prefixes: ['station.oven_base_height_mm', 'station.counter_height_mm', 'view.standoff_mm', 'station.prep_depth_mm'] },
  { into: 'share-fields', prefixes: ['title'] },
  { into: 'trial-fields', prefixes: ['trial.'] },
  { into: 'weights', title: 'Our judgement: the weights', closed: true, prefixes: ['weights.'] },
  { into: 'oven-fields', title: 'Oven', prefixes: ['oven.kind', 'oven.fuel', 'oven.floor_above_base_mm', 'oven.mouth_width_mm', 'oven.mouth_height_mm', 'oven.mouth_shape', 'oven.mouth_side_height_mm', 'oven.floor_depth_mm', 'oven.floor_width_mm'] },
  { into: 'oven-fields', title: 'What the manual asks to keep clear', prefixes: ['oven.listed_clearance.'] },
  { into: 'oven-fields', title: 'More about the oven', closed: true, prefixes: ['oven.'] },
  { into: 'oven-fields', title: 'Looking and baking', closed: true, prefixes: ['view.', 'peel.'] },
  { into: 'oven-fields', title: 'A cabinet that is already there', prefixes: ['station.existing_counter_mm'] },
  { into: 'oven-fields', title: 'The station', closed: true, prefixes: ['station.'] },
  { into: 'oven-fields', title: 'Against the heat', closed: true, prefixes: ['heat.'] },
  { into: 'oven-fields', title: 'Light', closed: true, prefixes: ['light.'] },
  { into: 'oven-fields', title: 'Cover', closed: true, prefixes: ['site.cover_height_mm', 'site.cover.'] },
  { into: 'oven-fields', title: 'What local rules ask to keep clear', closed: true, prefixes: ['site.local_clearance.'] },
  { into: 'oven-fields', title: 'Wind, rain and ground', closed: true, prefixes: ['site.wind_from', 'site.wind_m_s', 'site.ground', 'site.fall_mm'] },
  { into: 'oven-fields', title: 'What stands near: house, grill, flue, gas', closed: true, prefixes: ['site.'] },
  { into: 'oven-fields', title: 'The ground and the base', closed: true, prefixes: ['survey.'] },
  { into: 'oven-fields', title: 'What it carries and what holds it', closed: true, prefixes: ['loads.'] },
  { into: 'oven-fields', title: 'Saw, power, paint and plan', closed: true, prefixes: ['shop.', 'power.', 'finish.', 'plan.'] },
  { into: 'as-built-text', prefixes: ['frame.as_built'] },
  { into: 'oven-fields', title: 'More', closed: true, prefixes: [''] },
];
const cookGroups = [
  { prefixes: ['name', 'stature_mm', 'build', 'age_years', 'at', 'handed'] },
  { title: 'Measured heights, in shoes', prefixes: ['eye_height_mm', 'elbow_height_mm', 'shoulder_height_mm'] },
  { title: 'Shoes, seat and share of the cooking', prefixes: [''] },
];
const cookKey = (field) => field.path.replace('cooks[].', '');
const groupOf = (groups, name) => groups.find(({ prefixes }) =>
  prefixes.some((prefix) => name === prefix || prefix === '' || (prefix.endsWith('.') && name.startsWith(prefix))));

const ofLamp = ['mount_across_mm', 'mount_ahead_mm', 'mount_up_mm', 'neck_mm', 'lumens', 'beam_deg']
  .map((key) => `light.${key}`);

// Questions that only some stations have an answer to; `said(path)` is the text of a field's value.
const askedWhen = {
  'cooks[].age_years': (said, cook) => said('cooks[].build', cook) === 'child',
  'cooks[].seat_height_mm': (said, cook) => said('cooks[].seated', cook) === 'true',
  'oven.mouth_side_height_mm': (said) => said('oven.mouth_shape') === 'arch',
  'oven.outer_mouth.side_height_mm': (said) => said('oven.outer_mouth.shape') === 'arch',
  ...Object.fromEntries([...ofLamp, 'light.head.across_mm', 'light.head.ahead_mm', 'light.head.up_mm']
    .map((path) => [path, (said) => said('light.mount') !== 'none'])),
};
// These have a value even where nobody asked; all others show what they were once given.
const hasDefault = new Set(['oven.mouth_side_height_mm', 'cooks[].seat_height_mm', ...ofLamp]);

// `actions` as for makeField, and removeCook(index), looking(index).
export function makeForms(actions) {
  const controls = [];
  const cookBoxes = [];

  const place = (field, index, parent) => {
    const control = makeField(field, index, actions);
    controls.push(control);
    parent.append(control.root);
    if (field.path === 'trial.at.cook') control.input.setAttribute('list', 'cook-names');
    return control;
  };
  const drop = (root) => {
    for (let i = controls.length - 1; i >= 0; --i) {
      if (root.contains(controls[i].root)) controls.splice(i, 1);
    }
    root.remove();
  };
  const fill = (groups, fields, index, parentOf, nameOf) => {
    for (const group of groups) {
      const own = fields.filter((field) => groupOf(groups, nameOf(field)) === group);
      if (own.length === 0) continue;
      own.sort((a, b) => rank(group, nameOf(a)) - rank(group, nameOf(b)));
      const body = parentOf(group);
      for (const field of own) {
        const { root } = place(field, index, body);
        // Among the main controls already, which a wide screen shows as well.
        if (field.path === 'oven.kind') root.classList.add('again');
      }
    }
  };
  // In the order that the group names them, then in the table's.
  const rank = (group, name) => {
    const at = group.prefixes.indexOf(name);
    return at < 0 ? group.prefixes.length : at;
  };

  const form = () => el('form', { class: 'fields', novalidate: true });
  const stationParent = (group) => {
    const into = document.getElementById(group.into);
    if (!group.title) return into;
    const body = form();
    into.append(group.closed
      ? el('details', {}, el('summary', { text: group.title }), body)
      : el('fieldset', {}, el('legend', { text: group.title }), body));
    return body;
  };

  const makeCook = (fields, index) => {
    const box = el('fieldset', { class: 'cook', tabindex: '-1' }, el('legend'));
    fill(cookGroups, fields, index, (group) => {
      const body = form();
      box.append(group.title ? el('details', {}, el('summary', { text: group.title }), body) : body);
      return body;
    }, cookKey);
    box.append(el('button', { type: 'button', class: 'plain remove', click: () => actions.removeCook(index) }));
    return box;
  };

  // The oven's kind and who looks are two of the four main controls, and act in their own way.
  const mainControls = (fields) => {
    const body = document.getElementById('main-controls');
    place(fields.find(({ path }) => path === 'oven.kind'), 0, body);
    const looking = el('select', { id: 'looking', change: () => actions.looking(Number(looking.value)) });
    body.append(el('div', { class: 'field' }, el('label', { for: 'looking', text: 'Who is looking?' }), looking));
    return looking;
  };
  let looking = null;
  const names = el('datalist', { id: 'cook-names' });

  // Enter in a field says "done" and sends nothing anywhere.
  document.addEventListener('submit', (event) => event.preventDefault());

  return {
    controls,
    // Fills everything from the table; `forget` drops what was typed and refused.
    update(table, person, forget) {
      const rows = new Map(table.fields.map((field) => [field.path, field]));
      const said = (path, index = 0) => rows.get(path)?.values[index] ?? null;
      const cooks = rows.get('cooks[].name').values;
      if (!looking) {
        document.body.append(names);
        looking = mainControls(table.fields);
        fill(stationGroups, table.fields.filter(({ path }) => !path.includes('[].')), 0, stationParent, ({ path }) => path);
      }
      const cookFields = table.fields.filter(({ path }) => path.startsWith('cooks[].'));
      const boxes = document.getElementById('cooks');
      while (cookBoxes.length > cooks.length) drop(cookBoxes.pop());
      while (cookBoxes.length < cooks.length) {
        const box = makeCook(cookFields, cookBoxes.length);
        cookBoxes.push(box);
        boxes.append(box);
      }
      cookBoxes.forEach((box, index) => {
        setText(box.firstElementChild, cooks[index]);
        const remove = box.lastElementChild;
        setText(remove, `Remove ${cooks[index]}`);
        setHidden(remove, cooks.length === 1);
      });
      syncList(looking, cooks, () => el('option'), (option, name, index) => {
        option.value = String(index);
        setText(option, name);
      });
      if (looking.value !== String(person)) looking.value = String(person);
      syncList(names, cooks, () => el('option'), (option, name) => { option.value = name; });

      for (const control of controls) {
        if (forget) control.forget();
        const value = actions.value(control.field, control.index);
        const asked = askedWhen[control.field.path];
        setHidden(control.root, Boolean(asked) && !asked(said, control.index)
          && (value.text === null || hasDefault.has(control.field.path)));
        control.update(value);
      }
    },
    // Brings a field into view and puts the focus in it.
    reveal(path) {
      const control = controls.find((one) => one.path === path && one.root.closest('.panel.open, .panel'));
      if (!control) return false;
      for (let part = control.root.parentElement; part; part = part.parentElement) {
        if (part.localName === 'details') part.open = true;
      }
      setHidden(control.root, false);
      control.root.scrollIntoView({ block: 'center' });
      control.input.focus({ preventScroll: true });
      return true;
    },
    focusCook: (index) => cookBoxes[index].focus(),
    // From its name on, wherever it is.
    showCook(index) {
      cookBoxes[index].scrollIntoView({ block: 'start' });
      cookBoxes[index].focus({ preventScroll: true });
    },
    panelOf: (path) => controls.find((one) => one.path === path)?.root.closest('.panel')?.id.replace('panel-', ''),
  };
}
