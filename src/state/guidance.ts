import type { DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel, Notice } from '../../geometry/level/types.ts';
import type { Detector, Level, Plan, XY } from '../../geometry/plan/model.ts';
import { effectiveRules } from '../../geometry/rules/profiles.ts';
import { capital, counted, describeEntered, describeNotice, listed, PURPOSE_PHRASE } from '../../geometry/words.ts';
import type { Tool } from './tool.ts';

/** The stages of a job that this version works on, in their order. */
const STAGES = ['site', 'draw', 'place', 'sheet'] as const;
export type Stage = (typeof STAGES)[number];

/** What can be done about a hint with one press. */
export type HintAct =
  | { readonly kind: 'tool'; readonly label: string; readonly tool: Tool }
  | { readonly kind: 'show'; readonly label: string; readonly ids: readonly string[] }
  | { readonly kind: 'name-room'; readonly label: string; readonly at: XY }
  | { readonly kind: 'title'; readonly label: string };

export interface Hint {
  readonly text: string;
  readonly act: HintAct | null;
  /** Missing: the stage is not done without it. A remark may stay. */
  readonly missing: boolean;
}

export interface StageState {
  readonly stage: Stage;
  /** What is there already; empty for nothing. */
  readonly done: string;
  /** The most important first. */
  readonly hints: readonly Hint[];
}

/** For each stage what is done and what is missing on the level in view, in the order in which it matters. */
export function guidance(plan: Plan, model: LevelModel, reports: readonly DetectorReport[]): readonly StageState[] {
  return [siteState(plan), drawState(plan, model), placeState(model, reports), sheetState(model, reports)];
}

function siteState(plan: Plan): StageState {
  const hints: Hint[] = [];
  const loosened = effectiveRules(plan.protocol).filter(({ override }) => override?.loosened);
  if (!plan.title.trim()) {
    hints.push({
      text: 'The sheet has no title yet.',
      act: { kind: 'title', label: 'Write one' },
      missing: false,
    });
  }
  if (loosened.length > 0) {
    const names = listed(loosened.map(({ name }) => name.toLowerCase()));
    hints.push({ text: `Looser than published: ${names}. Every sheet says so.`, act: null, missing: false });
  }
  return { stage: 'site', done: `${capital(PURPOSE_PHRASE[plan.site.purpose])}.`, hints };
}

/** The drawing's troubles by weight: what keeps a room from closing first, what only wants a look last. */
const NOTICE_WEIGHT: Readonly<Record<Notice['kind'], number>> = {
  'gap-open': 0,
  'zero-length-wall': 1,
  'open-passage-outside': 2,
  'label-outside-rooms': 3,
  'labels-share-room': 4,
  'unlabelled-room': 5,
  'gap-closed': 6,
  'overshoot-trimmed': 7,
  'walls-overlap': 8,
};
/** Until these are settled something on the level cannot be judged. */
const NOTICE_MISSING: ReadonlySet<Notice['kind']> = new Set(['gap-open', 'label-outside-rooms', 'unlabelled-room']);

function drawState(plan: Plan, model: LevelModel): StageState {
  const { level, rooms, notices } = model;
  const hints: Hint[] = [];
  if (level.walls.length === 0) {
    hints.push({
      text: 'Nothing is drawn on this level yet. Begin with the outline.',
      act: { kind: 'tool', label: 'Four walls in one drag', tool: { kind: 'room-box' } },
      missing: true,
    });
    return { stage: 'draw', done: '', hints };
  }
  const sorted = [...notices].sort((a, b) => NOTICE_WEIGHT[a.kind] - NOTICE_WEIGHT[b.kind]);
  if (rooms.length === 0 && !sorted.some(({ kind }) => kind === 'gap-open')) {
    hints.push({
      text: 'No room is closed yet. Draw the walls all the way round.',
      act: { kind: 'tool', label: 'Draw walls', tool: { kind: 'wall' } },
      missing: true,
    });
  }
  for (const notice of sorted) {
    hints.push({
      text: describeNotice(notice, plan.display.length, level),
      act: noticeAct(notice),
      missing: NOTICE_MISSING.has(notice.kind),
    });
  }
  if (level.openings.length === 0 && level.ground !== 'crawlspace') {
    hints.push({
      text: 'No door or window is drawn yet. Put in those that lead outside.',
      act: { kind: 'tool', label: 'Put in a window', tool: { kind: 'opening', opening: 'window' } },
      missing: false,
    });
  }
  if (level.fixtures.length === 0 && rooms.length > 0 && level.ground !== 'crawlspace') {
    hints.push({
      text: 'No register, heater, pit or drain is drawn yet. Walk round and put in what is there.',
      act: null,
      missing: false,
    });
  }
  return { stage: 'draw', done: drawnInWords(model), hints };
}

function noticeAct(notice: Notice): HintAct | null {
  if (notice.kind === 'unlabelled-room') return { kind: 'name-room', label: 'Name this room', at: notice.at };
  return notice.ids.length > 0 ? { kind: 'show', label: 'Show it', ids: notice.ids } : null;
}

function drawnInWords({ level, rooms }: LevelModel): string {
  const things = level.fixtures.length + level.objects.length;
  const parts = [
    rooms.length > 0 ? counted(rooms.length, 'room') : counted(level.walls.length, 'wall'),
    level.openings.length > 0 ? counted(level.openings.length, 'opening') : '',
    things > 0 ? counted(things, 'thing') : '',
  ].filter(Boolean);
  return `${listed(parts)}.`;
}

function placeState({ level, rooms }: LevelModel, reports: readonly DetectorReport[]): StageState {
  const hints: Hint[] = [];
  const { detectors } = level;
  if (detectors.length === 0) {
    hints.push({
      text:
        rooms.length === 0 ? 'Close a room first, then set a detector in it.' : 'No detector is set on this level yet.',
      act: rooms.length === 0 ? null : { kind: 'tool', label: 'Set a detector', tool: { kind: 'detector' } },
      missing: true,
    });
    return { stage: 'place', done: '', hints };
  }
  for (const verdict of ['blocked', 'unknown', 'tight'] as const) {
    for (const report of reports.filter((each) => each.verdict === verdict)) {
      const text = {
        blocked: `${nameOf(detectors, report.id)} is blocked.`,
        unknown: `${nameOf(detectors, report.id)} cannot be judged yet.`,
        tight: `${nameOf(detectors, report.id)} is tight: look again with the tape.`,
      }[verdict];
      hints.push({ text, act: { kind: 'show', label: 'Show it', ids: [report.id] }, missing: verdict !== 'tight' });
    }
  }
  hints.push(...enteredHints(level, reports), ...pairHints(detectors), ...labelHints(detectors));
  const done = detectors.map(({ id }) => {
    const verdict = reports.find((report) => report.id === id)?.verdict ?? 'unknown';
    return `${nameOf(detectors, id)} ${verdict}`;
  });
  return { stage: 'place', done: `${done.join(', ')}.`, hints };
}

/** What stands in a washer or a pipe: no rule of the list says so, and nobody can set it there. */
function enteredHints(level: Level, reports: readonly DetectorReport[]): readonly Hint[] {
  return level.detectors.flatMap((detector) => {
    const report = reports.find(({ id }) => id === detector.id);
    const entered = report && describeEntered(level, detector, report);
    if (!entered) return [];
    const text = `${nameOf(level.detectors, detector.id)}: ${entered}`;
    return [{ text, act: { kind: 'show', label: 'Show it', ids: [detector.id] }, missing: true } as const];
  });
}

function pairHints(detectors: readonly Detector[]): readonly Hint[] {
  const pairs = new Map<string, readonly Detector[]>();
  for (const detector of detectors) {
    if (detector.pair !== null) pairs.set(detector.pair, [...(pairs.get(detector.pair) ?? []), detector]);
  }
  const hints: Hint[] = [];
  for (const [pair, members] of pairs) {
    if (members.length === 2) continue;
    const ids = members.map(({ id }) => id);
    const names = listed(members.map(({ id }) => nameOf(detectors, id)));
    const alone = members.length === 1;
    hints.push({
      text: alone
        ? `${names} is marked as pair ${pair}, and its companion is missing.`
        : `Pair ${pair} has ${members.length} detectors: ${names}. Right where all of them stand side by side.`,
      act: { kind: 'show', label: alone ? 'Show it' : 'Show them', ids },
      missing: alone,
    });
  }
  return hints;
}

function labelHints(detectors: readonly Detector[]): readonly Hint[] {
  const hints: Hint[] = [];
  const seen = new Set<string>();
  for (const { id, label } of detectors) {
    const text = label.trim();
    const trouble = !text && 'A detector has no label. The lab needs one.';
    const twice = text && seen.has(text) && `Two detectors are labelled ${text}. Give each its own.`;
    seen.add(text);
    if (trouble || twice) {
      hints.push({ text: trouble || twice || '', act: { kind: 'show', label: 'Show it', ids: [id] }, missing: true });
    }
  }
  return hints;
}

function sheetState({ level }: LevelModel, reports: readonly DetectorReport[]): StageState {
  const refused = reports.filter(({ verdict }) => verdict === 'blocked' || verdict === 'unknown');
  const hints: Hint[] = [];
  if (level.detectors.length === 0) {
    hints.push({ text: 'A sheet without a detector shows the drawing alone.', act: null, missing: true });
  } else if (refused.length > 0) {
    const names = listed(refused.map(({ id, verdict }) => `${nameOf(level.detectors, id)} is ${verdict}`));
    hints.push({ text: `${capital(names)}. The sheet will say so.`, act: null, missing: true });
  }
  return { stage: 'sheet', done: hints.length === 0 ? 'Ready to be saved as a picture.' : '', hints };
}

function nameOf(detectors: readonly Detector[], id: string): string {
  return detectors.find((each) => each.id === id)?.label.trim() || 'A detector';
}
