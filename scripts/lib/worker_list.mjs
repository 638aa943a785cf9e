// Gives a page's service worker its list: every file of the folder with its hash, and the version,
// the hash of that list. One list, so that a browser takes over a build as a whole or not at all.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';

export const workerName = 'service-worker.js';

function filesBelow(folder, below = '') {
  return readdirSync(path.join(folder, below), { withFileTypes: true }).flatMap((entry) => {
    const name = below + entry.name;
    return entry.isDirectory() ? filesBelow(folder, `${name}/`) : [name];
  }).sort();
}

// The worker's script for the page in `folder`; `keep(name)` says which of its files belong to it.
export function listedWorker(template, folder, keep = () => true) {
  const digest = (data, form) => createHash('sha256').update(data).digest(form);
  const files = filesBelow(folder).filter((name) => name !== workerName && keep(name))
    .map((name) => [name, digest(readFileSync(path.join(folder, name)), 'base64')]);
  const list = JSON.stringify(files);
  const put = (text, place, value) => {
    if (text.split(place).length !== 2) throw new Error(`${workerName} has no single place for ${place}`);
    return text.replace(place, () => value);
  };
  return put(put(template, "/* the build's version */ ''", `'${digest(list, 'hex').slice(0, 12)}'`),
    "/* the build's list: [name, sha256 in base64] */ []", list);
}
