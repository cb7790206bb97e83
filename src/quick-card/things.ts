import type { FixtureKind, Ground, Living } from '../../geometry/plan/model.ts';
import type { RuleId } from '../../geometry/rules/types.ts';
import type { GroupId, LevelAnswer, ThingKind } from './answers.ts';

/** What is asked about a room, in words, and what each answer is in a plan. Data only. */

export interface ThingRow {
  readonly group: GroupId;
  readonly words: string;
  /** For the picture: at most four letters. */
  readonly mark: string;
  /** Null: an opening of a wall. */
  readonly fixture: FixtureKind | null;
}

export const THINGS: Readonly<Record<ThingKind, ThingRow>> = {
  window: { group: 'outside-opening', words: 'Window', mark: 'Win', fixture: null },
  'outside-door': { group: 'outside-opening', words: 'Door to the outside', mark: 'Door', fixture: null },
  vent: { group: 'moving-air', words: 'Vent or grille', mark: 'Vent', fixture: 'supply-register' },
  fan: { group: 'moving-air', words: 'Fan, dehumidifier, air cleaner', mark: 'Fan', fixture: 'portable-fan' },
  heater: { group: 'heat', words: 'Furnace, water heater, stove, radiator', mark: 'Heat', fixture: 'furnace' },
  sump: { group: 'sump', words: 'Sump pit', mark: 'Sump', fixture: 'sump-pit' },
  drain: { group: 'floor-drain', words: 'Floor drain', mark: 'Drn', fixture: 'floor-drain' },
  washer: { group: 'washer-dryer', words: 'Washer or dryer', mark: 'Wash', fixture: 'washer' },
};

export interface GroupRow {
  /** For the middle of a sentence. */
  readonly words: string;
  readonly asks: string;
  /** The rule of `lookedFor` that records "none on this floor"; null: the plan file has no such record. */
  readonly rule: RuleId | null;
}

export const GROUPS: Readonly<Record<GroupId, GroupRow>> = {
  'outside-opening': { words: 'windows and outside doors', asks: 'Windows and outside doors', rule: 'outside-opening' },
  'moving-air': { words: 'vents and fans', asks: 'What moves air', rule: 'moving-air' },
  heat: { words: 'heaters', asks: 'What heats', rule: 'heat' },
  sump: { words: 'sump pit', asks: 'Sump pit (a hole in the floor with a pump)', rule: 'sump' },
  'floor-drain': { words: 'floor drain', asks: 'Floor drain', rule: 'floor-drain' },
  'washer-dryer': { words: 'washer and dryer', asks: 'Washer and dryer', rule: null },
};

interface StoryOfLevel {
  readonly name: string;
  readonly ground: Ground;
  readonly living: Living;
}

export interface LevelRow {
  readonly words: string;
  readonly level: StoryOfLevel;
  /** The floor below, where the answer tells of one. */
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
