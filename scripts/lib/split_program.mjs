// Splits a linked program in two files of one memory and one table: what a person waits for, and
// what may come after the first picture. A list of names says where the second part begins; what
// only it can reach follows by itself, so new code falls where it belongs. binaryen's wasm-split
// does the cut. The same input gives the same two files.
//
// Input is linked with names (--profiling-funcs); neither output has any.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const options = {};
for (let i = 2; i < process.argv.length; i += 2) options[process.argv[i].slice(2)] = process.argv[i + 1];

// wasm-dis writes $plain\20name or, newer, $"quoted name".
const named = String.raw`\$(?:"((?:[^"\\]|\\.)*)"|([^\s()]+))`;
const plain = (quoted, bare) => (quoted ?? bare).replace(/\\([0-9a-f]{2})/g, (whole, hex) => String.fromCharCode(Number.parseInt(hex, 16)));
const names = (text) => [...text.matchAll(new RegExp(named, 'g'))].map(([, quoted, bare]) => plain(quoted, bare));

// Who calls whom, who is called from outside or through the table, and in which order they stand.
function readProgram(text) {
  const functions = new Map();  // name: {index, calls}
  const roots = new Set();
  const patterns = {
    func: new RegExp(String.raw`^ \(func ${named}`),
    call: new RegExp(String.raw`\((?:return_)?call ${named}`, 'g'),
    exported: new RegExp(String.raw`^ \(export "[^"]*" \(func ${named}\)`),
  };
  let current = null;
  for (const line of text.split('\n')) {
    const func = patterns.func.exec(line);
    const exported = func ? null : patterns.exported.exec(line);
    if (func) {
      current = { index: functions.size, calls: [] };
      const name = plain(func[1], func[2]);
      if (functions.has(name)) throw new Error(`two functions are named ${name}`);
      functions.set(name, current);
    } else if (exported) {
      roots.add(plain(exported[1], exported[2]));
    } else if (/^ \(elem /.test(line)) {
      for (const name of names(line.replace(/^ \(elem (\$\S+ )?/, ''))) roots.add(name);
    } else if (/^ \(start /.test(line)) {
      for (const name of names(line)) roots.add(name);
    } else if (current) {
      for (const [, quoted, bare] of line.matchAll(patterns.call)) current.calls.push(plain(quoted, bare));
    }
  }
  return { functions, roots };
}

function reachable({ functions, roots }, isLater) {
  const seen = new Set();
  const open = [];
  const add = (name) => {
    if (seen.has(name) || !functions.has(name) || isLater(name)) return;
    seen.add(name);
    open.push(name);
  };
  for (const name of roots) add(name);
  while (open.length > 0) for (const name of functions.get(open.pop()).calls) add(name);
  return seen;
}

// A wasm file without names, tools and other remarks, none of which a browser needs. Sections follow
// each other after eight bytes: an id, 0 for remarks, and a size in LEB128.
function withoutRemarks(bytes) {
  const kept = [bytes.subarray(0, 8)];
  for (let start = 8; start < bytes.length;) {
    let at = start + 1;
    let size = 0;
    for (let scale = 1; ; scale *= 128) {
      size += (bytes[at] & 127) * scale;
      if (bytes[at++] < 128) break;
    }
    if (bytes[start] !== 0) kept.push(bytes.subarray(start, at + size));
    start = at + size;
  }
  return Buffer.concat(kept);
}

// Without a list nothing moves, and the second file is a program without content.
if (!options.list) {
  const whole = readFileSync(options.wasm);
  writeFileSync(options.first, whole);
  writeFileSync(options.later, whole.subarray(0, 8));
  process.exit(0);
}

const list = readFileSync(options.list, 'utf8').split('\n').filter((line) => line && !line.startsWith('#'))
  .map((line) => new RegExp(line));
const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-split-'));
try {
  const file = (name) => path.join(folder, name);
  const run = (program, ...rest) => execFileSync(program, rest, { stdio: ['ignore', 'ignore', 'inherit'] });
  run(options['wasm-dis'], options.wasm, '-o', file('named.wat'));
  const program = readProgram(readFileSync(file('named.wat'), 'utf8'));
  const all = [...program.functions.keys()];
  if (all.length === 0) throw new Error(`${options.wasm} has no names`);
  for (const pattern of list) {
    if (!all.some((name) => pattern.test(name))) throw new Error(`no function is named ${pattern.source}`);
  }
  const first = reachable(program, (name) => list.some((pattern) => pattern.test(name)));
  const later = all.filter((name) => !first.has(name));

  // Without names wasm-split knows a function by its place.
  writeFileSync(file('plain.wasm'), withoutRemarks(readFileSync(options.wasm)));
  writeFileSync(file('later.txt'), later.map((name) => program.functions.get(name).index).join('\n'));
  run(options['wasm-split'], file('plain.wasm'), '--enable-mutable-globals', `--split-funcs=@${file('later.txt')}`,
    '--import-namespace=first', '--placeholder-namespace=later', '--export-prefix=%',
    '-o1', options.first, '-o2', options.later);
  writeFileSync(options.report, [...all.filter((name) => first.has(name)).map((name) => `first ${name}`),
    ...later.map((name) => `later ${name}`), ''].join('\n'));
} catch (error) {
  console.error(`split: ${error.message} (${options.list})`);
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}
