import { calendarText } from '../protocol/calendar/ics.ts';
import { visitEvents } from '../protocol/calendar/visit-events.ts';
import { instantText } from '../protocol/timing/clock.ts';
import { formatInstant } from '../protocol/timing/format-time.ts';
import { type CliCommand, UnusableError } from './call.ts';
import { formatOf, outOption, writeFiles } from './output.ts';

/** `calendar FILE --out NAME.ics`: writes the visit as a calendar file. */
export const calendar: CliCommand = {
  name: 'calendar',
  synopsis: 'FILE --out NAME.ics [--force]',
  summary: 'closing time, start, pick-up window and mailing as a calendar file',
  options: ['out'],
  flags: ['force'],
  run: (call) => {
    const { plan, json, flags, file } = call;
    const out = outOption(call, 'calendar', 'visit.ics');
    formatOf(out, ['ics']);
    const now = Date.now();
    const events = visitEvents(plan, now);
    if (events.length === 0) {
      throw new UnusableError(
        `${file}: /visit/start: The start is not recorded, so there is nothing to put in a calendar.`,
      );
    }
    writeFiles([{ path: out, bytes: calendarText(plan, now) }], flags.has('force'));
    const { timeZone } = plan.site;
    if (json) {
      const rows = events.map(({ kind, title, start, end }) => ({
        kind,
        title,
        start: instantText(start, timeZone),
        end: instantText(end, timeZone),
      }));
      return { text: `${JSON.stringify({ out, events: rows }, null, 2)}\n`, code: 0 };
    }
    const lines = events.map(({ title, start }) => `  ${formatInstant(start, timeZone)}: ${title}`);
    return { text: `${[`Wrote ${out}`, ...lines].join('\n')}\n`, code: 0 };
  },
};
