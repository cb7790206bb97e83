import type { Custody, LogEntry, Plan } from '../../../geometry/plan/model.ts';
import { listed } from '../../../geometry/words.ts';
import { type Ms, msOf, saidDuration, saidInstant } from '../timing/clock.ts';
import { type NamedDetector, namedDetectors } from './detectors.ts';
import { logOf, withHandOver, withLog } from './edit.ts';

export type StepKind = 'set-out' | 'fetched' | 'sealed' | 'hand-over' | 'posted' | 'received';

/** One thing that happened to a detector on its way from the house to the laboratory. */
export interface ChainStep {
  readonly kind: StepKind;
  /** Null: not written down. */
  readonly at: Ms | null;
  readonly from: string;
  /** Who has it from then on; empty where that is not written down. A seal changes no hands. */
  readonly to: string;
  readonly note: string;
  /** Place among the hand-overs of the log, in the order in which they were written; null for what is no hand-over. */
  readonly index: number | null;
  /** What does not fit, in sentences; a chain with any is no proof. */
  readonly doubts: readonly string[];
}

export interface Chain {
  /** In order of time. A step whose time is not known stays after the one that was written before it. */
  readonly steps: readonly ChainStep[];
  /** Who has it now, in words; empty while it has not been set out. */
  readonly now: string;
  readonly doubtful: boolean;
}

export const HOUSE = 'the house';
export const POST = 'the post';
export const LABORATORY = 'the laboratory';

type Bare = Omit<ChainStep, 'doubts'>;
/** At the same minute, this is what comes first. */
const ORDER: readonly StepKind[] = ['set-out', 'fetched', 'sealed', 'hand-over', 'posted', 'received'];

/**
 * Where a detector was, from the house to the laboratory. Set out, fetched, posted and received are the visit's; seal and
 * hand-overs are the detector's. Nothing is put right: what contradicts another time or hand has its doubt beside it.
 */
export function chainOf(plan: Plan, detector: string): Chain {
  const entry = logOf(plan, detector);
  const ordered = inOrderOfTime(plan, entry);
  let holder = '';
  const steps = ordered.map((step): ChainStep => {
    const doubts = doubtsOf(plan, entry, step, holder);
    const from = step.kind === 'posted' || step.kind === 'received' ? holder : step.from;
    if (step.kind !== 'sealed') holder = step.to;
    return { ...step, from, doubts };
  });
  return { steps, now: nowWords(steps, plan.site.timeZone), doubtful: steps.some(({ doubts }) => doubts.length > 0) };
}

/** Detectors that went the same way, step by step, and that way. */
function chainsTogether(
  plan: Plan,
): readonly { readonly detectors: readonly NamedDetector[]; readonly chain: Chain }[] {
  const groups = new Map<string, { detectors: NamedDetector[]; chain: Chain }>();
  for (const detector of namedDetectors(plan)) {
    const chain = chainOf(plan, detector.id);
    const key = JSON.stringify(chain);
    const group = groups.get(key);
    if (group) group.detectors.push(detector);
    else groups.set(key, { detectors: [detector], chain });
  }
  return [...groups.values()];
}

/** Everything that does not fit, a line a step, with the detectors that it is said of. */
export function chainDoubts(plan: Plan): readonly string[] {
  return chainsTogether(plan).flatMap(({ detectors, chain }) =>
    chain.steps
      .filter(({ doubts }) => doubts.length > 0)
      .map((step) => `${listed(detectors.map(({ name }) => name))}, ${stepWords(step)}: ${step.doubts.join(' ')}`),
  );
}

/** What happened, without its time: "Bo Reed to the office". */
export function stepWords({ kind, from, to }: ChainStep): string {
  switch (kind) {
    case 'set-out':
      return from ? `Set out by ${from}` : 'Set out';
    case 'fetched':
      return to ? `Fetched by ${to}` : 'Fetched';
    case 'sealed':
      return 'Sealed';
    case 'hand-over':
      return `${from || 'Not known who'} to ${to || 'nobody named'}`;
    case 'posted':
      return 'Posted';
    case 'received':
      return 'At the laboratory';
  }
}

/** Who has it, as a name that a hand-over can start from; empty where nobody is written down. */
export function holderOf(plan: Plan, detector: string): string {
  return chainOf(plan, detector).steps.findLast(({ kind }) => kind !== 'sealed')?.to ?? '';
}

/** The plan with one hand-over of several detectors; without `from`, each goes from whoever has it. */
export function withBoxHandOver(
  plan: Plan,
  detectors: readonly string[],
  { at, from, to, note }: { at: string | null; from: string | null; to: string; note: string },
): Plan {
  return detectors.reduce((now, id) => withHandOver(now, id, { at, from: from ?? holderOf(now, id), to, note }), plan);
}

/** Whose log has this hand-over: the detectors that went in one box then. */
export function handedOverWith(plan: Plan, step: Custody): readonly NamedDetector[] {
  return namedDetectors(plan).filter(({ id }) => logOf(plan, id).custody.some((each) => sameHandOver(each, step)));
}

/** The plan without that hand-over in the logs of these detectors. */
export function withoutHandOver(plan: Plan, detectors: readonly NamedDetector[], step: Custody): Plan {
  return detectors.reduce((now, { id }) => {
    const { custody } = logOf(now, id);
    const gone = custody.findIndex((each) => sameHandOver(each, step));
    return gone < 0 ? now : withLog(now, id, { custody: custody.filter((_, i) => i !== gone) });
  }, plan);
}

/** From whom may differ: a box takes each detector from whoever has it. */
const sameHandOver = (a: Custody, b: Custody): boolean => a.at === b.at && a.to === b.to && a.note === b.note;

function inOrderOfTime({ visit }: Plan, { placedBy, fetchedBy, sealed, custody }: LogEntry): readonly Bare[] {
  const step = (kind: StepKind, at: Ms | null, change: Partial<Bare> = {}): Bare => {
    return { kind, at, from: '', to: '', note: '', index: null, ...change };
  };
  const [start, end, shut] = [msOf(visit.start), msOf(visit.end), msOf(sealed)];
  const [posted, received] = [msOf(visit.posted), msOf(visit.received)];
  const known: readonly Bare[] = [
    ...(start === null && !placedBy.trim() ? [] : [step('set-out', start, { from: placedBy.trim(), to: HOUSE })]),
    ...(end === null && !fetchedBy.trim() ? [] : [step('fetched', end, { from: HOUSE, to: fetchedBy.trim() })]),
    ...(shut === null ? [] : [step('sealed', shut)]),
    ...custody.map(({ at, from, to, note }, index) =>
      step('hand-over', msOf(at), { from: from.trim(), to: to.trim(), note: note.trim(), index }),
    ),
    ...(posted === null ? [] : [step('posted', posted, { to: POST })]),
    ...(received === null ? [] : [step('received', received, { to: LABORATORY })]),
  ];
  // Where the time is not known, that of the step that was written before it.
  let reached = Number.NEGATIVE_INFINITY;
  return known
    .map((each) => {
      reached = each.at ?? reached;
      return { each, at: reached };
    })
    .toSorted((a, b) => compared(a.at, b.at) || ORDER.indexOf(a.each.kind) - ORDER.indexOf(b.each.kind))
    .map(({ each }) => each);
}

/** Two that are not known at all are at one place: their difference would be no number. */
const compared = (a: Ms, b: Ms): number => (a === b ? 0 : a - b);

function doubtsOf(plan: Plan, entry: LogEntry, step: Bare, holder: string): readonly string[] {
  const { visit, site } = plan;
  const said = (at: Ms) => saidInstant(at, site.timeZone);
  const [end, posted, received] = [msOf(visit.end), msOf(visit.posted), msOf(visit.received)];
  const { at, kind } = step;
  const before = (other: Ms | null): other is Ms => at !== null && other !== null && at < other;
  const after = (other: Ms | null): other is Ms => at !== null && other !== null && at > other;
  const early = before(end) ? [`Before the pick-up, ${said(end)}. Look at both times.`] : [];
  switch (kind) {
    case 'set-out':
    case 'fetched':
      return [];
    case 'sealed': {
      const gone = entry.custody.map((each) => msOf(each.at)).find((other) => after(other) && !before(end));
      return [...early, ...(gone ? [`It had changed hands before, ${said(gone)}. Look at both times.`] : [])];
    }
    case 'hand-over': {
      const later = entry.custody
        .slice(0, step.index ?? 0)
        .map((each) => msOf(each.at))
        .find(before);
      return [
        ...early,
        ...(later ? [`Earlier than the hand-over written before it, ${said(later)}. Look at both times.`] : []),
        ...(after(received) ? [`After the laboratory had it, ${said(received)}. Look at both times.`] : []),
        ...(at === null ? ['Its time is not written down.'] : []),
        ...(end === null ? ['When it was fetched is not written down.'] : []),
        ...mismatch(step.from, holder),
      ];
    }
    case 'posted':
      return [
        ...early,
        ...(before(msOf(entry.sealed)) ? ['Posted before it was sealed. Look at both times.'] : []),
        ...(sameHand(holder, LABORATORY) ? ['The laboratory had it by then.'] : []),
      ];
    case 'received':
      return [...early, ...(before(posted) ? [`Before it was posted, ${said(posted)}. Look at both times.`] : [])];
  }
}

function mismatch(from: string, holder: string): readonly string[] {
  if (!from) return ['Who gave it is not written down.'];
  if (!holder || sameHand(from, holder)) return [];
  return [`By the log ${holder} had it, not ${from}.`];
}

/** The same person or place, however it is written: "post", "the post office", "Laboratory". */
function sameHand(a: string, b: string): boolean {
  const plain = (name: string) => {
    const words = name.trim().toLowerCase().replaceAll(/\s+/g, ' ').replace(/^the /, '');
    return /^(?:post|lab)\b|^laborator/.exec(words)?.[0].slice(0, 3) ?? words;
  };
  return plain(a) === plain(b);
}

function nowWords(steps: readonly ChainStep[], zone: string): string {
  const last = steps.findLast(({ kind }) => kind !== 'sealed');
  if (!last) return '';
  const since = last.at === null ? '' : `, since ${saidInstant(last.at, zone)}`;
  if (!last.to) return `fetched${since.replace('since ', '')}; by whom is not written down`;
  return `${last.to === HOUSE ? 'in' : 'with'} ${last.to}${since}`;
}

/** How long it lay open after the pick-up, in words; empty where one of the two is not known or they contradict. */
export function sealedAfter({ visit }: Plan, { sealed }: LogEntry): string {
  const [end, at] = [msOf(visit.end), msOf(sealed)];
  if (end === null || at === null || at < end) return '';
  return at === end ? 'At the pick-up.' : `${saidDuration(at - end)} after the pick-up.`;
}
