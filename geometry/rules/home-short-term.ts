import type { Mm } from '../plan/model.ts';
import type { Profile, Source } from './types.ts';

/** Inches as millimetres, without the dust of binary fractions. */
const inches = (count: number): Mm => Math.round(count * 254) / 10;

const PA_SPOT: Source = { cite: '25 Pa. Code 240.310(a)(1)', mark: 'primary' };
const PA_HEAT: Source = { cite: '25 Pa. Code 240.310(a)(1)(vi)', mark: 'primary' };
const PA_ROOM: Source = { cite: '25 Pa. Code 240.310(a)(2)', mark: 'primary' };
const IL_SPOT: Source = { cite: '32 Ill. Adm. Code 422.130(a)(1)(D)-(F)', mark: 'primary' };
const HABIT: Source = { cite: 'common practice, no published source', mark: 'common-practice' };

/**
 * Short-term test of a home with passive detectors. The distances are those of 25 Pa. Code 240.310 (2018, read in full for
 * placement), which 32 Ill. Adm. Code 422.130 shares where both have a figure; the floor drain is the trade's habit.
 * Data only: this one table drives verdicts, shading, panels, sheets and the documentation.
 */
export const HOME_SHORT_TERM: Profile = {
  id: 'home-short-term',
  name: 'Home, short-term test',
  rules: [
    {
      id: 'room-use',
      name: 'Room',
      says: 'A room that people use, and not a damp, closed-off or passage room',
      subject: { of: 'room' },
      least: null,
      most: null,
      measured: 'none',
      sources: [PA_ROOM, IL_SPOT],
    },
    {
      id: 'level',
      name: 'Level',
      says: 'The lowest level that is lived in, or in a sale could be',
      subject: { of: 'level' },
      least: null,
      most: null,
      measured: 'none',
      sources: [
        { cite: 'ANSI/AARST MAH-2019 3.1.1, 3.1.2', mark: 'primary' },
        { cite: '25 Pa. Code 240.310(a)(3)', mark: 'primary' },
      ],
    },
    {
      id: 'height-band',
      name: 'Height above the floor',
      says: 'In the breathing zone, above the floor and below head height',
      subject: { of: 'height' },
      least: inches(20),
      most: inches(72),
      measured: 'height',
      sources: [PA_SPOT, IL_SPOT],
    },
    {
      id: 'ceiling',
      name: 'Ceiling',
      says: 'Below the ceiling',
      subject: { of: 'ceiling' },
      least: inches(12),
      most: null,
      measured: 'height',
      sources: [PA_SPOT],
    },
    {
      id: 'outside-opening',
      name: 'Outside doors and windows',
      says: 'Away from doors and windows to the outside',
      subject: { of: 'opening' },
      least: inches(36),
      most: null,
      measured: 'plan',
      sources: [PA_SPOT, IL_SPOT],
    },
    {
      id: 'outside-wall',
      name: 'Outside walls',
      says: 'Away from the outside walls',
      subject: { of: 'outside-wall' },
      least: inches(12),
      most: null,
      measured: 'plan',
      sources: [PA_SPOT, IL_SPOT],
    },
    {
      id: 'moving-air',
      name: 'Moving air',
      says: 'Away from registers, grilles, fans and air machines, and out of their stream',
      subject: {
        of: 'fixture',
        kinds: [
          'supply-register',
          'return-grille',
          'exhaust-fan',
          'ceiling-fan',
          'portable-fan',
          'window-air-conditioner',
          'air-cleaner',
          'dehumidifier',
          'humidifier',
        ],
        stream: true,
      },
      least: inches(36),
      most: null,
      measured: 'plan',
      sources: [PA_SPOT, IL_SPOT],
    },
    {
      id: 'heat',
      name: 'Heat',
      says: 'Away from whatever heats',
      subject: {
        of: 'fixture',
        kinds: ['furnace', 'boiler', 'water-heater', 'fireplace', 'wood-stove', 'radiator', 'space-heater'],
        stream: false,
      },
      least: inches(48),
      most: null,
      measured: 'plan',
      sources: [PA_HEAT, IL_SPOT],
    },
    {
      id: 'direct-sun',
      name: 'Direct sun',
      says: 'Away from where direct sun falls during the test',
      subject: { of: 'sun' },
      least: inches(48),
      most: null,
      measured: 'plan',
      sources: [PA_HEAT],
    },
    {
      id: 'sump',
      name: 'Sump pit',
      says: 'Away from the sump pit',
      subject: { of: 'fixture', kinds: ['sump-pit'], stream: false },
      least: inches(84),
      most: null,
      measured: 'plan',
      sources: [PA_SPOT, IL_SPOT],
    },
    {
      id: 'floor-drain',
      name: 'Floor drain',
      says: 'Away from the floor drain',
      subject: { of: 'fixture', kinds: ['floor-drain'], stream: false },
      least: inches(36),
      most: null,
      measured: 'plan',
      sources: [HABIT],
    },
    {
      id: 'object',
      name: 'Objects and inside walls',
      says: 'Clear of objects beside and above, and of inside walls',
      subject: { of: 'object' },
      least: inches(4),
      most: null,
      measured: 'space',
      sources: [PA_SPOT, IL_SPOT],
    },
    {
      id: 'companion',
      name: 'Side by side',
      says: 'The detectors of a pair side by side, neither touching nor apart',
      subject: { of: 'companion' },
      least: inches(4),
      most: inches(8),
      measured: 'plan',
      sources: [
        { cite: 'Minnesota licensing practice (2019), as reported', mark: 'secondary' },
        { cite: 'ANSI/AARST MAH-2019 8.5.2(d), more than 8 in apart is another location', mark: 'primary' },
      ],
    },
  ],
};
