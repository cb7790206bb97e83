import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';

/** A plan as each release wrote it, with everything that it could write. These files are never changed. */
const FOLDER = join('tests', 'fixtures', 'releases');
const ENDING = '.plan.json';
const files = readdirSync(FOLDER).filter((name) => name.endsWith(ENDING));

describe('a plan file of an earlier release', () => {
  it.each(files)('%s opens, and every value of it is written again', (name) => {
    const text = readFileSync(join(FOLDER, name), 'utf8');
    const read = parsePlan(text);
    if (!read.ok) throw new Error(`refused: ${JSON.stringify(read.problems)}`);
    expect(JSON.parse(writePlan(read.plan))).toMatchObject(JSON.parse(text));
  });

  it('is there of this version too', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(files).toContain(version + ENDING);
  });
});
