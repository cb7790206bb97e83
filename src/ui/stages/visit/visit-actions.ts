import { counted } from '../../../../geometry/messages/index.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { ConditionState, LogEntry, Visit } from '../../../../geometry/plan/test-record.ts';
import { allSame, namedDetectors } from '../../../protocol/custody/detectors.ts';
import { logEntryOf, withLogEntries } from '../../../protocol/custody/log-entries.ts';
import { withVisitStart } from '../../../protocol/custody/placed.ts';
import { instantText, type Ms } from '../../../protocol/timing/clock.ts';
import { formatInstant } from '../../../protocol/timing/format-time.ts';
import { useAppStore } from '../../../state/store.ts';
import { thisMinute } from '../../fields/instant-field.tsx';
import { answer } from '../house/walk.ts';

type Who = 'placedBy' | 'fetchedBy';
type VisitInstant = 'start' | 'end' | 'posted';

/** The log entry with the name of the person for each instant. */
const WHO: Readonly<Record<VisitInstant, Who | null>> = { start: 'placedBy', end: 'fetchedBy', posted: null };

/** Makes a change as one step of history and shows a message. Returns why it was refused, in words; empty if it was made. */
function write(change: (plan: Plan) => Plan, done: string): string {
  const { run, say } = useAppStore.getState();
  const refusal = run(change);
  if (!refusal) say(`${done} Undo reverts it.`);
  return refusal;
}

/**
 * Records an instant of the visit. With a start or an end, also records who is at the house for detectors without a name in the log. A
 * start also records that every detector is placed. Returns why it was refused, in words; empty if it was recorded.
 */
export function writeInstant(key: VisitInstant, name: string, at: Ms): string {
  const { plan, walk } = useAppStore.getState();
  const zone = plan.site.timeZone;
  const value = instantText(at, zone);
  const who = WHO[key];
  const change = (now: Plan): Plan => {
    const visit: Visit = key === 'start' ? withVisitStart(now.visit, value, false) : { ...now.visit, [key]: value };
    const ids = namedDetectors(now).map(({ id }) => id);
    const timed = key === 'start' ? withLogEntries({ ...now, visit }, ids, { placed: true }) : { ...now, visit };
    return who && walk.by.trim() ? withName(timed, who, walk.by.trim(), '') : timed;
  };
  return write(change, `${name}: ${formatInstant(at, zone)}.`);
}

/** Records when all detectors were sealed. Returns why it was refused, in words; empty if it was recorded. */
export function writeSealed(at: Ms): string {
  const { plan } = useAppStore.getState();
  const zone = plan.site.timeZone;
  const ids = namedDetectors(plan).map(({ id }) => id);
  return write(
    (now) => withLogEntries(now, ids, { sealed: instantText(at, zone) }),
    `Sealed: ${formatInstant(at, zone)}, ${counted(ids.length, 'detector')}.`,
  );
}

/** Returns the name that all detectors have in the log; empty if they differ or have none. */
export function commonName(plan: Plan, who: Who): string {
  const names = namedDetectors(plan).map(({ id }) => logEntryOf(plan, id)[who].trim());
  return allSame(names) ? (names[0] ?? '') : '';
}

/** Records who is at the house: for later answers, and for detectors without a name or with the name that all of them had. */
export function writeWho(who: Who, name: string): void {
  const { plan, setWalk } = useAppStore.getState();
  setWalk({ by: name });
  const before = commonName(plan, who);
  const change = (now: Plan) => withName(now, who, name, before);
  if (namedDetectors(plan).length > 0 && name) write(change, `${name} is recorded.`);
}

/** Returns the plan with a name in each log entry that has none, or has `before`. */
function withName(plan: Plan, who: Who, name: string, before: string): Plan {
  const ids = namedDetectors(plan)
    .map(({ id }) => id)
    .filter((id) => ['', before].includes(logEntryOf(plan, id)[who].trim()));
  return withLogEntries(plan, ids, { [who]: name });
}

/** Records whether a detector is as it was left. Returns why it was refused, in words; empty if it was recorded. */
export function writeTampering(id: string, name: string, tampering: LogEntry['tampering']): string {
  const words = tampering === 'seen' ? 'not as it was' : 'as it was';
  return write((now) => withLogEntries(now, [id], { tampering }), `${name}: ${words}.`);
}

/** Answers a condition, with the current minute as the time of the walk. */
export function answerNow(id: string, state: ConditionState): void {
  const { plan, setWalk } = useAppStore.getState();
  setWalk({ at: instantText(thisMinute(), plan.site.timeZone) });
  answer(id, state);
}
