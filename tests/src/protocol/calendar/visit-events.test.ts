import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { calendarText } from '../../../../src/protocol/calendar/ics.ts';
import { visitEvents } from '../../../../src/protocol/calendar/visit-events.ts';

const NOW = Date.UTC(2026, 2, 1, 12);
const plan: Plan = {
  ...emptyPlan(),
  title:
    'Wren Hill; cellar, "north" side, with a title so long that a line of the file has to be folded somewhere in it',
  site: { ...emptyPlan().site, label: '3 Wren Hill', timeZone: 'America/New_York' },
  visit: {
    closedSince: null,
    mitigationOnSince: null,
    start: '2026-03-07T18:00:00-05:00',
    end: '2026-03-10T09:30:00-04:00',
  },
};

// ical.js reads RFC 5545 on its own; it shares no code with what writes here.
const calendar = () => new ICAL.Component(ICAL.parse(calendarText(plan, NOW)));
const events = () =>
  calendar()
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each));
const find = (part: string) => {
  const event = events().find(({ summary }) => summary.startsWith(part));
  if (!event) throw new Error(`no event ${part}`);
  return event;
};

describe('the calendar of a visit, read by an independent parser of RFC 5545', () => {
  it('has a version, a maker, and for each event its id, stamp, start and end', () => {
    expect(calendar().getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar().getFirstPropertyValue('prodid')).toBe('Stillspot');
    expect(events()).toHaveLength(visitEvents(plan).length);
    const ids = events().map(({ uid }) => uid);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { component } of events()) {
      for (const name of ['uid', 'dtstamp', 'dtstart', 'dtend', 'summary'])
        expect(component.getFirstProperty(name)).not.toBeNull();
    }
  });

  // By the clock of the site: closed 12 h before the start; 48 and 96 h after it, over the change of clocks on 8 March 2026.
  it.each([
    ['Close the house', '2026-03-07T11:00:00Z', '2026-03-07T11:15:00Z'],
    ['Place', '2026-03-07T23:00:00Z', '2026-03-07T23:15:00Z'],
    ['Detectors may be picked up', '2026-03-09T23:00:00Z', '2026-03-11T23:00:00Z'],
    ['Pick up', '2026-03-10T13:30:00Z', '2026-03-10T13:45:00Z'],
    ['Last moment', '2026-03-11T22:45:00Z', '2026-03-11T23:00:00Z'],
    ['Mail', '2026-03-10T14:30:00Z', '2026-03-10T14:45:00Z'],
    ['The laboratory', '2026-03-15T13:15:00Z', '2026-03-15T13:30:00Z'],
  ])('%s: %s to %s', (part, start, end) => {
    const event = find(part);
    expect([event.startDate.toString(), event.endDate.toString()]).toEqual([start, end]);
  });

  it('says the last moment to mail: two days before the laboratory must have it', () => {
    expect(find('Mail').description).toContain('At the latest Friday, March 13, 9:30 am.');
  });

  it('says of a planned placement what its pick-up counts from: at another minute the window is another', () => {
    const notesOf = (visit: Plan['visit'], wanted: string) =>
      visitEvents({ ...plan, visit }).find(({ kind }) => kind === wanted)?.notes;
    const planned = { ...plan.visit, end: null, startPlanned: true };
    const counted = 'Counted from the planned placement: placed at another minute, count from that one.';
    for (const kind of ['pick-up-window', 'last-moment']) {
      expect(notesOf(planned, kind)).toContain(counted);
      expect(notesOf({ ...plan.visit, end: null }, kind)).not.toContain(counted);
    }
  });

  it('of a monitor, which is read on site, has nothing to mail', () => {
    const kinds = visitEvents({ ...plan, visit: { ...plan.visit, device: 'monitor' } }).map(({ kind }) => kind);
    expect(kinds).toEqual(['closing', 'start', 'pick-up-window', 'pick-up', 'last-moment']);
  });

  it('rings before the last moment, three times', () => {
    const alarms = find('Last moment').component.getAllSubcomponents('valarm');
    expect(alarms.map((alarm) => alarm.getFirstPropertyValue('trigger')?.toString())).toEqual([
      '-PT360M',
      '-PT120M',
      '-PT30M',
    ]);
    for (const alarm of alarms) expect(alarm.getFirstPropertyValue('action')).toBe('DISPLAY');
  });

  it('keeps commas, semicolons and quotes of a title, carries the cautions, and folds at 75 octets', () => {
    expect(find('Place').summary).toContain(plan.title);
    expect(find('Place').description).toContain(
      'A certified or licensed professional decides whether a result may be used, in your own home too.',
    );
    for (const line of calendarText(plan, NOW).split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });

  it('escapes what an alarm shows, which ends with the title', () => {
    const [alarm] = find('Place').component.getAllSubcomponents('valarm');
    expect(alarm?.getFirstPropertyValue('description')).toBe(find('Place').summary);
    const unfolded = calendarText(plan, NOW).replaceAll('\r\n ', '');
    for (const [line] of unfolded.matchAll(/^DESCRIPTION:.*$/gm)) expect(line).not.toMatch(/[^\\][;,]/);
  });

  it('is the same for the same visit, and empty without a start', () => {
    expect(calendarText(plan, NOW)).toBe(calendarText(plan, NOW));
    expect(find('Place').component.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-03-01T12:00:00Z');
    expect(visitEvents({ ...plan, visit: { ...plan.visit, start: null, end: null } })).toEqual([]);
  });
});

describe('a start with seconds', () => {
  // 32 IAC 422.130(b)(1): 48 h at least. A calendar shows minutes, and the earliest of them must not be short.
  it('no entry of the pick-up window lies outside the window', () => {
    const seconds = { ...plan, visit: { ...plan.visit, start: '2026-03-07T18:00:30-05:00', end: null } };
    const [start, hour] = [Date.parse('2026-03-07T18:00:30-05:00'), 3_600_000];
    const root = new ICAL.Component(ICAL.parse(calendarText(seconds, NOW)));
    const window = root
      .getAllSubcomponents('vevent')
      .map((each) => new ICAL.Event(each))
      .find(({ summary }) => summary.startsWith('Detectors may be picked up'));
    expect(window?.startDate.toJSDate().getTime()).toBeGreaterThanOrEqual(start + 48 * hour);
    expect(window?.endDate.toJSDate().getTime()).toBeLessThanOrEqual(start + 96 * hour);
    expect(window?.description).toContain('Not before Monday, March 9, 7:01 pm');
  });
});

describe('titles in other letters', () => {
  const named = (title: string, label = '') => calendarText({ ...plan, title, site: { ...plan.site, label } }, NOW);

  it('no line is longer than 75 octets, and the title comes back whole (RFC 5545, 3.1)', () => {
    const title = 'Жёлтый дом 🏠 '.repeat(12).trim();
    const text = named(title);
    expect(Math.max(...text.split('\r\n').map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    const [first] = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    expect(first?.getFirstPropertyValue('summary')).toBe(`Close the house: ${title}`);
  });

  it('two jobs never share an id: one would take the place of the other (RFC 5545, 3.8.4.7)', () => {
    const uid = (text: string) =>
      new ICAL.Component(ICAL.parse(text)).getFirstSubcomponent('vevent')?.getFirstPropertyValue('uid');
    const texts = [named('Дом'), named('Сад'), named('', '3 Wren Hill'), named('', '5 Wren Hill')];
    expect(new Set(texts.map(uid)).size).toBe(4);
  });
});

describe('two plans of one title', () => {
  it('never share an id, and one whose visit is moved keeps its own (RFC 5545, 3.8.4.7)', () => {
    const wall = { id: 'w', from: [0, 0], to: [4000, 0], thickness: 200, side: 'auto' } as const;
    const basement = (length: number): Plan => ({
      ...plan,
      title: 'Basement',
      levels: plan.levels.map((level) => ({ ...level, walls: [{ ...wall, to: [length, 0] }] })),
    });
    const ids = (of: Plan) => [...calendarText(of, NOW).matchAll(/^UID:(.*)$/gm)].map(([, id]) => id);
    const [one, other] = [ids(basement(4000)), ids(basement(4001))];
    expect(new Set([...one, ...other]).size).toBe(one.length + other.length);
    const moved = { ...basement(4000), visit: { ...plan.visit, start: '2026-03-08T18:00:00-04:00' } };
    expect(ids(moved)).toEqual(one);
  });
});

describe('what stands in a calendar', () => {
  it('rings when the window opens', () => {
    const [alarm] = find('Detectors may be picked up').component.getAllSubcomponents('valarm');
    expect(alarm?.getFirstPropertyValue('trigger')?.toString()).toBe('PT0S');
  });

  it('has no control characters (RFC 5545, 3.3.11)', () => {
    const text = calendarText({ ...plan, title: 'A\u0007B\u2028C\tD', site: { ...plan.site, label: 'E\u0000F' } }, NOW);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: what must not be there
    expect(text).not.toMatch(/[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029]/);
    expect(text).toContain('AB C D');
  });

  it('closes the house 12 h before, and asks for nothing at a time that is over', () => {
    const closing = (closedSince: string | null, now?: string) =>
      visitEvents({ ...plan, visit: { ...plan.visit, closedSince } }, now ? Date.parse(now) : undefined).find(
        ({ kind }) => kind === 'closing',
      );
    const by = Date.parse('2026-03-07T06:00:00-05:00');
    expect(closing(null)?.start).toBe(by);
    expect(closing('2026-03-06T20:00:00-05:00')?.start).toBe(by);
    const late = closing('2026-03-07T09:00:00-05:00');
    expect(late?.start).toBe(Date.parse('2026-03-07T09:00:00-05:00'));
    expect(late?.notes).toContain('start no earlier than Saturday, March 7, 9:00 pm');
    expect(closing(null, '2026-03-07T10:00:00-05:00')?.start).toBe(Date.parse('2026-03-07T10:00:00-05:00'));
    // Placed without a recorded closing: the required time stays, and does not read as a record.
    const passed = closing(null, '2026-03-07T18:00:00-05:00');
    expect(passed).toMatchObject({ start: by, alarms: [] });
    expect(passed?.title).toContain('closing not recorded');
    expect(passed?.notes).toContain('Required from this time, 12 h before the placement.');
    expect(passed?.notes).not.toContain('closed on all levels');
    expect(closing('2026-03-06T20:00:00-05:00', '2026-03-07T18:00:00-05:00')?.start).toBe(by);
  });
});
