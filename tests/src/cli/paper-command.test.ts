import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCall } from '../../../src/cli/call.ts';
import { overPlans, type PaperCommand } from '../../../src/cli/paper/paper-command.ts';
import { sheet } from '../../../src/cli/sheet.ts';
import { samplePlan } from '../../helpers/sample-files.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-faults-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Fails at one of the plans, as a fault of Stillspot would. */
const faulty: PaperCommand = {
  name: 'sheet',
  formats: ['pdf'],
  make: async ({ title }, { path }) => {
    if (title === 'bad') throw new Error('a ring of two points');
    return { files: [{ path, bytes: 'made' }], lacking: [], fine: true, notes: [], document: {} };
  },
};

describe('a plan at which Stillspot itself fails', () => {
  it('is named with the fault, does not stop the others, and gives the exit code of a fault', async () => {
    const files = ['a', 'bad', 'c'].map((title) => {
      const file = join(folder, `${title}.plan.json`);
      writeFileSync(file, JSON.stringify({ ...samplePlan('01-plain-basement'), title }));
      return file;
    });
    const out = join(folder, 'out');
    const { code, text, problems = [] } = await overPlans(faulty, parseCall(sheet, [...files, '--out', out]));
    expect(code).toBe(3);
    expect(problems.join()).toContain('bad.plan.json: Stillspot itself failed on this plan. Please report this:');
    expect(problems.join()).toContain('a ring of two points');
    expect(text).toBe(['a', 'c'].map((name) => `Wrote ${join(out, `${name}.pdf`)}\n`).join(''));
    expect(['a', 'bad', 'c'].map((name) => existsSync(join(out, `${name}.pdf`)))).toEqual([true, false, true]);
  });
});
