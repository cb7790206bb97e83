import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pathsIn } from '../../../src/cli/output.ts';
import { callCli as call } from '../../helpers/call-cli.ts';
import { fullReportPlan } from '../../helpers/full-report-plan.ts';
import { readPdf } from '../../helpers/pdf-reader.ts';

const BASEMENT = 'samples/01-plain-basement.plan.json';
const SPLIT = 'samples/02-split-level.plan.json';
let folder: string;
const at = (name: string) => join(folder, name);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-papers-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Makes a folder with copies of a plan under these names. */
function folderOf(name: string, stems: readonly string[]): string {
  mkdirSync(at(name), { recursive: true });
  for (const stem of stems) writeFileSync(join(at(name), `${stem}.plan.json`), readFileSync(BASEMENT));
  return at(name);
}

const textOf = async (name: string) =>
  (await readPdf(new Uint8Array(readFileSync(at(name))))).pages
    .flatMap(({ texts }) => texts.map(({ text }) => text))
    .join(' ');

describe('stillspot sheet', () => {
  it('writes a PDF with the sheets of every level', async () => {
    const { code, out, err } = await call('sheet', SPLIT, '--out', at('split.pdf'));
    expect({ code, err, out }).toEqual({ code: 1, err: '', out: `Wrote ${at('split.pdf')}\n` });
    const { pages } = await readPdf(new Uint8Array(readFileSync(at('split.pdf'))));
    expect(pages.length).toBeGreaterThan(2);
    expect(await textOf('split.pdf')).toContain('Lower level');
  });

  it('writes one level as SVG on the paper that is named, the first page under the name itself', async () => {
    const { code } = await call('sheet', BASEMENT, '--out', at('one.svg'), '--level', 'L1', '--paper', 'tabloid');
    expect(code).toBe(0);
    expect(readFileSync(at('one.svg'), 'utf8')).toMatch(/^<svg [^>]*width="431.8mm" height="279.4mm"/);
    expect(existsSync(at('one-2.svg'))).toBe(true);
  });

  it('writes it upright where that is asked for, sheet and report', async () => {
    await call('sheet', BASEMENT, '--out', at('upright.svg'), '--paper', 'a4', '--orientation', 'portrait');
    expect(readFileSync(at('upright.svg'), 'utf8')).toMatch(/^<svg [^>]*width="210mm" height="297mm"/);
    await call('report', BASEMENT, '--out', at('upright.pdf'), '--orientation', 'portrait');
    const { pages } = await readPdf(new Uint8Array(readFileSync(at('upright.pdf'))));
    expect(pages.every(({ width, height }) => width < height)).toBe(true);
  });

  it('writes a PNG', async () => {
    await call('sheet', BASEMENT, '--out', at('one.png'));
    // ISO/IEC 15948, 5.2: the signature of a PNG file.
    expect([...readFileSync(at('one.png')).subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  });

  it.each([
    ['letter', 279.4, 215.9],
    ['a4', 297, 210],
    ['tabloid', 431.8, 279.4],
    ['a3', 420, 297],
  ])(
    'writes a PNG that is as large as its page, %s, and so true to its scale where it is printed',
    async (paper, ...mm) => {
      const name = at(`size-${paper}.png`);
      await call('sheet', BASEMENT, '--out', name, '--paper', paper, '--orientation', 'landscape');
      const png = readFileSync(name);
      // ISO/IEC 15948, 11.2.2 IHDR, then 11.3.5.3 pHYs: pixels to the meter across and down, and 1 for the meter.
      const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
      expect([png.readUInt32BE(33), png.toString('latin1', 37, 41), png[49]]).toEqual([9, 'pHYs', 1]);
      expect(png.readUInt32BE(50)).toBe(crc32(png.subarray(37, 50)));
      const [across, down] = [png.readUInt32BE(41), png.readUInt32BE(45)];
      expect((width / across) * 1000).toBeCloseTo(mm[0] ?? 0, 1);
      // A picture has whole pixels: half of one, 0.07 mm, is lost at most.
      expect(Math.abs((height / down) * 1000 - (mm[1] ?? 0))).toBeLessThan(0.07);
      expect(across).toBe(down);
    },
  );

  it('never replaces a file without --force, and a plan never', async () => {
    writeFileSync(at('there.pdf'), 'old');
    const kept = await call('sheet', BASEMENT, '--out', at('there.pdf'));
    expect(kept).toMatchObject({ code: 2, out: '' });
    expect(kept.err).toContain('this file is there already');
    expect(readFileSync(at('there.pdf'), 'utf8')).toBe('old');
    expect((await call('sheet', BASEMENT, '--out', at('there.pdf'), '--force')).code).toBe(0);
    writeFileSync(at('plan.svg'), readFileSync(BASEMENT));
    const plan = await call('sheet', BASEMENT, '--out', at('plan.svg'), '--force');
    expect(plan).toMatchObject({ code: 2 });
    expect(readFileSync(at('plan.svg'), 'utf8')).toBe(readFileSync(BASEMENT, 'utf8'));
  });

  it.each([
    [['--out', 'x.doc'], 'give the file an ending that tells its format'],
    [[], 'needs --out'],
    [['--out', 'x.pdf', '--paper', 'b5'], '--paper "b5" is not one of letter, a4, tabloid, a3'],
    [['--out', 'x.pdf', '--orientation', 'askew'], '--orientation "askew" is not one of landscape, portrait'],
    [['--out', 'x.pdf', '--level', 'L9'], '--level "L9" is no level of it'],
    [['--out', 'x.pdf', '--format', 'bmp'], '--format "bmp" is not one of pdf, svg, png'],
    [['--out', 'x.pdf', '--format', 'svg'], '--format "svg" is not the ending of --out x.pdf'],
  ])('refuses %j in words', async (options, words) => {
    const { code, out, err } = await call('sheet', BASEMENT, ...options);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(words);
  });

  it('draws a folder of plans into a folder', async () => {
    const plans = folderOf('plans', ['b', 'a']);
    expect((await call('sheet', plans, '--out', at('sheets'))).code).not.toBe(2);
    expect(readdirSync(at('sheets')).sort()).toEqual(['a.pdf', 'b.pdf']);
  });

  it('names a bad file of a folder, which does not stop the others', async () => {
    const plans = folderOf('torn', ['a']);
    writeFileSync(join(plans, 'c.plan.json'), '{ torn');
    const { code, err } = await call('sheet', plans, '--out', at('torn-sheets'));
    expect(code).toBe(2);
    expect(err).toContain('c.plan.json');
    expect(readdirSync(at('torn-sheets'))).toEqual(['a.pdf']);
  });

  it.each(['sheet', 'report', 'notice'])(
    '%s writes nothing where a plan that is named itself is not usable',
    async (name) => {
      const plans = folderOf(`named-${name}`, ['a']);
      const torn = join(plans, 'c.plan.json');
      writeFileSync(torn, '{ torn');
      const options = ['--out', at(`named-${name}-out`), ...(name === 'notice' ? ['--kind', 'card'] : [])];
      for (const bad of [torn, join(plans, 'none.plan.json')]) {
        const { code, out, err } = await call(name, join(plans, 'a.plan.json'), bad, ...options);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(bad);
        expect(existsSync(at(`named-${name}-out`))).toBe(false);
      }
    },
  );

  it.each([
    ['sheet', ['--paper', 'b5'], '--paper "b5" is not one of'],
    ['sheet', ['--orientation', 'askew'], '--orientation "askew" is not one of'],
    ['sheet', ['--level', 'L9'], '--level "L9" is no level of it'],
    ['report', ['--paper', 'b5', '--format', 'json'], '--paper "b5" is not one of'],
  ])('makes no folder for a call that is not usable: %s %j', async (name, options, words) => {
    const plans = folderOf('options', ['a', 'b']);
    const { code, out, err } = await call(name, plans, '--out', at('no-sheets'), ...options);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(words);
    expect(existsSync(at('no-sheets'))).toBe(false);
  });

  it('writes nothing where a file of one of several plans is in the way', async () => {
    const plans = folderOf('taken', ['a', 'b']);
    mkdirSync(at('taken-sheets'));
    writeFileSync(at('taken-sheets/b.pdf'), 'mine');
    const { code, err } = await call('sheet', plans, '--out', at('taken-sheets'));
    expect(code).toBe(2);
    expect(err).toContain('b.pdf: this file is there already');
    expect(readdirSync(at('taken-sheets'))).toEqual(['b.pdf']);
  });

  it('writes nothing where a page after the first of one of several plans is in the way', async () => {
    const plans = folderOf('page', ['a', 'b']);
    mkdirSync(at('page-sheets'));
    writeFileSync(at('page-sheets/b-2.svg'), 'mine');
    const options = ['--out', at('page-sheets'), '--format', 'svg'];
    const { code, out, err } = await call('sheet', plans, ...options);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('b-2.svg: this file is there already');
    expect(readdirSync(at('page-sheets'))).toEqual(['b-2.svg']);
    expect((await call('sheet', plans, ...options, '--force')).code).toBe(0);
    expect(readFileSync(at('page-sheets/b-2.svg'), 'utf8')).toMatch(/^<svg /);
  });
});

describe('letters that the font of the pages lacks', () => {
  it('are listed in the text and in the JSON, whatever the format', async () => {
    const file = at('letters.plan.json');
    writeFileSync(file, JSON.stringify({ ...fullReportPlan(), title: 'Haus 家' }));
    for (const ending of ['pdf', 'png', 'svg']) {
      const card = ['notice', file, '--kind', 'card', '--out', at(`letters.${ending}`)];
      const { out } = await call(...card);
      expect(out).toContain('Not in the font of the pages, drawn as empty boxes: 家');
      const { out: json } = await call(...card, '--json', '--force');
      expect(JSON.parse(json).lackingLetters).toEqual(['家']);
    }
  });
});

describe('names in the folder', () => {
  it('are never those of a page of another plan', () => {
    expect(pathsIn('out', ['x/a.plan.json', 'x/a-2.plan.json', 'y/A.plan.json', 'x/b.json'], 'svg')).toEqual(
      ['a', 'a-2_', 'A_', 'b'].map((stem) => join('out', `${stem}.svg`)),
    );
  });
});

describe('stillspot report', () => {
  it.each(['json', 'csv'])('as %s refuses a paper that there is not, though it has no pages', async (ending) => {
    const { code, err } = await call('report', BASEMENT, '--out', at(`paper.${ending}`), '--paper', 'b5');
    expect(code).toBe(2);
    expect(err).toContain('--paper "b5" is not one of letter, a4, tabloid, a3');
    expect(existsSync(at(`paper.${ending}`))).toBe(false);
  });

  it('writes a job that holds, with results and nothing missing', async () => {
    const file = at('full.plan.json');
    writeFileSync(file, JSON.stringify(fullReportPlan()));
    const { code, out } = await call('report', file, '--out', at('full.json'), '--json');
    const printed = JSON.parse(out);
    expect(printed).toMatchObject({ test: 'holds', reasons: [], missing: [] });
    expect(printed.sets).toMatchObject([{ meanRounded: 4.6, agreement: 'in-control', standing: 'holds' }]);
    expect(code).toBe(0);
    expect(JSON.parse(readFileSync(at('full.json'), 'utf8'))).toMatchObject({ test: 'holds', missing: [] });
    await call('report', file, '--out', at('full.pdf'));
    const text = await textOf('full.pdf');
    for (const words of ['7 Alder Court', 'Fernhollow', 'M-3301', 'L-88', 'CX-100', '4.4 pCi/L', 'Harbor Bench'])
      expect(text.replaceAll('\u00a0', ' ')).toContain(words);
    expect(text).not.toContain('MISSING');
  });

  it('names what is missing with the lists that require it, and says first that the test does not hold', async () => {
    const { code, out } = await call('report', SPLIT, '--out', at('split.json'), '--json');
    const { test, missing } = JSON.parse(out);
    expect({ code, test }).toEqual({ code: 1, test: 'not-evaluated' });
    const zip = missing.find(({ id }: { id: string }) => id === 'zip');
    expect(zip.lists).toContain('32 Ill. Adm. Code 422.130(o)(1)(C) (secondary)');
    await call('report', SPLIT, '--out', at('split-report.pdf'));
    const { pages } = await readPdf(new Uint8Array(readFileSync(at('split-report.pdf'))));
    const first = pages[0]?.texts.map(({ text }) => text).join(' ') ?? '';
    expect(first.indexOf('The test: invalid, do not use.')).toBeLessThan(first.indexOf('Values on record'));
  });

  it('writes a table whose texts no spreadsheet takes for a formula', async () => {
    const file = at('formula.plan.json');
    writeFileSync(file, JSON.stringify({ ...fullReportPlan([4.4, 4.8]), title: '=1+1' }));
    await call('report', file, '--out', at('formula.csv'));
    const [head = '', first = ''] = readFileSync(at('formula.csv'), 'utf8').split('\r\n');
    expect(head).toMatch(/^title,site,test,location,detector,value,unit/);
    expect(first).toMatch(/^'=1\+1,/);
  });
});

describe('stillspot notice', () => {
  it.each([
    ['closing', 'Radon test in this house'],
    ['progress', 'Radon test in progress'],
    ['agreement', 'Non-interference agreement'],
    ['card', 'Where and when to place the detectors'],
  ])('of the kind %s is one page', async (kind, title) => {
    const { code } = await call('notice', BASEMENT, '--kind', kind, '--out', at(`${kind}.pdf`));
    expect(code).toBe(0);
    const { pages } = await readPdf(new Uint8Array(readFileSync(at(`${kind}.pdf`))));
    expect(pages.length).toBe(1);
    expect(pages[0]?.texts.map(({ text }) => text).join(' ')).toContain(title);
  });

  // The card prints the verdict of every detector; the others print none.
  it.each([
    ['card', 1],
    ['closing', 0],
    ['progress', 0],
    ['agreement', 0],
  ])('of the kind %s ends with %i beside a detector that is blocked', async (kind, ending) => {
    const { code, err } = await call('notice', SPLIT, '--kind', kind, '--out', at(`blocked-${kind}.pdf`));
    expect({ code, err }).toEqual({ code: ending, err: '' });
    expect((await textOf(`blocked-${kind}.pdf`)).includes('Verdict on the plan: blocked.')).toBe(kind === 'card');
  });

  it('lies as it is asked for, and says so of a word that is none', async () => {
    await call('notice', BASEMENT, '--kind', 'progress', '--out', at('progress.svg'), '--orientation', 'portrait');
    expect(readFileSync(at('progress.svg'), 'utf8')).toMatch(/^<svg [^>]*width="215.9mm" height="279.4mm"/);
    const askew = await call('notice', BASEMENT, '--kind', 'card', '--out', at('x.svg'), '--orientation', 'askew');
    expect(askew).toMatchObject({ code: 2, out: '' });
  });

  it('is made of several plans in one call, a file each', async () => {
    const { code } = await call('notice', BASEMENT, SPLIT, '--kind', 'closing', '--out', at('notices'));
    expect(code).toBe(0);
    expect(readdirSync(at('notices')).sort()).toEqual(['01-plain-basement.pdf', '02-split-level.pdf']);
  });

  it('asks for a kind that there is', async () => {
    expect((await call('notice', BASEMENT, '--out', at('x.pdf'))).err).toContain('notice needs --kind');
    expect((await call('notice', BASEMENT, '--kind', 'poster', '--out', at('x.pdf'))).err).toContain('is not one of');
  });
});
