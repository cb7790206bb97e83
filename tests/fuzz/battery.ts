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
import { csv } from '../../src/protocol/csv.ts';
import { timelineOf } from '../../src/protocol/timing/timeline.ts';
import { testState } from '../../src/protocol/validity/test-state.ts';
import { drawDocument } from '../../src/report/documents/draw-document.ts';
import { reportContent } from '../../src/report/documents/report-content.ts';
import { reportJson, reportTable } from '../../src/report/documents/report-data.ts';
import { drawSheets } from '../../src/report/draw-sheets.ts';
import { planChanges } from '../../src/storage/library/changes.ts';
import { readLibraryFile, writeLibraryFile } from '../../src/storage/library/library-file.ts';
import { findIn, groupPlans, ORDERS, type Order } from '../../src/storage/library/search.ts';
import { summaryOf } from '../../src/storage/library/summary.ts';

const NOW = Date.UTC(2026, 2, 1, 12);
const DATE = '2026-03-05';
const COMMANDS: readonly CliCommand[] = [check, timing, readings, quality, area, spots];
/** Papers that are drawn of a plan; `sheets`: the marked-up plan of every level. */
export const PAPERS = [
  'sheets',
  'notice',
  'entrance-notice',
  'door-hanger',
  'agreement',
  'placement-card',
  'log',
  'report',
] as const;
type Paper = (typeof PAPERS)[number];

interface Outcome {
  /** The failure in words; null for none. */
  readonly trouble: string | null;
  /** Whether the text was read as a plan. */
  readonly isPlan: boolean;
  /** The longest step: a command, a paper, reading, or the library. */
  readonly slowest: Step;
}

interface Step {
  readonly what: string;
  /** Processor time of all threads, ms. */
  readonly ms: number;
}

/**
 * Runs on a text what the app and the command line run on a file: every command, the calendar, these papers, the library. A refused text is
 * no failure if its problems have a place.
 */
export async function troubleWith(text: string, papers: readonly Paper[] = PAPERS): Promise<Outcome> {
  let isPlan = false;
  let slowest: Step = { what: '', ms: 0 };
  const step: Timed = async (what, run) => {
    const before = process.cpuUsage();
    const result = await run();
    const { user, system } = process.cpuUsage(before);
    const ms = (user + system) / 1000;
    if (ms > slowest.ms) slowest = { what, ms };
    return result;
  };
  try {
    const read = await step('reading', () => parsePlan(text));
    isPlan = read.ok;
    if (!read.ok) return { isPlan, slowest, trouble: read.problems.every(isSaid) ? null : 'a bare problem' };
    await runCommands(read.plan, step);
    await drawPapers(read.plan, papers, step);
    await step('library', () => fileIn(read.plan));
  } catch (error) {
    return { isPlan, slowest, trouble: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  return { isPlan, slowest, trouble: null };
}

type Timed = <T>(what: string, run: () => T | Promise<T>) => Promise<T>;

const isSaid = ({ message, expected }: { readonly message: string; readonly expected: string }) =>
  Boolean(message && expected);

async function runCommands(plan: Plan, step: Timed): Promise<void> {
  const written = writePlan(plan);
  const again = parsePlan(written);
  if (!again.ok) throw new Error(`what was written is refused: ${again.problems[0]?.message}`);
  if (writePlan(again.plan) !== written) throw new Error('it is written in another way the second time');
  for (const command of COMMANDS) {
    for (const json of [true, false]) {
      const { text } = await step(command.name, () => command.run(callOf(plan, json)));
      if (json) JSON.parse(text);
    }
  }
  await step('state', () => testState(plan, verifiedPlacement(plan)));
  await step('calendar', () => {
    timelineOf(plan);
    if (visitEvents(plan, NOW).length > 0) calendarText(plan, NOW);
  });
}

/** Draws the papers, and writes the report as table and as JSON. */
async function drawPapers(plan: Plan, papers: readonly Paper[], step: Timed): Promise<void> {
  const order = { plan, paper: 'letter', date: DATE } as const;
  const draw = (paper: Paper) =>
    paper === 'sheets'
      ? plan.levels.flatMap(({ id }) => drawSheets({ ...order, levelId: id }))
      : drawDocument(paper, order);
  for (const paper of papers) {
    for (const page of await step(paper, () => draw(paper))) {
      const trouble = xmlTrouble(page);
      if (trouble) throw new Error(`a page is no XML: ${trouble}`);
    }
  }
  const content = reportContent(plan);
  JSON.parse(JSON.stringify(reportJson(content)));
  csv(reportTable(content));
}

/** Writes the plan to a library file and reads it back; runs the search and the list of changes. */
function fileIn(plan: Plan): void {
  const text = writePlan(plan);
  const times = { createdAt: NOW, changedAt: NOW, binnedAt: null };
  const versions = [{ at: NOW, why: 'rest', text }] as const;
  const back = readLibraryFile(writeLibraryFile([{ id: 'a', ...times, text, versions }], NOW));
  if (!back.ok) throw new Error(`the library refuses it: ${JSON.stringify(back.problems[0])}`);
  const [filed] = back.plans;
  if (!filed || !isSame(filed.text, text) || filed.versions[0]?.text !== text)
    throw new Error('the library changed it');
  if (planChanges(plan, filed.plan).length > 0) throw new Error('the library changed a part of it');
  const summary = { id: 'a', ...times, hash: '', versionAt: 0, ...summaryOf(plan) };
  findIn(summary, plan.title);
  for (const order of Object.keys(ORDERS) as Order[]) groupPlans([summary], order, NOW);
}

/** Compares values, because a library file stores −0 as 0. */
const isSame = (a: string, b: string): boolean => JSON.stringify(JSON.parse(a)) === JSON.stringify(JSON.parse(b));

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

/** Returns why a page is not valid XML; null if it is. */
function xmlTrouble(svg: string): string | null {
  const result = XMLValidator.validate(svg);
  return result === true ? null : result.err.msg;
}
