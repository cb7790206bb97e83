import type { ConditionItem } from './condition-row.ts';

/** Closed-building conditions about ventilation and exhaust. */
export const AIR_ITEMS: readonly ConditionItem[] = [
  {
    id: 'windows-closed',
    name: 'Windows closed on every level',
    deviationEffect: 'not-evaluated',
    correction: 'Close the windows; the closed hours begin again from then.',
    everyHouse: true,
  },
  {
    id: 'doors-closed',
    name: 'Exterior doors closed',
    deviationEffect: 'not-evaluated',
    correction: 'Close the doors; the closed hours begin again from then.',
    everyHouse: true,
  },
  {
    id: 'whole-house-fan-off',
    name: 'Whole-house and window fans off',
    deviationEffect: 'not-evaluated',
    correction: 'Switch them off; the closed hours begin again from then.',
  },
  {
    id: 'outdoor-air-lowest',
    name: 'Outdoor air at its lowest setting',
    deviationEffect: 'professional-review',
    correction: 'Set it to the lowest setting and note since when.',
  },
  {
    id: 'air-handler-not-continuous',
    name: 'Air handler not on continuous fan',
    deviationEffect: 'professional-review',
    correction: 'Set it to automatic and note since when.',
    shownBy: ['supply-register', 'return-grille'],
  },
  {
    id: 'exhausts-moderate',
    name: 'Dryer, range hood and bath fans not overused',
    deviationEffect: 'professional-review',
    correction: 'Note which one ran and for how long.',
    shownBy: ['exhaust-fan', 'dryer'],
  },
  {
    id: 'window-air-conditioner-recirculating',
    name: 'Window air conditioners recirculating',
    deviationEffect: 'professional-review',
    correction: 'Close its vent or switch it off, and note since when.',
    shownBy: ['window-air-conditioner'],
  },
  {
    id: 'combustion-air-open',
    name: 'Combustion and make-up air openings left open',
    deviationEffect: 'professional-review',
    correction: 'Open it at once: a burner that lacks air makes poisonous gas. Note how long it was closed.',
  },
  {
    id: 'heat-recovery-as-usual',
    name: 'Heat or energy recovery ventilator as usual',
    deviationEffect: 'professional-review',
    correction: 'Set it as usual again and note since when.',
  },
  {
    id: 'attic-fan-as-usual',
    name: 'Attic fans as usual',
    deviationEffect: 'professional-review',
    correction: 'If it draws air from the rooms it is a whole-house fan: answer there.',
  },
];
