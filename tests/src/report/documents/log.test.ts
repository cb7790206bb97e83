import { describe, expect, it } from 'vitest';
import { withAnswer, withCondition } from '../../../../src/protocol/conditions/edit-conditions.ts';
import { withHandOver, withLogEntry, withWeatherNote } from '../../../../src/protocol/custody/log-entries.ts';
import { placedDetectors } from '../../../../src/report/documents/detector-places.ts';

import { bare, detector, draw, filled, timed, words } from './job-plans.ts';

describe('the log', () => {
  it('names every detector, hand, break and note, and what is not known', () => {
    const text = words('log', filled('R. Alder'));
    for (const part of [
      'FOUND',
      'DEVIATION',
      'This test is invalid: do not use the result.',
      'Refused by R. Alder',
      '72 h',
    ]) {
      expect(text).toContain(part);
    }
    expect(words('log', bare)).toContain('Not signed, as far as is known.');
    expect(words('log', bare)).toContain('What is empty was not known when this was printed');
  });

  it('says where each detector stands, as the plan has it', () => {
    const [placed] = placedDetectors(bare);
    // samples/README.md: A1 in the family room of the basement; the plan's own height of its underside.
    expect([placed?.name, placed?.room, placed?.level]).toEqual(['A1', 'Family room', 'Basement']);
    // Its axis is 8 ft 7 in east of the west face and 10 ft 2 in north of the south face (24 ft), its radius 2 in.
    expect(placed?.fromWalls).toBe('West wall 8 ft 5 in, south wall 10 ft');
    const text = words('log', bare);
    for (const { name, height } of placedDetectors(bare))
      for (const part of [name, height]) expect(text).toContain(part);
  });

  it('writes "met so far" where the answer is from before the pick-up, and "kept" only where it speaks for the whole test', () => {
    const [start, end] = ['2026-03-07T18:00:00-05:00', '2026-03-10T09:00:00-04:00'];
    const fetched = { ...timed, visit: { ...timed.visit, start, end } };
    const seenAt = (at: string) =>
      words('log', withCondition(fetched, 'windows-closed', { state: 'kept', at, by: 'R. Alder' }));
    expect(seenAt(start)).toMatch(/Windows closed on every level met so far R\. Alder/);
    expect(seenAt(start)).toContain('1 answer from before the pick-up');
    expect(seenAt(end)).toMatch(/Windows closed on every level met R\. Alder/);
    expect(seenAt(end)).not.toContain('before the pick-up');
  });

  it('has the answers of the placement and of the pick-up, as the report has', () => {
    const [start, end] = ['2026-03-07T18:00:00-05:00', '2026-03-10T09:00:00-04:00'];
    const placed = { ...timed, visit: { ...timed.visit, start, end }, conditions: [] };
    const before = withAnswer(placed, 'windows-closed', 'kept', { by: 'R. Alder', at: start });
    const noted = withCondition(before, 'windows-closed', { note: 'Seen from outside.' });
    const both = withAnswer(noted, 'windows-closed', 'kept', { by: 'M. Brook', at: end });
    expect(words('log', both)).toMatch(
      /Windows closed on every level met M\. Brook .*also on record met R\. Alder Sat, Mar 7, 2026, 6:00 pm Seen from outside\./,
    );
    expect(words('report', both)).toMatch(
      /Windows closed on every level Met M\. Brook, .*also on record Met R\. Alder, Sat, Mar 7, 2026, 6:00 pm Seen from outside\./,
    );
  });

  it('keeps those together that were transferred together, the earliest first', () => {
    const [one = '', two = ''] = timed.levels.flatMap(({ detectors }) => detectors.map(({ id }) => id));
    const late = { at: '2026-03-11T08:00:00-04:00', from: 'Post', to: 'Laboratory', note: '' };
    const early = { at: '2026-03-10T20:00:00-04:00', from: 'R. Alder', to: 'Post', note: '' };
    const handed = [one, two].reduce((plan, id) => withHandOver(withHandOver(plan, id, late), id, early), timed);
    expect(words('log', handed)).toMatch(/A1, A2 Tue, Mar 10, 2026, 8:00 pm .*A1, A2 Wed, Mar 11, 2026, 8:00 am/);
  });

  it('says before the hands what of them does not fit', () => {
    const step = { at: '2026-03-01T08:00:00-05:00', from: 'Bo Reed', to: 'Cy Dale', note: '' };
    const [one = ''] = timed.levels.flatMap(({ detectors }) => detectors.map(({ id }) => id));
    const text = words('log', withHandOver(timed, one, step));
    expect(text).toMatch(
      /Chain of custody Does not fit together\. A1, Bo Reed to Cy Dale: Before it was placed, .* Sun, Mar 1, 2026, 8:00 am/,
    );
    expect(words('log', bare)).not.toContain('Does not fit');
  });

  it('says the weather that was forecast and seen, and what of it is not noted', () => {
    const forecast = { at: null, source: 'weather service', sustained: null, storm: null, note: 'Fog at night.' };
    const plan = withWeatherNote({ ...timed, visit: { ...timed.visit, forecast } }, { at: null, text: 'Calm.' });
    const text = words('log', plan);
    expect(text).toContain('Forecast (weather service): wind not noted. Fog at night.');
    expect(text).toContain('At a time that is not known: Calm.');
    expect(words('log', timed)).toContain('Wind, storm, rain or snow, and when');
  });

  it('never parts what the conditions come to from their table, wherever the page ends', () => {
    for (let lines = 25; lines < 50; lines++) {
      const note = 'A line of its own that goes on for a while and then some. '.repeat(3 * lines);
      const pages = draw('log', withLogEntry(filled('R. Alder'), detector, { note }));
      const [page = ''] = pages.filter((svg) => svg.includes('The house during the test'));
      expect(page, `${lines} lines`).toContain('Condition');
    }
  });

  it('writes out what a table shows clipped', () => {
    const long = `SERIAL ${'0123456789'.repeat(8)}`;
    const text = words('log', withLogEntry(timed, detector, { serial: long }));
    expect(text).toContain('Written out');
    expect(text.replaceAll(' ', '')).toContain(long.replaceAll(' ', ''));
  });

  it('shows the photos with whose they are', () => {
    // Heads of JPEG pictures of 2 by 2 pixels; the third is none, and its frame stays empty.
    const photos = ['AAAA', 'BBBB'].map((end) => `data:image/jpeg;base64,/9j/wAARCAACAAIDEQAAAAAAAAAA${end}`);
    photos.push('data:image/png;base64,AAAA');
    const [svg = '', ...others] = draw('log', withLogEntry(timed, detector, { photos }));
    expect([svg, ...others].join('').match(/<image [^>]*href="data:image\/[^"]*[AB]{4}"/g)).toHaveLength(2);
    expect(words('log', withLogEntry(timed, detector, { photos }))).toContain('A1, 2 of 3');
  });
});
