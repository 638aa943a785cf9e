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

// Every part once, of its own size, out of pieces that the saw leaves: a cut at `at` takes a kerf.
function walkSheets(job, answer) {
  const kerf = job.kerf ?? 0;
  const trim = job.trim ?? 0;
  const found = [];
  const walk = (node, [left, low, right, high]) => {
    const [kind, at, first, second] = node;
    if (kind === 'part') {
      const [, width, height] = node;
      assert.equal(node.length, 3);
      assert.ok(width <= right - left && height <= high - low, 'a part larger than its piece');
      found.push([width, height]);
    } else if (kind === 'V') {
      assert.ok(at > 0 && left + at + kerf < right, 'a cut beside its piece');
      walk(first, [left, low, left + at, high]);
      walk(second, [left + at + kerf, low, right, high]);
    } else {
      assert.equal(kind, 'H');
      assert.ok(at > 0 && low + at + kerf < high, 'a cut beside its piece');
      walk(first, [left, low, right, low + at]);
      walk(second, [left, low + at + kerf, right, high]);
    }
  };
  for (const tree of answer.cut_trees) walk(tree, [trim, trim, job.sheet[0] - trim, job.sheet[1] - trim]);
  const name = ([width, height]) => (job.turn && width < height ? `${height} ${width}` : `${width} ${height}`);
  assert.deepEqual(found.map(name).sort(), job.parts.map(name).sort());
  assert.equal(answer.sheets, answer.cut_trees.length);
  assert.equal(answer.offcuts.length, answer.sheets);
  assert.ok(answer.lower_bound <= answer.sheets);
  assert.equal(answer.proven, answer.lower_bound === answer.sheets);
  const area = (sides) => sum(sides.map(([width, height]) => width * height));
  assert.ok(area(job.parts) + area(answer.offcuts.flat()) <= answer.sheets * job.sheet[0] * job.sheet[1]);
  return answer.sheets;
}

const shopSheets = JSON.parse(readFileSync(join(here, '..', 'cuts', 'shop_sheets.json'), 'utf8'));

test('sheets of a shop are at their optimum, with proof', () => {
  for (const { max_per_sheet: most, part, ...list } of shopSheets) {
    if (!most) {
      const answer = plan(list);
      assert.equal(walkSheets(list, answer), list.optimal_sheets, list.name);
      assert.equal(answer.proven, true, list.name);
    }
    for (const [kind, count] of Object.entries(most ?? {})) {
      const [, kerf, turn] = /^kerf(\d)_(grain|free)$/.exec(kind);
      for (const parts of [count, count + 1]) {
        const job = { ...list, kerf: Number(kerf), turn: turn === 'free', parts: Array(parts).fill(part) };
        const answer = plan(job);
        assert.equal(walkSheets(job, answer), parts > count ? 2 : 1, `${list.name} ${kind}`);
        assert.equal(answer.proven, true);
      }
    }
  }
});

test('many small parts side by side do not nest deep', () => {
  const job = { sheet: [20000, 100], kerf: 1, turn: false, parts: Array(1500).fill([10, 90]) };
  const answer = plan(job);
  assert.equal(walkSheets(job, answer), 1);
  const depth = (node) => (node[0] === 'part' ? 1 : 1 + Math.max(depth(node[2]), depth(node[3])));
  assert.ok(depth(answer.cut_trees[0]) < 30);
});

test('long sheet lists hold together, trimmed and turned', () => {
  for (let n = 0; n < 12; n++) {
    const side = () => 100 + below(500);
    const parts = Array.from({ length: 20 + below(20) }, () => [side(), side()]);
    const job = { unit: '1/16 in', sheet: [1536, 768], kerf: 2, turn: n % 2 === 0, trim: below(8), parts };
    const first = run(job, '--steps', '20000');
    walkSheets(job, JSON.parse(first.stdout));
    assert.equal(run(job, '--steps', '20000').stdout, first.stdout);
    walkSheets(job, plan(job, '--steps', '1'));
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
    [{ sheet: [96], parts: [] }, /^sheet: a list is not allowed; give \[width, height\]/],
    [{ sheet: [96, 48], parts: [[49, 50]] }, /^parts\.0: 49 x 50 is not allowed; give at most 96 x 48, not turned/],
    [{ sheet: [96, 48], turn: true, parts: [[50, 50]] }, /^parts\.0: 50 x 50 is not allowed; give at most 96 x 48, turned or not/],
    [{ sheet: [96, 48], turn: 1, parts: [[5, 5]] }, /^turn: 1 is not allowed; give true or false/],
    [{ sheet: [96, 48], stock: 96, parts: [[5, 5]] }, /^stock: beside sheet is not allowed; give one of the two/],
    [{ sheet: [96, 48], parts: [5] }, /^parts\.0: 5 is not allowed; give \[width, height\]/],
    [{ sheet: [96, 48], trim: 24, parts: [[5, 5]] }, /^trim: 24 is not allowed; give a whole number from 0 to 23/],
    [{ sheet: [96, 48] }, /^parts: missing/],
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
