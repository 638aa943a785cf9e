// Puts a page together: what a web host serves, and nothing else.
//
// HTML and what must keep its name stay at the top. Everything else, script and wasm included, goes
// into one folder named after the content of all of it, so that files of two builds never mix and a
// host may let a browser keep them for ever. References in HTML to those files are rewritten;
// between themselves they refer to each other by plain name.
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const options = {};
for (let i = 2; i < process.argv.length; i += 2) options[process.argv[i].slice(2)] = process.argv[i + 1];

function fail(message) {
  console.error(`page: ${message}`);
  process.exit(1);
}

// A service worker's reach is the folder it is served from, and a manifest names places in it.
const keepsItsName = (name) =>
  /\.(html|webmanifest)$/.test(name) || /(^|\/)(service-worker\.js|robots\.txt)$/.test(name);

const files = readFileSync(options.files, 'utf8').split('\n').filter(Boolean)
  .map((file) => ({ name: path.relative(options.root, file).split(path.sep).join('/'), file }));
const wasm = options.program.replace(/\.js$/, '.wasm');
for (const file of [options.program, wasm]) {
  // A failed link can leave the wasm behind without its script.
  if (!existsSync(file)) fail(`${file} was not made`);
  files.push({ name: path.basename(file), file });
}

const top = files.filter(({ name }) => keepsItsName(name));
const rest = files.filter(({ name }) => !keepsItsName(name));
if (!top.some(({ name }) => name === 'index.html')) fail('index.html is missing');

const hash = createHash('sha256');
for (const { name, file } of rest.sort((a, b) => (a.name < b.name ? -1 : 1))) {
  hash.update(`${name}\0`).update(readFileSync(file)).update('\0');
}
const folder = `v-${hash.digest('hex').slice(0, 12)}`;

const placed = new Set(rest.map(({ name }) => name));
const reference = /((?:src|href|content|data-[a-z-]+)\s*=\s*")(?:\.\/)?([^"#?:]+)(")/g;
const rewrite = (text) => text.replace(reference, (whole, before, name, after) =>
  placed.has(name) ? `${before}${folder}/${name}${after}` : whole);

// A page that is being served stays whole until the new files are there.
mkdirSync(path.join(options.out, folder), { recursive: true });
for (const { name, file } of rest) {
  const target = path.join(options.out, folder, name);
  mkdirSync(path.dirname(target), { recursive: true });
  copyFileSync(file, target);
}
const wanted = new Set([folder, 'notices.txt']);
copyFileSync(options.notices, path.join(options.out, 'notices.txt'));
for (const { name, file } of top) {
  wanted.add(name.split('/')[0]);
  const target = path.join(options.out, name);
  mkdirSync(path.dirname(target), { recursive: true });
  writeFileSync(target, rewrite(readFileSync(file, 'utf8')));
}
for (const name of readdirSync(options.out)) {
  if (!wanted.has(name)) rmSync(path.join(options.out, name), { recursive: true });
}
