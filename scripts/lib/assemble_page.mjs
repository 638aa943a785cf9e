// Puts a page together: what a web host serves, and nothing else.
//
// HTML and what must keep its name stay at the top. Everything else, script and wasm included, goes
// into one folder named after the content of all of it, so that files of two builds never mix and a
// host may let a browser keep them for ever. References in HTML to those files are rewritten;
// between themselves they refer to each other by plain name.
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { bundleModules, smallScript, smallStyle } from './bundle.mjs';
import { drawIcon, icons } from './draw_icons.mjs';
import { listedWorker, workerName } from './worker_list.mjs';

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
// em++'s script and what it loads.
for (const file of options.program.split('|')) {
  // A failed link can leave the wasm behind without its script.
  if (!existsSync(file)) fail(`${file} was not made`);
  files.push({ name: path.basename(file), file });
}

// With a compiler (a page that ships): scripts and styles become small, and modules few.
let dropped = new Set();
if (options.compiler) {
  const byName = new Map(files.map((entry) => [entry.name, entry]));
  const first = byName.get('js/main.js');
  const later = byName.get('js/document.js');
  if (first && later) {
    const { texts, parts } = bundleModules(options.compiler, first.file, later.file);
    for (const name of ['main', 'document']) byName.get(`js/${name}.js`).text = texts.get(`${name}.js`);
    dropped = new Set(files.filter(({ file, text }) => parts.includes(file) && text === undefined).map(({ name }) => name));
  }
  const ours = ({ name, file, text }) => file.startsWith(options.root + path.sep) && text === undefined && name !== workerName;
  for (const entry of files.filter(ours)) {
    if (entry.name.endsWith('.css')) entry.text = smallStyle(readFileSync(entry.file, 'utf8'));
    if (entry.name.endsWith('.js')) entry.text = dropped.has(entry.name) ? '' : smallScript(options.compiler, entry.file);
  }
}
const content = ({ file, text }) => text ?? readFileSync(file);

// What the first paint waits for stands in the page itself, allowed by its hash: on a slow line a
// request costs half a second. Only a page that ships; what others ask for by name stays a file too.
const standsIn = options.compiler ? ['theme.css', 'page.css', 'boot.js'] : [];
const staysAFile = ['theme.css'];
const inPage = new Map(files.filter(({ name }) => standsIn.includes(name))
  .map((entry) => [entry.name, String(content(entry)).trim()]));
function withOwn(html) {
  const hashes = { style: [], script: [] };
  const put = (kind, name) => {
    const text = inPage.get(name);
    hashes[kind].push(`'sha256-${createHash('sha256').update(text).digest('base64')}'`);
    return `<${kind}>${text}</${kind}>`;
  };
  const links = [...inPage.keys()].filter((name) => name.endsWith('.css')).map((name) => `<link rel="stylesheet" href="${name}">\n`);
  let out = html;
  if (links.length > 0 && links.every((link) => html.includes(link))) {
    // One sheet, in the order of the links.
    const [first, ...others] = links.sort((a, b) => html.indexOf(a) - html.indexOf(b));
    const names = [first, ...others].map((link) => /href="([^"]+)"/.exec(link)[1]);
    inPage.set('all.css', names.map((name) => inPage.get(name)).join(''));
    for (const link of others) out = out.replace(link, '');
    out = out.replace(first, () => `${put('style', 'all.css')}\n`);
  }
  const boot = '<script src="boot.js"></script>';
  if (inPage.has('boot.js') && out.includes(boot)) out = out.replace(boot, () => put('script', 'boot.js'));
  for (const [kind, list] of Object.entries(hashes)) {
    if (list.length === 0) continue;
    const place = `${kind}-src 'self'`;
    if (!out.includes(place)) fail(`the page's policy has no ${place}`);
    out = out.replace(place, () => `${place} ${list.join(' ')}`);
  }
  return out;
}

const top = files.filter(({ name }) => keepsItsName(name));
const rest = files.filter(({ name }) => !keepsItsName(name) && !dropped.has(name)
  && (!inPage.has(name) || staysAFile.includes(name)));
if (!top.some(({ name }) => name === 'index.html')) fail('index.html is missing');

const hash = createHash('sha256');
for (const entry of rest.sort((a, b) => (a.name < b.name ? -1 : 1))) {
  hash.update(`${entry.name}\0`).update(content(entry)).update('\0');
}
const folder = `v-${hash.digest('hex').slice(0, 12)}`;

const placed = new Set(rest.map(({ name }) => name));
const reference = /((?:src|href|content|data-[a-z-]+)\s*=\s*")(?:\.\/)?([^"#?:]+)(")/g;
// A hint to fetch what went into another file is out of place.
const hint = /<link rel="modulepreload" href="([^"]+)">\n/g;
const rewrite = (text) => text.replace(hint, (whole, name) => (dropped.has(name) ? '' : whole))
  .replace(reference, (whole, before, name, after) =>
    (placed.has(name) ? `${before}${folder}/${name}${after}` : whole));

// A page that is being served stays whole until the new files are there.
mkdirSync(path.join(options.out, folder), { recursive: true });
for (const entry of rest) {
  const target = path.join(options.out, folder, entry.name);
  mkdirSync(path.dirname(target), { recursive: true });
  writeFileSync(target, content(entry));
}
const wanted = new Set([folder, 'notices.txt']);
copyFileSync(options.notices, path.join(options.out, 'notices.txt'));
const drawing = files.find(({ name }) => name === 'icon.svg');
if (drawing) {
  wanted.add('icons');
  mkdirSync(path.join(options.out, 'icons'), { recursive: true });
  for (const [name, size] of icons) {
    writeFileSync(path.join(options.out, 'icons', name), drawIcon(readFileSync(drawing.file, 'utf8'), size));
  }
}
for (const { name, file } of top.filter((entry) => entry.name !== workerName)) {
  wanted.add(name.split('/')[0]);
  const target = path.join(options.out, name);
  mkdirSync(path.dirname(target), { recursive: true });
  writeFileSync(target, rewrite(withOwn(readFileSync(file, 'utf8'))));
}
// The worker last: it lists what is there.
const template = top.find(({ name }) => name === workerName);
if (template) {
  const worker = path.join(options.out, workerName);
  const isPart = (name) => wanted.has(name.split('/')[0]) && name !== workerName;
  writeFileSync(worker, listedWorker(readFileSync(template.file, 'utf8'), options.out, isPart));
  if (options.compiler) writeFileSync(worker, smallScript(options.compiler, worker));
  wanted.add(workerName);
}
for (const name of readdirSync(options.out)) {
  if (!wanted.has(name)) rmSync(path.join(options.out, name), { recursive: true });
}
