import { checkPlan } from '../../../geometry/check/check-detector.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import { conditionsReport } from '../conditions/conditions-report.ts';
import { chainDiscrepancies } from '../custody/describe-chain.ts';
import { detectorLabel } from '../detector-label.ts';
import { locations } from '../results/locations.ts';
import { aheadIssues, asKnownAt } from '../timing/ahead.ts';
import type { Ms } from '../timing/clock.ts';
import { limitWords, SHORT_TEST } from '../timing/limits.ts';
import { TIMING_NAME } from '../timing/timing-check.ts';
import { timingChecks } from '../timing/timing-checks.ts';
import { DECIDING_RULES, isLaboratoryIssue } from '../timing/timing-report.ts';
import { lacksForecast } from '../timing/weather-check.ts';
import { loosenedNotes } from './loosened-notes.ts';
import { type LevelPlacement, placementIssues } from './placement-issues.ts';
import { type TestState, testStateFrom, type ValidityIssue } from './validity.ts';

/**
 * Returns whether a test is valid, with every issue: placement and rules that were not run, exposure time, closed-building conditions,
 * the mitigation system, delivery to the laboratory, chain of custody, tampering, single detectors in a property transfer, missing
 * results. The worst issue decides; what is not recorded is unknown, never a pass.
 * @param placement reports of the placement checks; computed when left out
 * @param now ms: events recorded for later have not happened yet; left out, all recorded events have
 */
export function testState(
  recorded: Plan,
  placement: readonly LevelPlacement[] = checkPlan(recorded).levels,
  now: Ms = Number.POSITIVE_INFINITY,
): TestState {
  const plan = asKnownAt(recorded, now);
  const { issues, notes } = placementIssues(plan, placement);
  const ahead = aheadIssues(recorded, now);
  return testStateFrom(
    [
      ...ahead,
      ...issues,
      ...purposeIssues(plan),
      ...pairIssues(plan),
      ...visitIssues(plan),
      ...custodyIssues(plan),
      ...resultIssues(plan),
    ],
    [...loosenedNotes(plan), ...notes, ...weatherNotes(plan)],
  );
}

/** A missing forecast is noted once the test is over, and does not affect its validity. */
const weatherNotes = (plan: Plan): readonly string[] =>
  plan.visit.end !== null && lacksForecast(plan)
    ? [
        `No weather forecast from before the start is on record, which a test of less than ${limitWords(SHORT_TEST)} requires.`,
      ]
    : [];

/** Returns the issues of timing and conditions, regardless of placement and results. */
export const visitIssues = (plan: Plan): readonly ValidityIssue[] => [...timingIssues(plan), ...conditionsIssues(plan)];

/**
 * The purpose of a test decides how many detectors a location needs, and the next step. If the level rule depends on the purpose too, that
 * rule reports it as missing.
 */
function purposeIssues({ protocol, site }: Plan): readonly ValidityIssue[] {
  const isAsked = effectiveRules(protocol).some(({ subject }) => subject.of === 'level' && subject.choice === 'lowest');
  if (site.purposeAnswered !== false || isAsked) return [];
  const text =
    'Why the house is tested is not answered yet: a property transfer requires more than a test for the occupants.';
  return [{ validity: 'unknown', stage: 'site', text, detectors: null }];
}

/**
 * In a property transfer a single passive detector is not accepted: 32 Ill. Adm. Code Part 422, Appendix B; ANSI/AARST MAH-2019, 2.5.
 * Detectors of one pair mark that are too far apart are single.
 */
function pairIssues(plan: Plan): readonly ValidityIssue[] {
  if (plan.site.purpose !== 'property-transfer' || plan.visit.device === 'monitor') return [];
  return locations(plan)
    .filter(({ detectors }) => detectors.length < 2)
    .map(({ detectors }): ValidityIssue => {
      const [only] = detectors;
      const name = only ? detectorLabel(only) : 'A detector';
      const way = plan.visit.end === null ? 'place a second one beside it' : 'test again with a pair';
      return {
        validity: 'not-evaluated',
        stage: 'place',
        text: `${name} is by itself. A property transfer requires a collocated pair (two passive detectors side by side), or a continuous monitor: ${way}.`,
        detectors: detectors.map(({ id }) => id),
      };
    });
}

function timingIssues(plan: Plan): readonly ValidityIssue[] {
  return timingChecks(plan).flatMap((check): ValidityIssue[] => {
    const { rule, verdict, detail } = check;
    const text = `${TIMING_NAME[rule]}: ${detail}`;
    const of = { stage: 'time', text, detectors: null } as const;
    // A planned pick-up has not happened: neither valid nor invalid.
    if (rule === 'exposure' && plan.visit.end === null)
      return [{ ...of, validity: 'unknown', text: notPickedUpText(plan, text) }];
    if (DECIDING_RULES.includes(rule) && verdict === 'blocked') return [{ ...of, validity: 'not-evaluated' }];
    const open = verdict === 'unknown' || (rule === 'weather' && verdict === 'blocked') || isLaboratoryIssue(check);
    return open ? [{ ...of, validity: 'unknown' }] : [];
  });
}

const notPickedUpText = (plan: Plan, text: string): string =>
  plan.visit.plannedEnd ? `${text} The pick-up is only planned.` : text;

function conditionsIssues(plan: Plan): readonly ValidityIssue[] {
  const { validity, text } = conditionsReport(plan);
  if (validity === 'holds') return [];
  return [{ validity: validity, stage: 'house', text: `The house: ${text}`, detectors: null }];
}

/** Discrepancies of the chain of custody: the place and the exposure of a detector are not known. Tampering is a condition, not an issue here. */
const custodyIssues = (plan: Plan): readonly ValidityIssue[] =>
  chainDiscrepancies(plan).map(({ detectors, text }) => ({ validity: 'unknown', stage: 'log', text: text, detectors }));

function resultIssues(plan: Plan): readonly ValidityIssue[] {
  const open = (text: string, detectors: readonly string[] | null): ValidityIssue => {
    return { validity: 'unknown', stage: 'read', text, detectors };
  };
  if (plan.readings.length === 0) return [open('No result is entered yet.', null)];
  return plan.levels
    .flatMap(({ detectors }) => detectors)
    .flatMap((detector) => {
      const count = plan.readings.filter((reading) => reading.detector === detector.id).length;
      if (count === 1) return [];
      const problem = count === 0 ? 'has no result yet.' : 'has more than one result. Which one is right is not known.';
      return [open(`${detectorLabel(detector)} ${problem}`, [detector.id])];
    });
}
