/** Stand-ins for engine functions that have not landed. Each is replaced by its namesake from `geometry/index.ts`. */
import type { Check, DetectorReport } from '../geometry/check/types.ts';
import type { LevelModel } from '../geometry/level/types.ts';
import type { Detector, Level, Plan, XY } from '../geometry/plan/model.ts';
import type { LevelRegion, NearestSpot, Probe } from '../geometry/region/types.ts';

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

export function buildLevel(level: Level): LevelModel {
  return { level, rooms: [], pieces: [], openings: [], notices: [] };
}

export function checkDetector(_plan: Plan, _model: LevelModel, detector: Detector): DetectorReport {
  return { id: detector.id, verdict: 'unknown', room: null, checks: [] };
}

export function levelRegion(_plan: Plan, _model: LevelModel, probe: Probe): LevelRegion {
  return { probe, rooms: [], zones: [] };
}

export function whyNot(_plan: Plan, _model: LevelModel, _probe: Probe, _at: XY): readonly Check[] {
  return [];
}

export function nearestSpot(_region: LevelRegion, _at: XY): NearestSpot | null {
  return null;
}

export function formatLength(mm: number, unit: 'feet-inches' | 'metric'): string {
  if (unit === 'metric') return `${(mm / 1000).toFixed(2)} m`;
  const eighths = Math.round((mm / 25.4) * 8);
  const feet = Math.floor(eighths / 96);
  const inches = (eighths - feet * 96) / 8;
  if (feet === 0) return `${inches} in`;
  return inches === 0 ? `${feet} ft` : `${feet} ft ${inches} in`;
}

export function parseLength(
  text: string,
  unit: 'feet-inches' | 'metric',
): { ok: true; mm: number; echo: string } | { ok: false; message: string } {
  const value = Number(text);
  if (!Number.isFinite(value)) return { ok: false, message: `"${text}" is not a length.` };
  const mm = unit === 'metric' ? value * 1000 : value * 304.8;
  return { ok: true, mm, echo: formatLength(mm, unit) };
}
