/** The content of the report of a test as data, from which the pages, the table and the JSON are made. */
import { checkPlan } from '../../../geometry/check/check-detector.ts';
import { capital } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Computed } from '../../../geometry/recheck/compare.ts';
import { detectorLabel } from '../../protocol/detector-label.ts';
import { type ItemReport, requiredItems } from '../../protocol/required-items/item-states.ts';
import { locationTexts } from '../../protocol/results/describe-location.ts';
import { evaluateResults } from '../../protocol/results/evaluate-results.ts';
import type { LocationReport } from '../../protocol/results/location-report.ts';
import { locationName } from '../../protocol/results/locations.ts';
import { NEXT_STEPS } from '../../protocol/results/next-steps.ts';
import { amountsInUnit, digitsText, enteredText, otherUnitText } from '../../protocol/results/radon.ts';
import type { Ms } from '../../protocol/timing/clock.ts';
import { type HomeStep, homeStep } from '../../protocol/validity/home-step.ts';
import { testState } from '../../protocol/validity/test-state.ts';
import type { TestState, Validity } from '../../protocol/validity/validity.ts';
import { type VerifiedLevel, verifiedLevels } from '../../protocol/validity/verified-placement.ts';
import { placedDetectors } from './detector-places.ts';

export interface ReportContent {
  readonly plan: Plan;
  readonly placement: readonly VerifiedLevel[];
  readonly state: TestState;
  readonly sets: readonly LocationReport[];
  readonly house: HomeStep;
  readonly items: readonly ItemReport[];
}

/**
 * Returns the content of the report.
 * @param computed outcome of the second computation by detector id
 * @param now ms: events recorded for later have not happened yet; left out, all recorded events have
 */
export function reportContent(
  plan: Plan,
  computed: ReadonlyMap<string, Computed> = new Map(),
  now?: Ms,
): ReportContent {
  const placement = verifiedLevels(plan, checkPlan(plan).levels, computed);
  const state = testState(plan, placement, now);
  const sets = evaluateResults(plan, state);
  return { plan, placement, state, sets, house: homeStep(plan, sets), items: requiredItems(plan) };
}

/** The result of one location, as text. */
export interface ResultRow {
  readonly location: string;
  /** Room and level: "Family room, Basement". */
  readonly place: string;
  /** Label and value of each detector, in both units: "A1: 3.9 pCi/L (144 Bq/m³)". */
  readonly values: readonly string[];
  /** Notes on the values, then, where `validity` is "holds", the average and the agreement of the pair. */
  readonly agreement: readonly string[];
  readonly step: string;
  readonly validity: Validity;
}

/** Returns a row for each location with a result. Values of a location that is not valid are a record only. */
export function resultRows({ plan, sets }: ReportContent): readonly ResultRow[] {
  const placed = placedDetectors(plan);
  return sets.map((set) => {
    const there = placed.filter(({ detector }) => set.set.detectors.includes(detector));
    const { results, pair } = locationTexts(plan, set);
    const values = set.set.recorded.map((reading) => {
      const detector = set.set.detectors.find(({ id }) => id === reading.detector);
      const below = reading.belowLimit ? 'below ' : '';
      const off =
        reading.uncertainty === undefined ? '' : ` ± ${digitsText({ ...reading, value: reading.uncertainty })}`;
      return `${detector ? detectorLabel(detector) : reading.detector}: ${below}${enteredText(reading)}${off} (${otherUnitText(reading)})`;
    });
    return {
      location: capital(locationName(set)),
      place: [...new Set(there.map(({ room, level }) => `${room}, ${level}`))].join('; '),
      values,
      agreement: [...results.slice(1), ...pair],
      // Without the causes: the summary states them once.
      step: amountsInUnit(plan.display.radon, NEXT_STEPS[set.next.id].text),
      validity: set.state.validity,
    };
  });
}

/** Returns the step for the whole house in the unit of the plan. */
export function houseStep({ plan, house }: ReportContent): string {
  return amountsInUnit(plan.display.radon, house.text);
}

/**
 * Statements of the report besides the result. After ANSI/AARST MAH-2019, 8.5.9.2 (above half of the action level, the season of heating, when
 * to test again) and EPA's Citizen's Guide (no level is safe, secondary); the wording is ours.
 */
export const STATEMENTS: readonly string[] = [
  'No level of radon is known to be without risk. Below the action level the risk is smaller, not gone.',
  'The result is that of the days and the rooms of this test. Radon changes with weather, season and use of the building.',
  'At more than half of the action level, between 2 and 4 pCi/L, consider fixing the building too.',
  'A test while the heating runs day and night shows more clearly than another how much radon there can be.',
  'Test again at least every 5 years, sooner where the next step says so; every 2 years in a building with a mitigation system; when it is sold; and after work on its foundation, heating, cooling or ventilation.',
  'Who mitigates, and who measures for a sale or after mitigation, is certified or licensed where the state asks for it. The rules of the state and the instructions of the kit come first.',
];
