import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { assertNodeVersion } from './ensure-deps.mjs';
import { findBrowser, knownPlaces, testArgsLeftOut } from './find-browser.mjs';
import { inTurn, runLanes } from './lanes.mjs';
import { inWords, PASSED, sum, tallyOf } from './tally.mjs';

const folder = mkdtempSync(join(tmpdir(), 'stillspot-run-test-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Writes a report of vitest, reduced to the fields that are read. Returns its path. */
function report(numbers: Partial<Record<'passed' | 'failed' | 'pending' | 'todo', number>>, success = true): string {
  const { passed = 0, failed = 0, pending = 0, todo = 0 } = numbers;
  const file = join(folder, 'report.json');
  const content = {
    numTotalTests: passed + failed + pending + todo,
    numPassedTests: passed,
    numFailedTests: failed,
    numPendingTests: pending,
    numTodoTests: todo,
    success,
  };
  writeFileSync(file, JSON.stringify(content));
  return file;
}

describe('tallyOf(exitedWell, reportFile)', () => {
  it('counts a missing report as a failure, however the run ended', () => {
    expect(tallyOf(true, join(folder, 'none.json'))).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });

  it('counts a run without any test as a failure', () => {
    expect(tallyOf(true, report({})).failed).toBe(1);
  });

  it('counts a file that could not be loaded as a failure, although no test of it failed', () => {
    expect(tallyOf(false, report({ passed: 4 }, false))).toEqual({ passed: 4, failed: 1, skipped: 0 });
    expect(tallyOf(false, report({ passed: 4 }))).toEqual({ passed: 4, failed: 1, skipped: 0 });
  });

  it('takes the numbers of the report otherwise', () => {
    expect(tallyOf(false, report({ passed: 4, failed: 2, pending: 1, todo: 1 }, false))).toEqual({
      passed: 4,
      failed: 2,
      skipped: 2,
    });
  });
});

describe('testArgsLeftOut', () => {
  it('leaves out nothing where there is no shared memory', () => {
    expect(testArgsLeftOut(join(folder, 'none'))).toEqual([]);
  });
});

describe('the closing line', () => {
  it('names what was skipped only when something was', () => {
    expect(inWords(sum([]))).toBe('0 passed, 0 failed');
    expect(
      inWords(
        sum([
          { passed: 1, failed: 2, skipped: 0 },
          { passed: 10, failed: 20, skipped: 3 },
        ]),
      ),
    ).toBe('11 passed, 22 failed, 3 skipped');
  });
});

/** Returns the list of written texts, and the writers of two lanes: one of the stages "a" and "b", one of "c". */
function twoLanes() {
  const written: string[] = [];
  const turns = inTurn(3, (text) => void written.push(String(text)));
  return { written, turns };
}

describe('inTurn(count, write)', () => {
  it('writes the first program at once, and each other whole, in its order, when those before it have ended', () => {
    const { written, turns } = twoLanes();
    const [a, b, c] = turns.writers;
    c?.write('c1 ');
    a?.write('a1 ');
    expect(written).toEqual(['a1 ']);
    c?.write('c2 ');
    c?.end();
    b?.write('b1 ');
    a?.write('a2 ');
    expect(written).toEqual(['a1 ', 'a2 ']);
    a?.end();
    b?.write('b2 ');
    expect(written).toEqual(['a1 ', 'a2 ', 'b1 ', 'b2 ']);
    b?.end();
    expect(written.join('')).toBe('a1 a2 b1 b2 c1 c2 ');
  });

  it('loses nothing of what is held back when the run is ended', () => {
    const { written, turns } = twoLanes();
    turns.writers[2]?.write('c1 ');
    turns.writers[1]?.write('b1 ');
    turns.flush();
    expect(written.join('')).toBe('b1 c1 ');
  });
});

describe('runLanes(lanes, writers)', () => {
  it('runs lanes at the same time, goes on after a stage that throws, and counts it as failed', async () => {
    const { written, turns } = twoLanes();
    let release = () => {};
    const other = new Promise<void>((done) => {
      release = done;
    });
    const lanes = [
      [
        // Ends only if the other lane runs at the same time.
        { name: 'a', run: () => other.then(() => Promise.reject(new Error('no such file'))) },
        { name: 'b', run: async () => ({ passed: 2, failed: 0, skipped: 1 }) },
      ],
      [
        {
          name: 'c',
          run: async () => {
            release();
            return PASSED;
          },
        },
      ],
    ];
    const results = await runLanes(lanes, turns.writers);
    expect(results.map(({ name }) => name)).toEqual(['a', 'b', 'c']);
    expect(inWords(sum(results.map(({ tally }) => tally)))).toBe('3 passed, 1 failed, 1 skipped');
    expect(written.join('')).toMatch(/^\n== a ==\nError: no such file.*\n== b ==\n\n== c ==\n$/s);
  });
});

describe('assertNodeVersion(version)', () => {
  // The ranges are those that the bundler and the test runner declare in their own packages.
  it.each(['20.19.0', '20.20.2', '22.12.0', '23.1.0', '24.0.0', '30.0.0'])('takes %s', (version) => {
    expect(() => assertNodeVersion(version)).not.toThrow();
  });

  it.each(['16.0.0', '18.20.8', '20.18.3', '21.7.3', '22.11.0'])('refuses %s and names it', (version) => {
    expect(() => assertNodeVersion(version)).toThrow(version);
  });
});

describe('findBrowser()', () => {
  it('refuses a BROWSER_PATH that cannot be run, and names it', () => {
    const before = process.env.BROWSER_PATH;
    process.env.BROWSER_PATH = join(folder, 'no-browser');
    try {
      expect(() => findBrowser({ install: false })).toThrow(process.env.BROWSER_PATH);
    } finally {
      if (before === undefined) delete process.env.BROWSER_PATH;
      else process.env.BROWSER_PATH = before;
    }
  });

  it('looks in the usual places of macOS and Windows', () => {
    expect(knownPlaces('darwin', {}, '/Users/a')).toContain(
      '/Users/a/Applications/Chromium.app/Contents/MacOS/Chromium',
    );
    expect(knownPlaces('win32', { PROGRAMFILES: 'C:\\Program Files' }, 'C:\\Users\\a')).toEqual([
      'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
      'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
    ]);
  });
});

describe('the command line launcher', () => {
  const call = (...args: string[]) =>
    spawnSync(process.execPath, ['tests/run/stillspot.mjs', ...args], { encoding: 'utf8', timeout: 300_000 });

  it('passes on exit code 2 of a call without a command, with nothing on standard output', () => {
    const { status, stdout, stderr } = call();
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('stillspot');
  });

  it('refuses a file that is not there, with nothing on standard output', () => {
    const missing = join(folder, 'missing.plan.json');
    const { status, stdout } = call('check', missing, '--json');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  });

  it('judges the plans of a folder, in several threads, as it judges one: direct sun is worked out in each', () => {
    const plan = JSON.parse(readFileSync('samples/06-sale-report.plan.json', 'utf8'));
    const site = { ...plan.site, latitude: 41.8, longitude: -89 };
    const plans = join(folder, 'plans');
    mkdirSync(plans);
    for (const name of 'abcd') writeFileSync(join(plans, `${name}.plan.json`), JSON.stringify({ ...plan, site }));
    const one = call('report', join(plans, 'a.plan.json'), '--out', join(folder, 'one.json'), '--json');
    const all = call('report', plans, '--out', join(folder, 'all'), '--format', 'json', '--json');
    const { files: _, ...alone } = JSON.parse(one.stdout);
    expect(alone).toMatchObject({ test: 'holds', reasons: [] });
    const together = JSON.parse(all.stdout).plans.map(({ files: __, ...each }: { files: string[] }) => each);
    expect(together).toEqual([alone, alone, alone, alone]);
    expect([one.status, all.status]).toEqual([0, 0]);
  });
});
