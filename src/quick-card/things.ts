import type { FixtureKind, Ground, Living } from '../../geometry/plan/model.ts';
import type { RuleId } from '../../geometry/rules/types.ts';
import { GROUP_IDS, type GroupId, type LevelAnswer, type ThingKind } from './answers.ts';

/** The questions about a room in words, and what each answer adds to a plan. Data only. */

export interface ThingRow {
  readonly group: GroupId;
  readonly words: string;
  /** A short name, for a square of the picture and for the sketch. */
  readonly name: string;
  /** Null for an opening of a wall. */
  readonly fixture: FixtureKind | null;
}

export const THINGS: Readonly<Record<ThingKind, ThingRow>> = {
  window: { group: 'outside-opening', words: 'Window', name: 'Window', fixture: null },
  'outside-door': { group: 'outside-opening', words: 'Exterior door', name: 'Door', fixture: null },
  vent: { group: 'moving-air', words: 'Vent or grille', name: 'Vent', fixture: 'supply-register' },
  fan: { group: 'moving-air', words: 'Fan, dehumidifier, air cleaner', name: 'Fan', fixture: 'portable-fan' },
  heater: { group: 'heat', words: 'Furnace, water heater, stove, radiator', name: 'Heater', fixture: 'furnace' },
  sump: { group: 'sump', words: 'Sump pit', name: 'Sump pit', fixture: 'sump-pit' },
  drain: { group: 'floor-drain', words: 'Floor drain', name: 'Floor drain', fixture: 'floor-drain' },
  washer: { group: 'washer-dryer', words: 'Washer or dryer', name: 'Washer', fixture: 'washer' },
};

export interface GroupRow {
  readonly asks: string;
  /** For the middle of a sentence, all of them: "every window and outside door". */
  readonly every: string;
  /** For a list of things that are absent: "windows and outside doors". */
  readonly words: string;
  /** The rule of `lookedFor` that records "none on this floor"; null if the plan file has no such record. */
  readonly rule: RuleId | null;
}

export const GROUPS: Readonly<Record<GroupId, GroupRow>> = {
  'outside-opening': {
    asks: 'Windows and exterior doors',
    every: 'every exterior window and door',
    words: 'exterior windows or doors',
    rule: 'outside-opening',
  },
  'moving-air': {
    asks: 'What moves air',
    every: 'every vent and fan',
    words: 'vents or fans',
    rule: 'moving-air',
  },
  heat: { asks: 'What heats', every: 'heat sources', words: 'heaters', rule: 'heat' },
  sump: { asks: 'Sump pit', every: 'the sump pit', words: 'sump pit', rule: 'sump' },
  'floor-drain': { asks: 'Floor drain', every: 'the floor drain', words: 'floor drain', rule: 'floor-drain' },
  'washer-dryer': {
    asks: 'Washer and dryer',
    every: 'the washer and the dryer',
    words: 'washer or dryer',
    rule: null,
  },
};

/** What each rule with a distance keeps away from, for the middle of a sentence. */
export const EVERY: Readonly<Partial<Record<RuleId, string>>> = {
  ...Object.fromEntries(GROUP_IDS.map((group) => [group, GROUPS[group].every])),
  'moving-air': `${GROUPS['moving-air'].every}, and out of their airflow`,
  'outside-wall': 'every exterior wall',
  object: 'everything that stands around it, and the other walls',
};

interface StoryOfLevel {
  readonly name: string;
  readonly ground: Ground;
  readonly living: Living;
}

export interface LevelRow {
  readonly words: string;
  readonly level: StoryOfLevel;
  /** The floor below; null if the answer has none. */
  readonly below: StoryOfLevel | null;
}

export const LEVELS: Readonly<Record<LevelAnswer, LevelRow>> = {
  basement: {
    words: 'Basement that we live in',
    level: { name: 'Basement', ground: 'basement', living: 'lived-in' },
    below: null,
  },
  slab: {
    words: 'Ground floor, concrete slab below',
    level: { name: 'Ground floor', ground: 'slab', living: 'lived-in' },
    below: null,
  },
  crawlspace: {
    words: 'Ground floor, crawl space below',
    level: { name: 'Ground floor', ground: 'crawlspace', living: 'lived-in' },
    below: null,
  },
  'over-basement': {
    words: 'Ground floor, nobody lives in the basement',
    level: { name: 'Ground floor', ground: 'none', living: 'lived-in' },
    below: { name: 'Basement', ground: 'basement', living: 'could-be' },
  },
  'unused-basement': {
    words: 'Basement that nobody lives in',
    level: { name: 'Basement', ground: 'basement', living: 'could-be' },
    below: null,
  },
  upper: {
    words: 'A floor above one that we live on',
    level: { name: 'Upper floor', ground: 'none', living: 'lived-in' },
    below: { name: 'Ground floor', ground: 'slab', living: 'lived-in' },
  },
};
