/** Sentences of the sheet that are not about a single check: the allowed area, changed rules, checks that did not run. */

import { isDrawn } from '../../geometry/check/subjects.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import {
  changeWord,
  describeComputed,
  describeNotice,
  describeNotRun,
  describeReport,
  insteadOf,
  listed,
  openRules,
  PURPOSE_PHRASE,
} from '../../geometry/messages/index.ts';
import { mergeSentences } from '../../geometry/messages/merge-sentences.ts';
import { markedCite } from '../../geometry/messages/sources.ts';
import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import { lowerFirst } from '../../geometry/plan/nouns.ts';
import { type EffectiveRule, profileById } from '../../geometry/rules/profiles.ts';
import { formatLength, formatMeasured, formatRequired, type LengthUnit } from '../../geometry/units/index.ts';
import { openRooms } from '../drawing/floor.ts';
import { logEntryOf } from '../protocol/custody/log-entries.ts';
import { msOf } from '../protocol/timing/clock.ts';
import { formatInstant } from '../protocol/timing/format-time.ts';
import { carrierWords } from './carrier.ts';
import { formatShortAt } from './documents/format-times.ts';
import { TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { tapeWords } from './tape-distances.ts';
import { shortened } from './text.ts';

/** More detectors than this are counted, not named. */
const MOST_NAMES = 6;

/** One override of a rule as text. */
export interface ChangedRule {
  readonly loosened: boolean;
  /** "LOOSENED", "Tightened", "Own distance". */
  readonly word: string;
  readonly says: string;
  readonly note: string;
}

/** Returns the rules that the plan changes, loosened ones first. */
export function changedRules({ rules, plan }: SubjectMatter): readonly ChangedRule[] {
  const unit = plan.display.length;
  const changed = rules.flatMap(({ name, least, override }) => {
    const word = changeWord(least, override);
    if (!word || !override || least === null) return [];
    const says = `${name}: ${insteadOf(least, override, unit)}.`;
    return [{ loosened: override.loosened, word, says, note: override.note.trim() }];
  });
  return changed.sort((a, b) => Number(b.loosened) - Number(a.loosened));
}

/** Returns how the verdicts of the level were computed; each sentence names its detectors unless all share it. */
export function computedLines({ detectors, plan }: SubjectMatter): readonly string[] {
  return mergeSentences(detectors.map((placed) => [placed.detector, [describeComputed(placed.computed, plan)]]));
}

/** Returns the checks that were not run; each sentence names its detectors unless all share it. */
export function notRunLines({ detectors, plan, level }: SubjectMatter): readonly string[] {
  return mergeSentences(detectors.map(({ detector, report }) => [detector, openLines(report, plan, level)]));
}

/** Returns "3 ft" or "20 in to 6 ft"; empty if the rule has no limit. */
export function limitWords({ least, most }: Pick<EffectiveRule, 'least' | 'most'>, unit: LengthUnit): string {
  const words = [
    ...(least === null ? [] : [formatRequired(least, unit)]),
    ...(most === null ? [] : [formatRequired(most, unit, 'most')]),
  ];
  return words.join(' to ');
}

/** One line for all subjects that were not looked for, then every other check that was not run with its reason. */
function openLines(report: DetectorReport, plan: Plan, level: Level): readonly string[] {
  const { looks, others } = openRules(report, plan);
  const checks = report.checks.filter(({ rule }) => others.some(({ id }) => id === rule));
  const names = listed(looks.map(({ name }) => name.toLowerCase()));
  return [...(names ? [`Not looked for: ${names}.`] : []), ...describeNotRun({ ...report, checks }, plan, level)];
}

/** Returns the subjects that were looked for and are not on the level, each with who looked, and when. */
export function lookedForLines({ plan, level, rules, model }: SubjectMatter): readonly string[] {
  return rules.flatMap((rule) => {
    // A drawn subject overrides the answer that there is none.
    if (rule.absent === null || !level.lookedFor?.includes(rule.id) || isDrawn(rule, model)) return [];
    const signed = level.lookedForBy?.find((each) => each.rule === rule.id);
    const who = signed?.by.trim() || 'inspected by: not recorded';
    const at = msOf(signed?.at ?? null);
    const when = at === null ? 'when is not recorded' : formatInstant(at, plan.site.timeZone);
    return [`${rule.absent}: ${who}, ${when}.`];
  });
}

/** Returns "Outside doors and windows, 3 ft"; the name alone for a rule without a distance. */
export function ruleWithDistance({ name, least, most }: EffectiveRule, { plan }: SubjectMatter): string {
  const words = limitWords({ least, most }, plan.display.length);
  return words ? `${name}, ${words}` : name;
}

export function profileLine({ plan }: Pick<SubjectMatter, 'plan'>): string {
  const profile = profileById(plan.protocol.profile);
  const { purpose, purposeAnswered } = plan.site;
  const why = purposeAnswered === false ? 'reason for the test not answered' : PURPOSE_PHRASE[purpose];
  return `Profile "${profile?.name ?? plan.protocol.profile}", ${why}.`;
}

/** Returns every source once, in the order of the rules. */
export function sourcesLine({ rules }: SubjectMatter): string {
  return [...new Set(rules.flatMap(({ sources }) => sources.map(markedCite)))].join('; ');
}

/** Returns which detector the allowed area is drawn for, and which rules it leaves out. */
export function whiteMeans(matter: SubjectMatter): string {
  const { plan, region } = matter;
  const [across, tall] = [region.probe.radius * 2, region.probe.tall].map((value) =>
    formatLength(value, plan.display.length),
  );
  const isSunIn = region.zones.some(({ rule }) => rule === 'direct-sun');
  const own = isSunIn
    ? 'Direct sun is in it for the days of the test, without clouds. The spacing of a pair is checked for each detector, not in it.'
    : 'Direct sun and the spacing of a pair are checked for each detector, not in the allowed area.';
  return `${whiteHeight(matter)} The allowed area (white) is where the middle of a detector ${across} across and ${tall} tall may be. ${own}`;
}

/** Returns the height that the allowed area is drawn for, and the detectors of another height or size. */
export function whiteHeight({ plan, region: { probe }, detectors }: SubjectMatter): string {
  const unlike = detectors.filter(
    ({ detector: { base, radius, tall } }) => base !== probe.base || radius !== probe.radius || tall !== probe.tall,
  );
  const height = `The allowed area is drawn for an underside ${formatMeasured(probe.base, plan.display.length)} above the floor.`;
  if (unlike.length === 0) return height;
  const names =
    unlike.length > MOST_NAMES
      ? `${unlike.length} detectors`
      : listed(unlike.map(({ detector }) => detectorName(detector)));
  const verb = unlike.length === 1 ? 'stands at another height or is' : 'stand at another height or are';
  return `${height} Not for ${names}: ${unlike.length === 1 ? 'it' : 'they'} ${verb} of another size.`;
}

function detectorName({ label, id }: Detector): string {
  return shortened(label.trim() || id, 24, { size: TYPE_MM.small });
}

export function toleranceLine({ plan }: SubjectMatter): string {
  return `Tape tolerance ${formatRequired(plan.tapeTolerance, plan.display.length)}: a limit met by less than that reads tight. Measure again on site.`;
}

export const MEASURED_LINE =
  'Distances are measured on the plan from the rim of the detector, straight through partitions; to objects also over their height.';

/** Returns the reason of a verdict, after the difference that the second computation found, if any. */
export function reasonOf(
  { plan, level }: SubjectMatter,
  { report, computed }: SubjectMatter['detectors'][number],
): string {
  const doubt = computed.how === 'differs' ? [describeComputed(computed, plan)] : [];
  return [...doubt, describeReport(report, plan, level)].join(' ');
}

/** Returns where a detector is, and its serial number. */
export function placeLine({ plan, model, level }: SubjectMatter, detector: Detector): string {
  const walls = tapeWords(plan, model, detector);
  return [
    `Underside ${formatMeasured(detector.base, plan.display.length)} above the floor${carrierWords(level, detector)}.`,
    walls ? `From its rim: ${lowerFirst(walls)}.` : '',
    `Serial ${logEntryOf(plan, detector.id).serial.trim() || 'not recorded'}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** Returns when the detectors were placed and picked up; a time without a record is "not recorded". */
export function timeLine({ plan }: SubjectMatter): string {
  const { start, startPlanned, end, plannedEnd } = plan.visit;
  const words = (recorded: string | null, planned: string | null | undefined) => {
    const [is, was] = [recorded, planned].map((at) => formatShortAt(at, plan));
    return is || (was ? `planned for ${was}` : 'not recorded');
  };
  const placed = startPlanned ? words(null, start) : words(start, null);
  return `Detectors placed: ${placed}. Picked up: ${words(end, plannedEnd)}.`;
}

/** Returns remarks on how the level is drawn, each once. */
export function remarks({ model, level, plan }: SubjectMatter): readonly string[] {
  return [...new Set(model.notices.map((notice) => describeNotice(notice, plan.display.length, level)))];
}

/** Returns a sentence with the names without room on the drawing, "Bed (12), Chair, Locker (77)"; empty for none. */
export function leftOffLine(names: readonly string[]): string {
  if (names.length === 0) return '';
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  const words = [...counts].map(([name, count]) => (count === 1 ? name : `${name} (${count})`));
  return `Names without room on the drawing, where their outlines stand: ${words.join(', ')}.`;
}

/** Returns whether the level has any allowed area. */
export function hasWhite(matter: SubjectMatter): boolean {
  return openRooms(matter.region).some(({ area }) => area > 0);
}
