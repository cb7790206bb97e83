import { createEvents, type EventAttributes, type DateTime as IcsTime } from 'ics';
import { assert } from '../../../geometry/assert.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { MINUTE, type Ms } from '../timing/clock.ts';
import { type JobEvent, jobEvents } from './events.ts';

/**
 * The job's calendar as text of an .ics file (RFC 5545), all instants in UTC: right in any calendar, whatever its zone. The same visit
 * gives the same ids, so that reading it in again moves entries and doubles none. Asserts that there is an event.
 * @param now when it is made: the stamp that the standard asks for
 */
export function calendarText(plan: Plan, now: Ms): string {
  const events = jobEvents(plan);
  assert(events.length > 0, 'a calendar of no events');
  const { error, value } = createEvents(events.map((event) => attributes(plan, event)));
  assert(!error && typeof value === 'string', `the calendar was refused: ${error?.message}`);
  // The library stamps with the clock of the machine; the same visit at the same time gives the same file here.
  const stamp = new Date(now).toISOString().replace(/[-:]|\.\d+/g, '');
  return folded(value).replace(/^DTSTAMP:.*$/gm, `DTSTAMP:${stamp}`);
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

function attributes(plan: Plan, event: JobEvent): EventAttributes {
  return {
    uid: `${event.kind}.${idOf(plan)}@stillspot`,
    productId: 'Stillspot',
    title: event.title,
    description: event.notes,
    location: plan.site.label,
    start: utc(event.start),
    startInputType: 'utc',
    startOutputType: 'utc',
    end: utc(event.end),
    endInputType: 'utc',
    endOutputType: 'utc',
    alarms: event.alarms.map((before) => ({
      action: 'display' as const,
      description: event.title,
      trigger: { before: true, minutes: before / MINUTE },
    })),
  };
}

/** A name for the visit: the plan's title, its place and its first detector, in letters and digits of any writing. */
function idOf({ title, site, levels }: Plan): string {
  const first = levels.flatMap(({ detectors }) => detectors)[0]?.id ?? 'none';
  const words = `${title} ${site.label} ${first}`.normalize('NFKC').toLowerCase();
  return words.replace(/[^\p{L}\p{M}\p{N}]+/gu, '-').replace(/^-|-$/g, '');
}

function utc(at: Ms): IcsTime {
  const date = new Date(at);
  return [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate(), date.getUTCHours(), date.getUTCMinutes()];
}
