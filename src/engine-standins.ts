/** Stand-ins for engine functions that have not landed. Each is replaced by its namesake from `geometry/index.ts`. */
import type { Level, Plan } from '../geometry/plan/model.ts';

export function emptyLevel(id: string): Level {
  return {
    id,
    name: 'Basement',
    order: 0,
    ceiling: 2286,
    living: 'lived-in',
    ground: 'basement',
    walls: [],
    openings: [],
    rooms: [],
    fixtures: [],
    objects: [],
    detectors: [],
  };
}

export function emptyPlan(): Plan {
  return {
    format: 'stillspot-plan',
    version: 1,
    title: '',
    display: { length: 'feet-inches', radon: 'pCi/L' },
    site: {
      label: '',
      timeZone: 'America/New_York',
      latitude: null,
      longitude: null,
      north: 0,
      purpose: 'own-household',
    },
    protocol: { profile: 'home-short-term', overrides: [] },
    tapeTolerance: 25.4,
    levels: [emptyLevel('L1')],
    kit: { kind: 'charcoal-barrier', minimumHours: 48, maximumHours: 96, labDays: 5 },
    visit: { closedSince: null, mitigationOnSince: null, start: null, end: null },
    conditions: [],
    readings: [],
  };
}
