import { createEvents, type EventAttributes, type DateTime as IcsTime } from 'ics';
import type { Plan } from '../../../geometry/plan/model.ts';
import { assert } from '../../../geometry/plane/assert.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { MINUTE, type Ms } from '../timing/clock.ts';
import { type VisitEvent, visitEvents } from './visit-events.ts';

/**
 * The job's calendar as text of an .ics file (RFC 5545), all instants in UTC: right in any calendar, whatever its zone. The same visit
 * gives the same ids, so that reading it in again moves entries and doubles none. Asserts that there is an event.
 * @param now when it is made: the stamp that the standard asks for
 */
export function calendarText(plan: Plan, now: Ms): string {
  const events = visitEvents(plan, now);
  assert(events.length > 0, 'a calendar of no events');
  const { error, value } = createEvents(events.map((event) => attributes(plan, event)));
  assert(!error && typeof value === 'string', `the calendar was refused: ${error?.message}`);
  // The library writes nothing for an alarm at the very start, and stamps with the clock of the machine; the same visit at the same time gives the same file here.
  const stamp = new Date(now).toISOString().replace(/[-:]|\.\d+/g, '');
  return folded(value)
    .replace(/^DTSTAMP:.*$/gm, `DTSTAMP:${stamp}`)
    .replace(/^TRIGGER:-?PT?(?=\r?$)/gm, 'TRIGGER:PT0S');
}

/** Most octets of a line: RFC 5545, 3.1. */
const LINE = 75;

/** The same lines folded by octets, between whole characters: the library counts characters. */
function folded(text: string): string {
  const octets = new TextEncoder();
  const lines = text.replaceAll(/\r\n[ \t]/g, '').split('\r\n');
  return lines
    .map((line) => {
      let room = LINE;
      return [...line]
        .map((sign) => {
          const size = octets.encode(sign).length;
          const fits = size <= room;
          // A line that goes on begins with a space.
          room = (fits ? room : LINE - 1) - size;
          return fits ? sign : `\r\n ${sign}`;
        })
        .join('');
    })
    .join('\r\n');
}

function attributes(plan: Plan, event: VisitEvent): EventAttributes {
  return {
    uid: `${event.kind}.${idOf(plan)}@stillspot`,
    productId: 'Stillspot',
    title: plain(event.title),
    description: plain(event.notes),
    location: plain(plan.site.label),
    start: utc(event.start),
    startInputType: 'utc',
    startOutputType: 'utc',
    end: utc(event.end),
    endInputType: 'utc',
    endOutputType: 'utc',
    alarms: event.alarms.map((before) => ({
      action: 'display' as const,
      description: plain(event.title),
      trigger: { before: true, minutes: before / MINUTE },
    })),
  };
}

/**
 * A name for the visit. Two plans may have one title: what is drawn tells them apart. The times are left out, so that a visit that is
 * moved keeps its entries, and so are furniture, pictures and answers.
 */
const idOf = memoize(({ title, site, levels }: Plan): string => {
  const drawn = levels.map(({ id, name, walls, openings, rooms, detectors }) => {
    return [id, name, walls, openings, rooms, detectors.map((detector) => detector.id)];
  });
  return digest(JSON.stringify([title, site, drawn]));
});

/** 106 bits of a text (cyrb53 twice, in the public domain): two plans of one id are not to be expected. */
function digest(text: string): string {
  return [0, 1].map((seed) => hash53(text, seed).toString(36).padStart(11, '0')).join('');
}

function hash53(text: string, seed: number): number {
  let [a, b] = [0xdeadbeef ^ seed, 0x41c6ce57 ^ seed];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return 4294967296 * (2097151 & b) + (a >>> 0);
}

/** Text of a calendar has no control characters but the ends of its lines: RFC 5545, 3.3.11. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const plain = (text: string): string => text.replace(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029]/g, '');

function utc(at: Ms): IcsTime {
  const date = new Date(at);
  return [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate(), date.getUTCHours(), date.getUTCMinutes()];
}
