import { ILLINOIS_COPY, MAH, MALB, PENNSYLVANIA_RULES, source } from '../sources.ts';
import { limitWords, MITIGATION_BEFORE, SHORT_TEST, WIND_LIMIT } from '../timing/limits.ts';
import type { ConditionItem } from './condition-row.ts';

const EPA_HOMES = source('secondary', 'EPA 402-R-92-003, 2.3.2 (copy of the text)');

/** Conditions about heating, machines near a detector, the mitigation system, weather and the detectors themselves. */
export const OTHER_ITEMS: readonly ConditionItem[] = [
  {
    id: 'heating-cooling-normal',
    name: 'Heating and cooling normal, 65 to 80 °F',
    requirement:
      'The house is kept as when occupied, 65 to 80 °F (18 to 27 °C), empty or not. Central cooling may run.',
    notice: 'Keep the house between 65 and 80 °F (18 and 27 °C), with heating and cooling as usual.',
    deviationEffect: 'professional-review',
    correction: 'Note the coldest and warmest and for how long.',
    sources: [MAH('Exh. 2 and 4'), MALB('4-A'), EPA_HOMES, ILLINOIS_COPY(', closed-building list')],
    everyHouse: true,
  },
  {
    id: 'fireplaces-off',
    name: 'Fireplaces off',
    requirement: 'No fire in a fireplace or stove, wood, gas or oil, unless it is the normal heat of the house.',
    notice: 'Do not use fireplaces, wood stoves or pellet stoves, unless one is the normal heat.',
    deviationEffect: 'professional-review',
    correction: 'Note when it burned and for how long.',
    sources: [MAH('Exh. 2 and 4')],
  },
  {
    id: 'room-machines-off',
    name: 'Ceiling fans, humidifiers and air filters off nearby',
    requirement:
      'Ceiling fans, portable fans, humidifiers, dehumidifiers and portable filters are off within 20 ft (6.1 m) of a detector.',
    notice: 'Within 20 ft (6 m) of a detector leave fans, humidifiers, dehumidifiers and air filters off.',
    deviationEffect: 'professional-review',
    correction: 'Switch it off and note which one, how near and since when.',
    sources: [ILLINOIS_COPY(', closed-building list')],
  },
  {
    id: 'mitigation-running',
    name: 'Mitigation system running',
    requirement: `The system has run for ${limitWords(MITIGATION_BEFORE)} at least before a test of less than 4 days, and runs until the pick-up.`,
    notice: 'Leave the radon mitigation system switched on.',
    deviationEffect: 'not-evaluated',
    correction: `Switch it on and wait ${limitWords(MITIGATION_BEFORE)} before the next start.`,
    sources: MITIGATION_BEFORE.sources,
    onlyWith: 'mitigation-system',
    anyTerm: true,
  },
  {
    id: 'no-severe-weather',
    name: 'No severe weather during the test',
    requirement: `No unusual storm, and no sustained wind of ${WIND_LIMIT.words} or more, during a test of less than ${limitWords(SHORT_TEST)}.`,
    notice: '',
    deviationEffect: 'professional-review',
    correction: 'Note the weather in the log. A new test in calm weather may be the better choice.',
    sources: [MAH('2.2.3'), ...WIND_LIMIT.sources],
    everyHouse: true,
  },
  {
    id: 'not-disturbed',
    name: 'Detectors not moved, covered or opened',
    requirement: 'From the start to the pick-up nobody moves, covers, opens or tampers with a detector.',
    notice: 'Do not move, cover, open or blow on the detectors.',
    deviationEffect: 'not-evaluated',
    correction: 'Record the evidence of tampering in the log of the detector.',
    sources: [
      MAH('Exh. 4'),
      PENNSYLVANIA_RULES('(a)(1)(viii) and (a)(4)(i)'),
      source('primary', '32 Ill. Adm. Code 422.70(g)'),
    ],
    everyHouse: true,
    anyTerm: true,
  },
];
