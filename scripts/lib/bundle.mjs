// Makes the page's own script and style small: comments and spaces out, local names short, and the
// modules joined into one file for each time of loading, because on a slow line every request costs
// more than its bytes. Closure does the scripts; the pinned one of tests/web, as for em++'s script.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

// Closure leaves a call of an unknown function alone; import() becomes one on its way through.
const importer = 'dynamicImport';

function closure(compiler, flags) {
  const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-'));
  try {
    const externs = path.join(folder, 'externs.js');
    writeFileSync(externs, `/** @externs */ var ${importer};\n`);
    execFileSync(compiler, ['--compilation_level=SIMPLE', '--language_in=ECMASCRIPT_NEXT',
      '--language_out=ECMASCRIPT_NEXT', `--externs=${externs}`, '--jscomp_off=*',
      ...flags(path.join(folder, 'out-'))], { stdio: ['ignore', 'ignore', 'pipe'] });
    rmSync(externs);
    return new Map(readdirSync(folder).map((name) => [name.replace('out-', ''),
      readFileSync(path.join(folder, name), 'utf8').replaceAll(`${importer}(`, 'import(')]));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// The modules that `file` needs, each after those that it needs itself.
function needed(file, found = []) {
  if (found.includes(file)) return found;
  for (const [, name] of readFileSync(file, 'utf8').matchAll(/^import [^;]*from '(\.[^']+)';/gm)) {
    needed(path.join(path.dirname(file), name), found);
  }
  if (!found.includes(file)) found.push(file);
  return found;
}

// `first` is what the page starts with, `later` the module that it imports afterwards. Gives the
// text of each by its base name, and the names of all modules that went into them.
export function bundleModules(compiler, first, later) {
  const before = needed(first);
  const after = needed(later).filter((file) => !before.includes(file));
  const texts = closure(compiler, (prefix) => [...before, ...after].map((file) => `--js=${file}`).concat([
    `--chunk=main:${before.length}`, `--chunk=document:${after.length}:main`,
    '--chunk_output_type=ES_MODULES', '--allow_dynamic_import', `--dynamic_import_alias=${importer}`,
    `--chunk_output_path_prefix=${prefix}`]));
  return { texts, parts: [...before, ...after] };
}

// A script that is loaded by itself, with the modules that it imports in it.
export function smallScript(compiler, file) {
  return closure(compiler, (prefix) => [...needed(file).map((own) => `--js=${own}`),
    `--js_output_file=${prefix}script`]).get('script');
}

// Comments and spaces that mean nothing; strings stay as they are.
export function smallStyle(text) {
  return text.replace(/\/\*[\s\S]*?\*\//g, '')
    .split(/("(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*')/)
    .map((part, index) => (index % 2 ? part : part.replace(/\s+/g, ' ')
      .replace(/ ?([{};,]) ?/g, '$1').replace(/: /g, ':').replace(/;}/g, '}')))
    .join('').trim();
}
