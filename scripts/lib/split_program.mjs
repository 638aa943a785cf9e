// Splits a linked program in two files of one memory and one table: what a person waits for, and
// what may come after the first picture. A list of names says where the second part begins; what
// only it can reach follows by itself, so new code falls where it belongs. binaryen's wasm-split
// does the cut. Code that the list says nothing ever calls is left out of both, and what it says has
// nothing to do here does nothing. Texts with a mark (engine/base/packed_table.h) move too,
// and sentences that only the second part reads. The same input gives the same two files.
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
const funcLine = new RegExp(String.raw`^ \(func ${named}`);
const plain = (quoted, bare) => (quoted ?? bare).replace(/\\([0-9a-f]{2})/g, (whole, hex) => String.fromCharCode(Number.parseInt(hex, 16)));
const names = (text) => [...text.matchAll(new RegExp(named, 'g'))].map(([, quoted, bare]) => plain(quoted, bare));

// Who calls whom, who is called from outside or through the table, and in which order they stand.
function readProgram(text) {
  const functions = new Map();  // name: {index, calls}
  const roots = new Set();
  const patterns = {
    call: new RegExp(String.raw`\((?:return_)?call ${named}`, 'g'),
    exported: new RegExp(String.raw`^ \(export "[^"]*" \(func ${named}\)`),
  };
  let current = null;
  for (const line of text.split('\n')) {
    const func = funcLine.exec(line);
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

// Sections follow each other after eight bytes: an id, a size, a body.
const section = { remark: 0, types: 1, functions: 3, code: 10, data: 11, dataCount: 12 };
function sectionsOf(bytes) {
  const all = [];
  for (let at = 8; at < bytes.length;) {
    const [size, start] = readSize(bytes, at + 1);
    all.push({ id: bytes[at], body: bytes.subarray(start, start + size) });
    at = start + size;
  }
  return all;
}

// The entries of a section's body; `read` gives one and where it ends.
function entries(body, read) {
  const all = [];
  let [count, at] = readSize(body, 0);
  for (; count > 0; --count) {
    const [entry, end] = read(body, at);
    all.push(entry);
    at = end;
  }
  return all;
}

// The codes of the types that each function of the code section gives back.
function resultsOf(bytes) {
  const body = new Map(sectionsOf(bytes).map(({ id, body: own }) => [id, own]));
  const types = entries(body.get(section.types), (from, at) => {
    const [taken, afterCount] = readSize(from, at + 1);  // 0x60 stands before
    const [given, start] = readSize(from, afterCount + taken);
    return [[...from.subarray(start, start + given)], start + given];
  });
  return entries(body.get(section.functions), readSize).map((type) => types[type]);
}

// A function's code without locals: unreachable, or zero for each of its results.
const stopping = Buffer.from([0, 0x00, 0x0b]);
const zero = { 0x7f: [0x41, 0], 0x7e: [0x42, 0], 0x7d: [0x43, 0, 0, 0, 0], 0x7c: [0x44, 0, 0, 0, 0, 0, 0, 0, 0] };
const idling = (results) => Buffer.from([0, ...results.flatMap((type) => zero[type]), 0x0b]);

// A wasm file without names, tools and other remarks, none of which a browser needs, and with the
// code of `replaced` for the functions at those places.
function slimmed(bytes, replaced) {
  const parts = [bytes.subarray(0, 8)];
  for (const { id, body } of sectionsOf(bytes)) {
    if (id === section.remark) continue;
    let kept = body;
    if (id === section.code) {
      const code = entries(body, (from, at) => {
        const [size, start] = readSize(from, at);
        return [from.subarray(start, start + size), start + size];
      });
      kept = Buffer.concat([writeSize(code.length),
        ...code.map((own, place) => replaced.get(place) ?? own).flatMap((own) => [writeSize(own.length), own])]);
    }
    parts.push(Buffer.from([id]), writeSize(kept.length), kept);
  }
  return Buffer.concat(parts);
}

// What the memory holds from the start: [{address, bytes}].
function readAddress(bytes, at) {
  let value = 0;
  for (let shift = 0; ; shift += 7) {
    value |= (bytes[at] & 127) << shift;
    if (bytes[at++] < 128) return [shift < 25 && bytes[at - 1] & 64 ? value | (-1 << (shift + 7)) : value, at];
  }
}
function writeAddress(value) {
  const bytes = [];
  for (let rest = value; ; rest >>= 7) {
    const last = (rest >= -64 && rest < 64);
    bytes.push((rest & 127) | (last ? 0 : 128));
    if (last) return Buffer.from(bytes);
  }
}
const constant = 0x41;
const end = 0x0b;
const readData = (body) => entries(body, (from, at) => {
  if (from[at] !== 0 || from[at + 1] !== constant) throw new Error('data that does not stand at a fixed address');
  const [address, afterAddress] = readAddress(from, at + 2);
  const [size, start] = readSize(from, afterAddress + 1);
  return [{ address, bytes: from.subarray(start, start + size) }, start + size];
});
const writeData = (data) => Buffer.concat([writeSize(data.length), ...data.flatMap(({ address, bytes }) => [
  Buffer.from([0, constant]), writeAddress(address), Buffer.from([end]), writeSize(bytes.length), bytes])]);

// Every text with a mark: where it stands, and its bytes.
const mark = 'texts that come later: ';
function textsThatComeLater(data) {
  const found = [];
  for (const { address, bytes } of data) {
    for (let at = bytes.indexOf(mark); at >= 0; at = bytes.indexOf(mark, at + 1)) {
      const size = Number(bytes.subarray(at + mark.length, at + mark.length + 7).toString('latin1'));
      if (!(size > 0 && at + size <= bytes.length)) throw new Error(`the texts at ${address + at} have no sound size`);
      found.push({ address: address + at, bytes: bytes.subarray(at, at + size) });
    }
  }
  return found;
}

// A program with other data in its place; the data of one that has none comes last.
function withData(program, data) {
  const parts = [program.subarray(0, 8)];
  const put = (id, body) => parts.push(Buffer.from([id]), writeSize(body.length), body);
  let there = false;
  for (const { id, body } of sectionsOf(program)) {
    if (id === section.data) there = true;
    put(id, id === section.data ? writeData(data) : id === section.dataCount ? writeSize(data.length) : body);
  }
  if (!there) put(section.data, writeData(data));
  return Buffer.concat(parts);
}

// Every number of the code that may be an address, by who has it: functions of the first part (or
// what stands outside of functions), and those of the later one.
function numbersIn(wat, partOf) {
  const numbers = { first: new Set(), later: new Set(), never: new Set() };
  let part = 'first';
  for (const line of wat.split('\n')) {
    // Where data stands is no one's reading it.
    if (/^ \(data /.test(line)) continue;
    const func = funcLine.exec(line);
    if (func) part = partOf(plain(func[1], func[2]));
    else if (/^ \(/.test(line)) part = 'first';
    for (const [, number] of line.matchAll(/(?:i(?:32|64)\.const |offset=)(\d+)/g)) numbers[part].add(Number(BigInt.asUintN(32, BigInt(number))));
  }
  return numbers;
}

// Sentences that only the later part reads: texts with a space and an end that a function of it names
// by where they begin, while no number in the first part, and none in the data, lies within them.
// Tables of letters, which code may reach from outside of them, have no space.
function sentencesOfLater(data, numbers) {
  const inUse = [...numbers.first];
  for (const { address, bytes } of data) {
    for (let at = (4 - address % 4) % 4; at + 4 <= bytes.length; at += 4) inUse.push(bytes.readUInt32LE(at));
  }
  inUse.sort((one, other) => one - other);
  const atLeast = (address) => {
    let low = 0;
    for (let high = inUse.length; low < high;) {
      const mid = (low + high) >> 1;
      if (inUse[mid] < address) low = mid + 1; else high = mid;
    }
    return inUse[low] ?? Infinity;
  };
  const found = [];
  for (const { address, bytes } of data) {
    let from = 0;
    for (let to = bytes.indexOf(0); to >= 0; from = to + 1, to = bytes.indexOf(0, from)) {
      const text = bytes.subarray(from, to);
      if (text.length < 8 || !text.includes(0x20) || text.some((byte) => byte < 0x20 && byte !== 0x0a)) continue;
      if (!numbers.later.has(address + from) || atLeast(address + from) <= address + to) continue;
      const before = found.at(-1);
      const whole = bytes.subarray(from, to + 1);
      // Two that follow each other are one piece.
      if (before && before.address + before.bytes.length === address + from) before.bytes = Buffer.concat([before.bytes, whole]);
      else found.push({ address: address + from, bytes: Buffer.from(whole) });
    }
  }
  return found;
}

// Takes marked texts, and sentences that only the later part reads, out of the first part's data and
// puts them in the later part's.
function moveTexts(firstFile, laterFile, wat, partOf) {
  const program = readFileSync(firstFile);
  const data = readData(sectionsOf(program).find(({ id }) => id === section.data).body);
  const numbers = numbersIn(wat, partOf);
  const sentences = sentencesOfLater(data, numbers);
  const texts = textsThatComeLater(data);
  if (texts.length === 0 || sentences.length === 0) throw new Error('no texts are found that come later');
  // Where they begin is what a function must know to read them.
  for (const { address } of texts) if (numbers.first.has(address)) throw new Error(`the first part reads texts that come later, at ${address}`);
  const rest = data.flatMap(({ address, bytes }) => {
    const kept = [];
    let from = 0;
    // Sentences lie among others: they become zeros, which need no room when compressed.
    const own = Buffer.from(bytes);
    for (const sentence of sentences) {
      const at = sentence.address - address;
      if (at >= 0 && at < own.length) own.fill(0, at, at + sentence.bytes.length);
    }
    for (const text of texts) {
      const at = text.address - address;
      if (at < 0 || at >= own.length) continue;
      kept.push({ address: address + from, bytes: own.subarray(from, at) });
      from = at + text.bytes.length;
    }
    kept.push({ address: address + from, bytes: own.subarray(from) });
    return kept.filter(({ bytes: part }) => part.length > 0);
  });
  const later = readFileSync(laterFile);
  const own = sectionsOf(later).find(({ id }) => id === section.data);
  writeFileSync(laterFile, withData(later, [...own ? readData(own.body) : [], ...texts, ...sentences]));
  writeFileSync(firstFile, withData(program, rest));
}

// Without a list nothing moves, and the second file is a program without content.
if (!options.list) {
  const whole = readFileSync(options.wasm);
  writeFileSync(options.first, whole);
  writeFileSync(options.later, whole.subarray(0, 8));
  process.exit(0);
}

const lines = readFileSync(options.list, 'utf8').split('\n').filter((line) => line && !line.startsWith('#'));
const marked = (mark) => lines.filter((line) => line.startsWith(mark)).map((line) => new RegExp(line.slice(mark.length)));
const always = marked('never ');
const never = [...always, ...marked('maybe ')];
const idle = marked('idle ');
const notFirst = lines.filter((line) => !/^(never|maybe|idle) /.test(line)).map((line) => new RegExp(line));
const anyOf = (patterns) => (name) => patterns.some((pattern) => pattern.test(name));
const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-split-'));
try {
  const file = (name) => path.join(folder, name);
  const run = (program, ...rest) => execFileSync(program, rest, { stdio: ['ignore', 'ignore', 'inherit'] });
  run(options['wasm-dis'], options.wasm, '-o', file('named.wat'));
  const wat = readFileSync(file('named.wat'), 'utf8');
  const program = readProgram(wat);
  const all = [...program.functions.keys()];
  if (all.length === 0) throw new Error(`${options.wasm} has no names`);
  // What only one file knows, a compiler may have put into its callers.
  const missing = [...notFirst, ...always, ...idle].filter((pattern) => !pattern.source.includes('anonymous namespace')
    && !all.some((name) => pattern.test(name)));
  if (missing.length > 0) throw new Error(`no function is named ${missing.map(({ source }) => source).join(' or ')}`);
  const idles = all.filter(anyOf(idle));
  for (const name of idles) program.functions.get(name).calls = [];
  const first = reachable(program, anyOf([...notFirst, ...never]));
  const called = reachable(program, anyOf(never));
  const later = all.filter((name) => !first.has(name) && called.has(name));
  const place = (name) => program.functions.get(name).index;

  // Without names wasm-split knows a function by its place.
  const linked = readFileSync(options.wasm);
  const results = resultsOf(linked);
  const replaced = new Map(idles.map((name) => [place(name), idling(results[place(name)])]));
  for (const name of all.filter((other) => !called.has(other))) replaced.set(place(name), stopping);
  writeFileSync(file('plain.wasm'), slimmed(linked, replaced));
  writeFileSync(file('later.txt'), later.map(place).join('\n'));
  run(options['wasm-split'], file('plain.wasm'), '--enable-mutable-globals', `--split-funcs=@${file('later.txt')}`,
    '--import-namespace=first', '--placeholder-namespace=later', '--export-prefix=%',
    '-o1', options.first, '-o2', options.later);
  const part = (name) => (first.has(name) ? 'first' : called.has(name) ? 'later' : 'never');
  moveTexts(options.first, options.later, wat, part);
  writeFileSync(options.report, all.map((name) => `${part(name)} ${name}\n`).join(''));
} catch (error) {
  console.error(`split: ${error.message} (${options.list})`);
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}
