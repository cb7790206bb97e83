import { createEvents, type EventAttributes, type DateTime as IcsTime } from 'ics';
import { oneLine, severalLines } from '../../../geometry/messages/plain-text.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { assert } from '../../../geometry/plane/assert.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { MINUTE, type Ms } from '../timing/clock.ts';
import { type VisitEvent, visitEvents } from './visit-events.ts';

/**
 * Returns the calendar of a visit as the text of an .ics file (RFC 5545), all instants in UTC. The same visit has the same ids, so that
 * a second import moves entries instead of duplicating them. Asserts that there is at least one event.
 * @param now creation time, for the DTSTAMP that the standard requires
 */
export function calendarText(plan: Plan, now: Ms): string {
  const events = visitEvents(plan, now);
  assert(events.length > 0, 'a calendar of no events');
  const { error, value } = createEvents(events.map((event) => attributes(plan, event)));
  assert(!error && typeof value === 'string', `the calendar was refused: ${error?.message}`);
  // The library omits the trigger of an alarm at the start and stamps with the system clock; here the output depends on the arguments alone.
  const stamp = new Date(now).toISOString().replace(/[-:]|\.\d+/g, '');
  return folded(value)
    .replace(/^DTSTAMP:.*$/gm, `DTSTAMP:${stamp}`)
    .replace(/^TRIGGER:-?PT?(?=\r?$)/gm, 'TRIGGER:PT0S');
}

/** Maximum octets of a line: RFC 5545, 3.1. */
const LINE = 75;

/** Returns the lines folded by octets, between whole characters; the library counts characters. */
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
          // A continuation line begins with a space.
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
    title: oneLine(event.title),
    description: severalLines(event.notes),
    location: oneLine(plan.site.label),
    start: utc(event.start),
    startInputType: 'utc',
    startOutputType: 'utc',
    end: utc(event.end),
    endInputType: 'utc',
    endOutputType: 'utc',
    alarms: event.alarms.map((before) => ({
      action: 'display' as const,
      description: escaped(oneLine(event.title)),
      trigger: { before: true, minutes: before / MINUTE },
    })),
  };
}

/**
 * Returns an id of the visit, from title, site and drawing: two plans may share a title. Times are left out so that a rescheduled visit
 * keeps its entries; furniture, pictures and checklist answers are left out too.
 */
const idOf = memoize(({ title, site, levels }: Plan): string => {
  const drawn = levels.map(({ id, name, walls, openings, rooms, detectors }) => {
    return [id, name, walls, openings, rooms, detectors.map((detector) => detector.id)];
  });
  return digest(JSON.stringify([title, site, drawn]));
});

/** Returns a 106-bit hash (cyrb53 twice, public domain): collisions are not expected. */
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

/** Escapes an alarm's text (RFC 5545, 3.3.11): the library escapes the texts of an entry, but not those of its alarms. */
function escaped(text: string): string {
  return text.replaceAll('\\', '\\\\').replaceAll('\n', '\\n').replaceAll(';', '\\;').replaceAll(',', '\\,');
}

function utc(at: Ms): IcsTime {
  const date = new Date(at);
  return [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate(), date.getUTCHours(), date.getUTCMinutes()];
}
