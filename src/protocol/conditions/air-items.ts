import { ILLINOIS_COPY, MAH, MALB, source } from '../sources.ts';
import type { ConditionItem } from './condition-row.ts';

const EPA_HOMES = source('secondary', 'EPA 402-R-92-003, 2.3.2 (copy of the text)');

/** Closed-building conditions about ventilation and exhaust. */
export const AIR_ITEMS: readonly ConditionItem[] = [
  {
    id: 'windows-closed',
    name: 'Windows closed on every level',
    requirement: 'Every window stays closed on all levels, including those that are not tested.',
    notice: 'Keep every window closed on every level.',
    deviationEffect: 'not-evaluated',
    correction: 'Close the windows; the closed hours begin again from then.',
    sources: [MAH('Exh. 2'), MALB('4-A')],
    everyHouse: true,
  },
  {
    id: 'doors-closed',
    name: 'Exterior doors closed',
    requirement:
      'Exterior doors stay closed except for normal entry and exit. None stays open for more than a few minutes.',
    notice: 'Keep exterior doors closed. Come and go as usual, and close the door behind you.',
    deviationEffect: 'not-evaluated',
    correction: 'Close the doors; the closed hours begin again from then.',
    sources: [MAH('Exh. 2'), EPA_HOMES],
    everyHouse: true,
  },
  {
    id: 'whole-house-fan-off',
    name: 'Whole-house and window fans off',
    requirement: 'Whole-house fans and window fans do not run. Illinois requires window fans to be removed or sealed.',
    notice: 'Leave the whole-house fan and all window fans off.',
    deviationEffect: 'not-evaluated',
    correction: 'Switch them off; the closed hours begin again from then.',
    sources: [MAH('Exh. 4'), ILLINOIS_COPY(', closed-building list')],
  },
  {
    id: 'outdoor-air-lowest',
    name: 'Outdoor air at its lowest setting',
    requirement:
      'An economizer, or other ventilation that brings outdoor air for comfort, is at the lowest setting of any season.',
    notice: 'Set ventilation that brings in outdoor air to its lowest setting.',
    deviationEffect: 'professional-review',
    correction: 'Set it to the lowest setting and note since when.',
    sources: [MAH('Exh. 2 and 4')],
  },
  {
    id: 'air-handler-not-continuous',
    name: 'Air handler not on continuous fan',
    requirement:
      'The fan of the air handler follows the thermostat. It runs without stopping only where it is labeled as radon control.',
    notice: 'Set the fan switch of heating and cooling to "auto", not to "on".',
    deviationEffect: 'professional-review',
    correction: 'Set it to automatic and note since when.',
    sources: [ILLINOIS_COPY(', closed-building list')],
  },
  {
    id: 'exhausts-moderate',
    name: 'Dryer, range hood and bath fans not overused',
    requirement: 'Exhaust devices run no more than daily use requires. Short use is fine.',
    notice: 'Use the clothes dryer, range hood and bath fans briefly, no more than you need.',
    deviationEffect: 'professional-review',
    correction: 'Note which one ran and for how long.',
    sources: [MAH('Exh. 2'), MALB('4-A'), EPA_HOMES],
    conflict:
      'ANSI/AARST MALB-2014 with 1/21 revisions, 4-A, has bath fans operate normally; MAH-2019, Exh. 2, allows no excessive use of exhaust devices. The second is the strict reading.',
  },
  {
    id: 'window-air-conditioner-recirculating',
    name: 'Window air conditioners recirculating',
    requirement:
      'A window air conditioner only recirculates the air of the room, and is off within 20 ft (6.1 m) of a detector.',
    notice: 'Set window air conditioners to recirculate. Within 20 ft (6 m) of a detector leave them off.',
    deviationEffect: 'professional-review',
    correction: 'Close its vent or switch it off, and note since when.',
    sources: [ILLINOIS_COPY(', closed-building list')],
  },
  {
    id: 'combustion-air-open',
    name: 'Combustion and make-up air openings left open',
    requirement:
      'Openings that feed a furnace, boiler or water heater, or replace exhausted air, are not closed for the test.',
    notice: 'Never block openings that bring air to a furnace, boiler or water heater.',
    deviationEffect: 'professional-review',
    correction: 'Open it at once: a burner that lacks air makes poisonous gas. Note how long it was closed.',
    sources: [MALB('4.2.1'), EPA_HOMES],
  },
  {
    id: 'heat-recovery-as-usual',
    name: 'Heat or energy recovery ventilator as usual',
    requirement: 'A permanently installed one may run as usual. It is not turned up or off for the test.',
    notice: 'A built-in heat or energy recovery ventilator may run as it always does.',
    deviationEffect: 'professional-review',
    correction: 'Set it as usual again and note since when.',
    sources: [EPA_HOMES, ILLINOIS_COPY(', closed-building list')],
  },
  {
    id: 'attic-fan-as-usual',
    name: 'Attic fans as usual',
    requirement: 'A fan that ventilates only the attic may keep running.',
    notice: 'A fan that ventilates only the attic may keep running.',
    deviationEffect: 'professional-review',
    correction: 'If it draws air from the rooms it is a whole-house fan: answer there.',
    sources: [EPA_HOMES],
  },
];
