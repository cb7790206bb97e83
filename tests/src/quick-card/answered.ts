import { type CardAnswers, NO_ANSWERS } from '../../../src/quick-card/answers.ts';

export const FOOT = 304.8;
export const NOW = Date.parse('2026-11-28T16:00:00-05:00');

/** A family room in a basement, everything answered: 16 ft by 20 ft, a window in the far wall, a heater behind the right wall. */
export const ANSWERED: CardAnswers = {
  ...NO_ANSWERS,
  leaflet: { ...NO_ANSWERS.leaflet, minimumHours: 48, maximumHours: 96, labDays: 5 },
  level: 'basement',
  use: 'family-room',
  across: 16 * FOOT,
  along: 20 * FOOT,
  inside: ['right', 'down'],
  things: [
    { kind: 'window', square: '1,-1' },
    { kind: 'heater', square: '5,2' },
  ],
  none: ['moving-air', 'sump', 'floor-drain', 'washer-dryer'],
  support: { kind: 'table', top: 762 },
  closing: '2026-11-28T20:00:00-05:00',
  company: false,
};
