import { capital } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { EarlierResult } from '../../../geometry/plan/test-record.ts';
import { locationTexts } from '../../protocol/results/describe-location.ts';
import { locationName } from '../../protocol/results/locations.ts';
import { enteredText, otherUnitText } from '../../protocol/results/radon.ts';
import { placedDetectors } from './detector-places.ts';
import { formatAt } from './format-times.ts';
import type { ReportContent } from './report-content.ts';

/** Returns a sentence for each earlier test on record, then its effect on the result of each location: the next step may depend on it. */
export function earlierLines({ plan, sets }: ReportContent): readonly string[] {
  const all = plan.earlier ?? [];
  if (all.length === 0) return [];
  const effects = sets.flatMap((set) => {
    const { earlier } = locationTexts(plan, set);
    return earlier.length > 0 ? [`${capital(locationName(set))}: ${earlier.join(' ')}`] : [];
  });
  return [...all.map((each) => onRecord(plan, each)), ...effects];
}

function onRecord(plan: Plan, { at, term, detector, note, ...entered }: EarlierResult): string {
  const place = placedDetectors(plan).find((each) => each.detector.id === detector);
  const where = place ? `at ${place.name}` : 'at a place that is not known';
  const day = formatAt(at, plan, 'on a day that is not known');
  const words = `${capital(term)} test, ${day}: ${enteredText(entered)} (${otherUnitText(entered)}), ${where}.`;
  return [words, note.trim()].filter(Boolean).join(' ');
}
