import { limitWords, MITIGATION_BEFORE } from '../timing/limits.ts';
import type { ConditionItem } from './condition-row.ts';

/** Conditions about heating, machines near a detector, the mitigation system, weather and the detectors themselves. */
export const OTHER_ITEMS: readonly ConditionItem[] = [
  {
    id: 'heating-cooling-normal',
    name: 'Heating and cooling normal, 65 to 80 °F',
    deviationEffect: 'professional-review',
    correction: 'Note the coldest and warmest and for how long.',
    everyHouse: true,
  },
  {
    id: 'fireplaces-off',
    name: 'Fireplaces off',
    deviationEffect: 'professional-review',
    correction: 'Note when it burned and for how long.',
    shownBy: ['fireplace', 'wood-stove'],
  },
  {
    id: 'room-machines-off',
    name: 'Ceiling fans, humidifiers and air filters off nearby',
    deviationEffect: 'professional-review',
    correction: 'Switch it off and note which one, how near and since when.',
  },
  {
    id: 'mitigation-running',
    name: 'Mitigation system running',
    deviationEffect: 'not-evaluated',
    correction: `Switch it on and wait ${limitWords(MITIGATION_BEFORE)} before the next start.`,
    onlyWith: 'mitigation-system',
    anyTerm: true,
  },
  {
    id: 'no-severe-weather',
    name: 'No severe weather during the test',
    deviationEffect: 'professional-review',
    correction: 'Note the weather in the log. A new test in calm weather may be the better choice.',
    everyHouse: true,
  },
  {
    id: 'not-disturbed',
    name: 'Detectors not moved, covered or opened',
    deviationEffect: 'not-evaluated',
    correction: 'Record the evidence of tampering in the log of the detector.',
    everyHouse: true,
    anyTerm: true,
  },
];
