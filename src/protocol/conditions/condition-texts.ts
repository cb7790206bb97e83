import type { Source } from '../../../geometry/rules/types.ts';
import { ILLINOIS_COPY, MAH, MALB, PENNSYLVANIA_RULES, source } from '../sources.ts';
import { limitWords, MITIGATION_BEFORE, SHORT_TEST, WIND_LIMIT } from '../timing/limits.ts';
import type { ConditionItem } from './condition-row.ts';

/** Published requirements of the checklist, for the panel and the documents; in a separate file from the checks, so that it can load later. */

export interface ConditionTexts {
  /** What published texts require, paraphrased. */
  readonly requirement: string;
  /** The requirement as addressed to the occupants; empty where it concerns the technician alone. */
  readonly notice: string;
  readonly sources: readonly Source[];
  /** Another published text that differs; left out if none is known. */
  readonly conflict?: string;
}

const EPA_HOMES = source('secondary', 'EPA 402-R-92-003, 2.3.2 (copy of the text)');

const TEXTS: Readonly<Record<string, ConditionTexts>> = {
  'windows-closed': {
    requirement: 'Every window stays closed on all levels, including those that are not tested.',
    notice: 'Keep every window closed on every level.',
    sources: [MAH('Exh. 2'), MALB('4-A')],
  },
  'doors-closed': {
    requirement:
      'Exterior doors stay closed except for normal entry and exit. None stays open for more than a few minutes.',
    notice: 'Keep exterior doors closed. Come and go as usual, and close the door behind you.',
    sources: [MAH('Exh. 2'), EPA_HOMES],
  },
  'whole-house-fan-off': {
    requirement: 'Whole-house fans and window fans do not run. Illinois requires window fans to be removed or sealed.',
    notice: 'Leave the whole-house fan and all window fans off.',
    sources: [MAH('Exh. 4'), ILLINOIS_COPY(', closed-building list')],
  },
  'outdoor-air-lowest': {
    requirement:
      'An economizer, or other ventilation that brings outdoor air for comfort, is at the lowest setting of any season.',
    notice: 'Set ventilation that brings in outdoor air to its lowest setting.',
    sources: [MAH('Exh. 2 and 4')],
  },
  'air-handler-not-continuous': {
    requirement:
      'The fan of the air handler follows the thermostat. It runs without stopping only where it is labeled as radon control.',
    notice: 'Set the fan switch of heating and cooling to "auto", not to "on".',
    sources: [ILLINOIS_COPY(', closed-building list')],
  },
  'exhausts-moderate': {
    requirement: 'Exhaust devices run no more than daily use requires. Short use is fine.',
    notice: 'Use the clothes dryer, range hood and bath fans briefly, no more than you need.',
    sources: [MAH('Exh. 2'), MALB('4-A'), EPA_HOMES],
    conflict:
      'ANSI/AARST MALB-2014 with 1/21 revisions, 4-A, has bath fans operate normally; MAH-2019, Exh. 2, allows no excessive use of exhaust devices. The second is the strict reading.',
  },
  'window-air-conditioner-recirculating': {
    requirement:
      'A window air conditioner only recirculates the air of the room, and is off within 20 ft (6.1 m) of a detector.',
    notice: 'Set window air conditioners to recirculate. Within 20 ft (6 m) of a detector leave them off.',
    sources: [ILLINOIS_COPY(', closed-building list')],
  },
  'combustion-air-open': {
    requirement:
      'Openings that feed a furnace, boiler or water heater, or replace exhausted air, are not closed for the test.',
    notice: 'Never block openings that bring air to a furnace, boiler or water heater.',
    sources: [MALB('4.2.1'), EPA_HOMES],
  },
  'heat-recovery-as-usual': {
    requirement: 'A permanently installed one may run as usual. It is not turned up or off for the test.',
    notice: 'A built-in heat or energy recovery ventilator may run as it always does.',
    sources: [EPA_HOMES, ILLINOIS_COPY(', closed-building list')],
  },
  'attic-fan-as-usual': {
    requirement: 'A fan that ventilates only the attic may keep running.',
    notice: 'A fan that ventilates only the attic may keep running.',
    sources: [EPA_HOMES],
  },
  'heating-cooling-normal': {
    requirement:
      'The house is kept as when occupied, 65 to 80 °F (18 to 27 °C), empty or not. Central cooling may run.',
    notice: 'Keep the house between 65 and 80 °F (18 and 27 °C), with heating and cooling as usual.',
    sources: [MAH('Exh. 2 and 4'), MALB('4-A'), EPA_HOMES, ILLINOIS_COPY(', closed-building list')],
  },
  'fireplaces-off': {
    requirement: 'No fire in a fireplace or stove, wood, gas or oil, unless it is the normal heat of the house.',
    notice: 'Do not use fireplaces, wood stoves or pellet stoves, unless one is the normal heat.',
    sources: [MAH('Exh. 2 and 4')],
  },
  'room-machines-off': {
    requirement:
      'Ceiling fans, portable fans, humidifiers, dehumidifiers and portable filters are off within 20 ft (6.1 m) of a detector.',
    notice: 'Within 20 ft (6 m) of a detector leave fans, humidifiers, dehumidifiers and air filters off.',
    sources: [ILLINOIS_COPY(', closed-building list')],
  },
  'mitigation-running': {
    requirement: `The system has run for ${limitWords(MITIGATION_BEFORE)} at least before a test of less than 4 days, and runs until the pick-up.`,
    notice: 'Leave the radon mitigation system switched on.',
    sources: MITIGATION_BEFORE.sources,
  },
  'no-severe-weather': {
    requirement: `No unusual storm, and no sustained wind of ${WIND_LIMIT.words} or more, during a test of less than ${limitWords(SHORT_TEST)}.`,
    notice: '',
    sources: [MAH('2.2.3'), ...WIND_LIMIT.sources],
  },
  'not-disturbed': {
    requirement: 'From the start to the pick-up nobody moves, covers, opens or tampers with a detector.',
    notice: 'Do not move, cover, open or blow on the detectors.',
    sources: [
      MAH('Exh. 4'),
      PENNSYLVANIA_RULES('(a)(1)(viii) and (a)(4)(i)'),
      source('primary', '32 Ill. Adm. Code 422.70(g)'),
    ],
  },
};

/** Texts for an answer in the file whose item is not on the checklist. */
const UNLISTED: ConditionTexts = {
  requirement: 'This comes from the file and is not on this list.',
  notice: '',
  sources: [],
};

/** Returns the published requirement of an item, with its sources. */
export const conditionTexts = ({ id }: Pick<ConditionItem, 'id'>): ConditionTexts =>
  Object.hasOwn(TEXTS, id) ? (TEXTS[id] ?? UNLISTED) : UNLISTED;
