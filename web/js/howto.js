// How a cook is measured by tape, as a small drawing beside the words: a figure against a door frame,
// where the mark goes, and the tape from the ground up to it. Our own figure, no one's portrait.

import { svgEl } from './dom.js';

const ground = 184;

// In the drawing's own units: 1 mm of an adult of 1700 mm is a tenth. `at`: the mark's height there,
// `from`: where on the body the level to the mark starts, `mark`: what is written beside it.
const marks = {
  'cooks[].stature_mm': { at: 14, from: 52, mark: 'book', says: 'Heels and head to the frame, barefoot, a book flat on the head; the tape goes from the floor to its underside.' },
  'cooks[].eye_height_mm': { at: 26, from: 69, mark: 'eye', says: 'In shoes, looking straight ahead; a mark level with the outer corner of the eye, the tape from the ground to it.' },
  'cooks[].elbow_height_mm': { at: 76, from: 76, mark: 'elbow', says: 'In shoes, arm hanging; a mark level with the outer elbow joint, the tape from the ground to it.' },
  'cooks[].shoulder_height_mm': { at: 45, from: 74, mark: 'shoulder', says: 'In shoes; a mark level with the bony tip of the shoulder, the tape from the ground to it.' },
  'cooks[].shoe_mm': { at: 180, from: 62, mark: 'sole', says: 'The thickness of the sole under the heel, from the ground to where the heel stands.' },
  'cooks[].seat_height_mm': { at: 134, from: 66, mark: 'seat', seated: true, says: 'With the cook sitting, from the ground to the top of the cushion.' },
};

const standing = 'M60 14a8 9 0 1 0 .1 0M63 30h-6v8h6zM50 38h20q6 1 6 9v58h-5V56h-1v44l-1 80h4v4H61v-70h-2v70H47v-4h4l-1-80V56h-1v49h-5V47q0-8 6-9z';
const sitting = 'M60 54a8 9 0 1 0 .1 0M63 70h-6v8h6zM56 78h8q6 2 7 12v30h28q6 0 6 6v52h8v6H97v-46H58q-7 0-7-8V90q0-10 5-12z';

// The drawing for a field of the table, or null where no tape is needed.
export function howTo(path) {
  const found = marks[path];
  if (!found) return null;
  const { at, from, mark, says, seated } = found;
  const line = (d, name) => svgEl('path', { d, class: name });
  return svgEl('svg', { viewBox: '0 0 216 190', role: 'img', 'aria-label': says, class: 'howto' },
    line(`M8 ${ground}h200`, 'line'),
    line(`M126 6v${ground - 6}h10V6`, 'line'),
    ...(seated ? [line('M46 134h46v8H46zM50 142v42M88 142v42', 'line')] : []),
    line(seated ? sitting : standing, 'figure'),
    line(`M${from} ${at}H126`, 'level'),
    line(`M150 ${ground}V${at}M145 ${at}h10M145 ${ground}h10`, 'tape'),
    svgEl('text', { x: 158, y: Math.min(at + 10, ground - 4) }, mark));
}
