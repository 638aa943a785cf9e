// Cut plans as the command gives them: every published and shop job, walked again here, and small
// jobs against a solver that is none of ours (GLPK's glpsol, package glpk-utils).
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '..', '..');
const program = process.env.HEARTHSIGHT ?? join(root, 'build', 'native', 'hearthsight');
const folder = mkdtempSync(join(tmpdir(), 'hearthsight-cut-'));
after(() => rmSync(folder, { recursive: true }));

const run = (job, ...args) =>
  spawnSync(program, ['cut', '-', ...args], { input: typeof job === 'string' ? job : JSON.stringify(job), encoding: 'utf8' });
const plan = (job, ...args) => {
  const result = run(job, ...args);
  assert.equal(result.status, 0, result.stderr);
  assert.equal(result.stderr, '');
  return JSON.parse(result.stdout);
};
const sorted = (numbers) => [...numbers].sort((a, b) => a - b);
const sum = (numbers) => numbers.reduce((a, b) => a + b, 0);

// Every part once, on boards that hold them with a cut between any two.
function walkBoards(job, answer) {
  const stocks = job.stocks ?? [{ length: job.stock, cost: 1 }];
  assert.deepEqual(sorted(answer.layout.flat()), sorted(job.parts));
  assert.equal(answer.boards, answer.layout.length);
  const used = answer.stock_of_board.map((at) => stocks[at]);
  answer.layout.forEach((parts, board) => {
    assert.ok(sum(parts) + (parts.length - 1) * (job.kerf ?? 0) <= used[board].length);
  });
  if (job.stocks) assert.equal(answer.cost, sum(used.map((stock) => stock.cost)));
  const cost = answer.cost ?? answer.boards;
  assert.ok(answer.lower_bound <= cost);
  assert.equal(answer.proven, answer.lower_bound === cost);
  return cost;
}

const shopBoards = JSON.parse(readFileSync(join(here, '..', 'cuts', 'shop_boards.json'), 'utf8'));

for (const job of shopBoards) {
  test(`boards: ${job.name} at its optimum, with proof`, () => {
    const answer = plan(job);
    assert.equal(walkBoards(job, answer), job.optimal_boards ?? job.optimal_total_cost);
    assert.equal(answer.proven, true);
  });
}

test('a search of one step answers with a whole plan, and the same one every time', () => {
  for (const job of shopBoards) {
    const first = run(job, '--steps', '1');
    walkBoards(job, JSON.parse(first.stdout));
    assert.equal(run(job, '--steps=1').stdout, first.stdout);
  }
});

// A small generator of its own, the same on every run.
let seed = 12345;
const below = (count) => {
  seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
  return (seed >> 8) % count;
};

// Every way to fill a board that takes no further part, as [count of each length].
function patterns(lengths, demand, room, kerf) {
  const found = [];
  const counts = lengths.map(() => 0);
  const go = (at, left) => {
    if (at === lengths.length) {
      if (counts.some((count) => count > 0)) found.push([...counts]);
      return;
    }
    for (let n = Math.min(demand[at], Math.floor(left / (lengths[at] + kerf))); n >= 0; n--) {
      counts[at] = n;
      go(at + 1, left - n * (lengths[at] + kerf));
    }
    counts[at] = 0;
  };
  go(0, room + kerf);
  return found;
}

// The whole-number programme over all patterns, in CPLEX LP form, solved by glpsol.
function optimumBySolver(job) {
  const lengths = [...new Set(job.parts)];
  const demand = lengths.map((length) => job.parts.filter((part) => part === length).length);
  const columns = job.stocks.flatMap((stock) =>
    patterns(lengths, demand, stock.length, job.kerf).map((counts) => ({ counts, cost: stock.cost })));
  const file = join(folder, 'job.lp');
  const out = join(folder, 'job.out');
  const term = (weight, at) => `${weight} x${at}`;
  writeFileSync(file, [
    'Minimize', ` cost: ${columns.map((column, at) => term(column.cost, at)).join('\n + ')}`,
    'Subject To',
    ...lengths.map((_, row) =>
      ` p${row}: ${columns.map((column, at) => [column.counts[row], at]).filter(([n]) => n > 0)
        .map(([n, at]) => term(n, at)).join('\n + ')} >= ${demand[row]}`),
    'General', ...columns.map((_, at) => ` x${at}`), 'End', ''].join('\n'));
  const solved = spawnSync('glpsol', ['--lp', file, '-o', out, '--tmlim', '60'], { encoding: 'utf8' });
  assert.equal(solved.error, undefined, 'glpsol is missing; scripts/setup installs glpk-utils');
  const text = readFileSync(out, 'utf8');
  assert.match(text, /Status:\s+INTEGER OPTIMAL/);
  return Number(/Objective:\s+cost = (\d+)/.exec(text)[1]);
}

test('boards of several lengths and prices cost what another solver finds', () => {
  for (let n = 0; n < 40; n++) {
    const length = 60 + below(60);
    const stocks = [{ length, cost: 10 + below(20) }, { length: length + 20 + below(40), cost: 20 + below(25) }];
    const lengths = Array.from({ length: 3 + below(5) }, () => 12 + below(45));
    const parts = Array.from({ length: 8 + below(20) }, () => lengths[below(lengths.length)]);
    const job = { unit: 'mm', stocks, kerf: below(4), parts };
    const answer = plan(job);
    assert.equal(answer.proven, true, JSON.stringify(job));
    assert.equal(walkBoards(job, answer), optimumBySolver(job), JSON.stringify(job));
  }
});

test('what is wrong with a job is named with its field, value and what is allowed', () => {
  const good = { stock: 100, kerf: 1, parts: [50, 20] };
  const cases = [
    [{ ...good, parts: [50, 101] }, /^parts\.1: 101 is not allowed; give at most 100/],
    [{ ...good, kerf: -1 }, /^kerf: -1 is not allowed; give a whole number from 0/],
    [{ ...good, kerf: 0.5 }, /^kerf: 0\.5 is not allowed; give a whole number/],
    [{ ...good, parts: [50, '20'] }, /^parts\.1: "20" is not allowed/],
    [{ ...good, parts: 7 }, /^parts: 7 is not allowed; give a list/],
    [{ ...good, stock: 0 }, /^stock: 0 is not allowed; give a whole number from 1/],
    [{ kerf: 1, parts: [1] }, /^stock: missing/],
    [{ stock: 100, kerf: 1 }, /^parts: missing/],
    [{ ...good, kerfs: 1 }, /^kerfs: an unknown key is not allowed; give one of stock/],
    [{ ...good, stocks: [] }, /^stock: beside stocks is not allowed/],
    [{ stocks: [{ length: 100 }], parts: [5] }, /^stocks\.0\.cost: missing/],
    [{ stocks: [{ length: 100, cost: 0 }], parts: [5] }, /^stocks\.0\.cost: 0 is not allowed; give a whole number from 1/],
    [{ stocks: [{ length: 100, cost: 1, count: 2 }], parts: [5] }, /^stocks: no length to cut from is not allowed/],
    [{ stocks: [{ length: 100, cost: 1, defects: [[40, 40]] }], parts: [5] }, /^stocks\.0\.defects\.0\.1: 40 is not allowed; give a whole number from 41 to 100/],
    [{ sheet: [96, 48], kerf: 1, parts: [[5, 5]] }, /^sheet: not planned yet/],
    ['[1]', /^a list is not allowed/],
    ['{', /./],
  ];
  for (const [job, said] of cases) {
    const result = run(job);
    assert.equal(result.status, 2, JSON.stringify(job));
    assert.equal(result.stdout, '');
    assert.match(result.stderr, said);
  }
  for (const args of [['--steps', '0'], ['--steps', 'many'], ['--steps'], ['--fast'], ['other']]) {
    assert.equal(run(good, ...args).status, 2, args.join(' '));
  }
  assert.equal(spawnSync(program, ['cut']).status, 2);
  assert.equal(spawnSync(program, ['cut', join(folder, 'none.json')]).status, 2);
});

test('what a published job says beside itself is passed over', () => {
  const job = { name: 'a', unit: 'mm', proof: 'b', optimal_boards: 9, solution: [[1]], stock: 100, kerf: 0, parts: [60, 60] };
  assert.equal(plan(job).boards, 2);
});
