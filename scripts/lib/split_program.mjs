// Splits a linked program in two files of one memory and one table: what a person waits for, and
// what may come after the first picture. A list of names says where the second part begins; what
// only it can reach follows by itself, so new code falls where it belongs. binaryen's wasm-split
// does the cut. Code that the list says nothing ever calls is left out of both. The same input gives
// the same two files.
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

// Unsigned LEB128, as wasm writes sizes: [value, where it ends].
function readSize(bytes, at) {
  let value = 0;
  for (let scale = 1; ; scale *= 128) {
    value += (bytes[at] & 127) * scale;
    if (bytes[at++] < 128) return [value, at];
  }
}
function writeSize(value) {
  const bytes = [];
  for (; value > 127; value = Math.floor(value / 128)) bytes.push((value & 127) | 128);
  return Buffer.from([...bytes, value]);
}

// The code section's body with the functions at `dropped` emptied: no locals, unreachable, end.
function withoutCode(body, dropped) {
  let [count, at] = readSize(body, 0);
  const parts = [body.subarray(0, at)];
  for (let index = 0; index < count; ++index) {
    const [size, start] = readSize(body, at);
    parts.push(dropped.has(index) ? Buffer.from([3, 0, 0, 0x0b]) : body.subarray(at, start + size));
    at = start + size;
  }
  return Buffer.concat(parts);
}

// A wasm file without names, tools and other remarks, none of which a browser needs, and without
// the code of the functions at `dropped`. Sections follow each other after eight bytes: an id, a
// size, a body.
function slimmed(bytes, dropped) {
  const remark = 0;
  const code = 10;
  const parts = [bytes.subarray(0, 8)];
  for (let at = 8; at < bytes.length;) {
    const id = bytes[at];
    const [size, start] = readSize(bytes, at + 1);
    const body = bytes.subarray(start, start + size);
    at = start + size;
    if (id === remark) continue;
    const kept = id === code ? withoutCode(body, dropped) : body;
    parts.push(Buffer.from([id]), writeSize(kept.length), kept);
  }
  return Buffer.concat(parts);
}

// Without a list nothing moves, and the second file is a program without content.
if (!options.list) {
  const whole = readFileSync(options.wasm);
  writeFileSync(options.first, whole);
  writeFileSync(options.later, whole.subarray(0, 8));
  process.exit(0);
}

const lines = readFileSync(options.list, 'utf8').split('\n').filter((line) => line && !line.startsWith('#'));
const mark = 'never ';
const never = lines.filter((line) => line.startsWith(mark)).map((line) => new RegExp(line.slice(mark.length)));
const notFirst = lines.filter((line) => !line.startsWith(mark)).map((line) => new RegExp(line)).concat(never);
const anyOf = (patterns) => (name) => patterns.some((pattern) => pattern.test(name));
const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-split-'));
try {
  const file = (name) => path.join(folder, name);
  const run = (program, ...rest) => execFileSync(program, rest, { stdio: ['ignore', 'ignore', 'inherit'] });
  run(options['wasm-dis'], options.wasm, '-o', file('named.wat'));
  const program = readProgram(readFileSync(file('named.wat'), 'utf8'));
  const all = [...program.functions.keys()];
  if (all.length === 0) throw new Error(`${options.wasm} has no names`);
  for (const pattern of notFirst) {
    if (!all.some((name) => pattern.test(name))) throw new Error(`no function is named ${pattern.source}`);
  }
  const first = reachable(program, anyOf(notFirst));
  const called = reachable(program, anyOf(never));
  const later = all.filter((name) => !first.has(name) && called.has(name));
  const dropped = all.filter((name) => !called.has(name));
  const place = (name) => program.functions.get(name).index;

  // Without names wasm-split knows a function by its place.
  writeFileSync(file('plain.wasm'), slimmed(readFileSync(options.wasm), new Set(dropped.map(place))));
  writeFileSync(file('later.txt'), later.map(place).join('\n'));
  run(options['wasm-split'], file('plain.wasm'), '--enable-mutable-globals', `--split-funcs=@${file('later.txt')}`,
    '--import-namespace=first', '--placeholder-namespace=later', '--export-prefix=%',
    '-o1', options.first, '-o2', options.later);
  const part = (name) => (first.has(name) ? 'first' : called.has(name) ? 'later' : 'never');
  writeFileSync(options.report, all.map((name) => `${part(name)} ${name}\n`).join(''));
} catch (error) {
  console.error(`split: ${error.message} (${options.list})`);
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}
