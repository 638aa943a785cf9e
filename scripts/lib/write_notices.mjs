// Writes the notices of everything that ships in the page, from the licence texts that came with
// the sources it was built from. Fails when one of them is missing, empty or not what it should be.
import { readFileSync, writeFileSync, existsSync } from 'node:fs';
import path from 'node:path';

const options = {};
for (let i = 2; i < process.argv.length; i += 2) options[process.argv[i].slice(2)] = process.argv[i + 1];

function fail(message) {
  console.error(`notices: ${message}`);
  process.exit(1);
}

function read(file, what) {
  if (!file || !existsSync(file)) fail(`the licence of ${what} is missing (${file || 'no file known'})`);
  return readFileSync(file, 'utf8');
}

// The text between the first line that matches `from` and the next that matches `to`.
function section(text, from, to, what) {
  const lines = text.split('\n');
  const first = lines.findIndex((line) => from.test(line));
  if (first < 0) fail(`the licence of ${what} is not where it was`);
  const length = lines.slice(first + 1).findIndex((line) => to.test(line));
  return lines.slice(first, length < 0 ? lines.length : first + 1 + length).join('\n');
}

// A licence paragraph of a Debian copyright file: one leading space, and " ." for an empty line.
// The name also heads shorter remarks where files are listed.
function paragraph(text, name, what) {
  const found = [...text.matchAll(new RegExp(`^License: ${name}\\n((?: .*\\n)+)`, 'gm'))]
    .map(([, body]) => body).find((body) => /Permission is hereby granted/.test(body));
  if (!found) fail(`the licence of ${what} is not where it was`);
  return found.replace(/^ \.?/gm, '');
}

function emscripten() {
  const own = path.join(options.emscripten, 'LICENSE');
  if (existsSync(own)) return readFileSync(own, 'utf8');
  const debian = read(options['emscripten-copyright'], 'Emscripten');
  const years = /^\s+(.*The Emscripten Authors)$/m.exec(debian);
  if (!years) fail('the copyright line of Emscripten is not where it was');
  return `Copyright (c) ${years[1]}\n\n${paragraph(debian, 'Expat', 'Emscripten')}`;
}

function musl() {
  return read(path.join(options.emscripten, 'system/lib/libc/musl/COPYRIGHT'), 'musl');
}

function font() {
  const text = read(options['font-licence'], 'the font DejaVu Sans');
  if (!/^License: bitstream-vera$/m.test(text)) return text;
  const holder = section(text, /^Copyright:/, /^License:/, 'DejaVu Sans').replace(/^Copyright: /, '');
  return `${holder}\n\n${paragraph(text, 'bitstream-vera', 'the font DejaVu Sans')}`;
}

const stb = ['imstb_rectpack.h', 'imstb_textedit.h', 'imstb_truetype.h'].map((file) =>
  section(read(path.join(options.imgui, file), 'the stb headers'),
    /^ALTERNATIVE A - MIT License/, /^-----/, 'the stb headers').replace(/^.*\n/, ''));

const parts = [
  ['Hearthsight', 'the program itself', read(options.own, 'Hearthsight')],
  ['Dear ImGui', 'draws the picture', read(path.join(options.imgui, 'LICENSE.txt'), 'Dear ImGui')],
  ['stb_rect_pack, stb_textedit, stb_truetype', 'parts of Dear ImGui; used under the MIT licence',
    [...new Set(stb)].join('\n')],
  ['QR Code generator library', 'makes the square that a camera reads',
    section(read(path.join(options.qrcodegen, 'c/qrcodegen.c'), 'the QR Code generator'),
      /Copyright \(c\)/, /\*\//, 'the QR Code generator').replace(/^ \* ?/gm, '')],
  ['Emscripten', 'the runtime script and its system libraries; used under the MIT licence', emscripten()],
  ['musl', 'the C library inside Emscripten', musl()],
  ['DejaVu Sans, DejaVu Sans Bold', 'the lettering, cut down to the characters in use', font()],
];

for (const [name, , text] of parts) {
  if (text.trim().length < 200) fail(`the licence of ${name} is empty`);
  if (!/copyright/i.test(text)) fail(`the licence of ${name} names no holder`);
}

const rule = '='.repeat(78);
const head = `Notices of the software and lettering in this page.

The LLVM project's C++ library and compiler runtime are linked in as well; their
licence (Apache 2.0 with LLVM exceptions) asks for no notice in what a compiler makes.
`;
writeFileSync(options.out, head + parts.map(([name, role, text]) =>
  `\n${rule}\n${name}: ${role}\n${rule}\n\n${text.replace(/\r/g, '').trim()}\n`).join(''));
