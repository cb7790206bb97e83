import { XMLValidator } from 'fast-xml-parser';
import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { writePlan } from '../../geometry/planfile/write.ts';
import { area } from '../../src/cli/area.ts';
import type { Call, CliCommand } from '../../src/cli/call.ts';
import { check } from '../../src/cli/check.ts';
import { quality } from '../../src/cli/quality.ts';
import { readings } from '../../src/cli/readings.ts';
import { spots } from '../../src/cli/spots.ts';
import { timing } from '../../src/cli/timing.ts';
import { verifiedPlacement } from '../../src/cli/verified-placement.ts';
import { calendarText } from '../../src/protocol/calendar/ics.ts';
import { visitEvents } from '../../src/protocol/calendar/visit-events.ts';
import { timelineOf } from '../../src/protocol/timing/timeline.ts';
import { testState } from '../../src/protocol/validity/test-state.ts';
import { drawDocument } from '../../src/report/documents/draw-document.ts';
import { summaryOf } from '../../src/storage/library/summary.ts';

const NOW = Date.UTC(2026, 2, 1, 12);
const QUICK: readonly CliCommand[] = [check, timing, readings, quality];
const HEAVY: readonly CliCommand[] = [area, spots];

/**
 * Does with a text what the app and the command line do with a file. Returns what went wrong, in words; null when nothing did. A refused
 * text is in order as long as its problems have a place.
 */
export async function troubleWith(text: string, heavy: boolean): Promise<string | null> {
  try {
    const read = parsePlan(text);
    if (!read.ok) return read.problems.every(({ message, expected }) => message && expected) ? null : 'a bare problem';
    await runCommands(read.plan, heavy);
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
  return null;
}

async function runCommands(plan: Plan, heavy: boolean): Promise<void> {
  const written = writePlan(plan);
  const again = parsePlan(written);
  if (!again.ok) throw new Error(`what was written is refused: ${again.problems[0]?.message}`);
  if (writePlan(again.plan) !== written) throw new Error('it is written in another way the second time');
  for (const command of heavy ? [...QUICK, ...HEAVY] : QUICK) {
    for (const json of [true, false]) {
      const { text } = await command.run(callOf(plan, json));
      if (json) JSON.parse(text);
    }
  }
  testState(plan, verifiedPlacement(plan));
  timelineOf(plan);
  summaryOf(plan);
  if (visitEvents(plan, NOW).length > 0) calendarText(plan, NOW);
  if (!heavy) return;
  for (const which of ['report', 'log', 'placement-card'] as const) {
    for (const page of drawDocument(which, { plan, paper: 'letter', date: '2026-03-05' })) {
      const trouble = xmlTrouble(page);
      if (trouble) throw new Error(`a page of the ${which} is no XML: ${trouble}`);
    }
  }
}

const callOf = (plan: Plan, json: boolean): Call => ({
  file: 'a.plan.json',
  plan,
  plans: [plan],
  names: ['a.plan.json'],
  json,
  options: {},
  flags: new Set(),
  several: false,
  refused: [],
  remarks: [],
});

/** Returns why a page is no XML; null when it is. */
function xmlTrouble(svg: string): string | null {
  const result = XMLValidator.validate(svg);
  return result === true ? null : result.err.msg;
}
