// A station as a file: saved, picked, and dropped on the page.

import { el } from './dom.js';

const find = (id) => document.getElementById(id);
// A station is a few thousand bytes; a larger file is something else, and is not read at all.
const largestFile = 1 << 20;
export const opened = 'Opened.';

const type = 'application/json';
const fileName = 'hearthsight-station.json';
export const fileOf = (engine) => new File([engine.configText()], fileName, { type });

// A place of the browser's own for `content`; some browsers read it only after this turn.
export function placeOf(content) {
  const place = URL.createObjectURL(content);
  setTimeout(() => URL.revokeObjectURL(place), 60000);
  return place;
}
export const save = (content, name) => el('a', { href: placeOf(content), download: name }).click();

export const saveFile = (engine) => save(fileOf(engine), fileName);

// Why a file cannot be opened, or ''. `open(text)` gives the problems.
export async function openFile(file, open) {
  if (file.size > largestFile) return 'That file is too large to be a station.';
  let text;
  try {
    text = await file.text();
  } catch {
    return 'That file could not be read.';
  }
  const problems = open(text);
  if (problems.length === 0) return '';
  return `That file is not a station that this page can open. ${problems.map(({ message }) => message).join(' ')}`;
}

// A file dropped anywhere on the page. `take(file)` opens it, `refuse(text)` says why not.
export function listenToDrops({ take, refuse }) {
  const holdsFiles = (event) => [...(event.dataTransfer?.types || [])].includes('Files');
  addEventListener('dragover', (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();  // else the browser leaves the page for the file
    event.dataTransfer.dropEffect = 'copy';
  });
  addEventListener('drop', (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    const { files } = event.dataTransfer;
    if (files.length === 1) take(files[0]); else refuse('Drop one file at a time.');
  });
}

export function listenToPicker(take) {
  find('open-file').addEventListener('change', (event) => {
    const [file] = event.target.files;
    event.target.value = '';
    if (file) take(file);
  });
}
