import { checkPlan } from '../../../geometry/check/check-detector.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { conditionsReport } from '../conditions/report.ts';
import { chainDoubts } from '../custody/chain-words.ts';
import { detectorLabel } from '../detector-label.ts';
import { locations } from '../results/locations.ts';
import { TIMING_NAME, timingChecks } from '../timing/checks.ts';
import { isLaboratoryDoubt, STANDS_WITH } from '../timing/report.ts';
import { type LevelPlacement, placementCauses } from './placement.ts';
import { type StandingReason, stateOf, type TestState } from './types.ts';

/**
 * Whether a test holds, and every cause for which it does not: where the detectors sit and what was not run, how long they lay,
 * the closed house, the mitigation system, the way to the laboratory, the hands it went through, the conditions, tampering, too few detectors for a property
 * transfer, results that are not in. The worst cause decides; what is not written down is unknown, and never a pass.
 * @param placement what the checks said, where it is known already: worked out here when left out
 */
export function testState(plan: Plan, placement: readonly LevelPlacement[] = checkPlan(plan).levels): TestState {
  const { reasons, notes } = placementCauses(plan, placement);
  return stateOf(
    [...reasons, ...pairReasons(plan), ...visitReasons(plan), ...chainReasons(plan), ...resultReasons(plan)],
    notes,
  );
}

/** What the times and the house take from a test, whatever was placed and measured. */
export const visitReasons = (plan: Plan): readonly StandingReason[] => [...timeReasons(plan), ...houseReasons(plan)];

/**
 * In a property transfer a passive detector by itself decides nothing: 32 Ill. Adm. Code Part 422, Appendix B; ANSI/AARST MAH-2019, 2.5.
 * Detectors of one mark that lie too far apart are each by itself.
 */
function pairReasons(plan: Plan): readonly StandingReason[] {
  if (plan.site.purpose !== 'property-transfer' || plan.visit.device === 'monitor') return [];
  return locations(plan)
    .filter(({ detectors }) => detectors.length < 2)
    .map(({ detectors }): StandingReason => {
      const [only] = detectors;
      const name = only ? detectorLabel(only) : 'A detector';
      const way = plan.visit.end === null ? 'set a second one beside it' : 'test again with a pair';
      return {
        standing: 'not-evaluated',
        stage: 'place',
        says: `${name} is by itself. A property transfer is decided by two passive detectors side by side, or by a continuous monitor: ${way}.`,
        detectors: detectors.map(({ id }) => id),
      };
    });
}

function timeReasons(plan: Plan): readonly StandingReason[] {
  return timingChecks(plan).flatMap((check): StandingReason[] => {
    const { rule, verdict, detail } = check;
    const says = `${TIMING_NAME[rule]}: ${detail}`;
    const of = { stage: 'time', says, detectors: null } as const;
    // What is only planned has happened neither well nor badly.
    if (rule === 'exposure' && plan.visit.end === null)
      return [{ ...of, standing: 'unknown', says: notFetched(plan, says) }];
    if (STANDS_WITH.includes(rule) && verdict === 'blocked') return [{ ...of, standing: 'not-evaluated' }];
    const open = verdict === 'unknown' || (rule === 'weather' && verdict === 'blocked') || isLaboratoryDoubt(check);
    return open ? [{ ...of, standing: 'unknown' }] : [];
  });
}

const notFetched = (plan: Plan, says: string): string =>
  plan.visit.plannedEnd ? `${says} The pick-up is planned, and not written down yet.` : says;

function houseReasons(plan: Plan): readonly StandingReason[] {
  const { whole, says } = conditionsReport(plan);
  if (whole === 'holds') return [];
  return [{ standing: whole, stage: 'house', says: `The house: ${says}`, detectors: null }];
}

/** Hands or times that contradict one another: whose air a detector measured, and how long, is not known. Tampering is for the house. */
const chainReasons = (plan: Plan): readonly StandingReason[] =>
  chainDoubts(plan).map(({ detectors, says }) => ({ standing: 'unknown', stage: 'log', says, detectors }));

function resultReasons(plan: Plan): readonly StandingReason[] {
  const open = (says: string, detectors: readonly string[] | null): StandingReason => {
    return { standing: 'unknown', stage: 'read', says, detectors };
  };
  if (plan.readings.length === 0) return [open('No result is entered yet.', null)];
  return plan.levels
    .flatMap(({ detectors }) => detectors)
    .flatMap((detector) => {
      const count = plan.readings.filter((reading) => reading.detector === detector.id).length;
      if (count === 1) return [];
      const says = count === 0 ? 'has no result yet.' : 'has more than one result. Which counts is not known.';
      return [open(`${detectorLabel(detector)} ${says}`, [detector.id])];
    });
}
