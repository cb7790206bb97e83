import type { FixtureKind, Mm, RoomUse } from '../plan/model.ts';

/** Stable: files, reports and tests quote them. Not every profile has every rule. */
export const RULE_IDS = [
  'room-use',
  'level',
  'height-band',
  'ceiling',
  'outside-opening',
  'outside-wall',
  'inside-wall',
  'moving-air',
  'running-machine',
  'heat',
  'direct-sun',
  'sump',
  'floor-drain',
  'washer-dryer',
  'object',
  'support',
  'companion',
] as const;
export type RuleId = (typeof RULE_IDS)[number];

/** How a figure was come by: primary text read, secondary page read, from memory, arithmetic, the trade's habit, or what we make of a text that is silent. */
export type SourceMark = 'primary' | 'secondary' | 'memory' | 'computed' | 'common-practice' | 'our-reading';

export interface Source {
  /**
   * Document and clause, e.g. "25 Pa. Code 240.310(a)(1)"; for common practice the words "common practice, no published source", for
   * ours "our reading: " and what we make of it.
   */
  readonly cite: string;
  readonly mark: SourceMark;
  /** What of the rule this source alone speaks for; left out: for all that no other source is named for. */
  readonly of?: readonly SourceScope[];
}

/** A part of a rule with a source of its own: a kind of fixture, a use of a room, inside walls, room and height of a pair. */
export type SourceScope = FixtureKind | RoomUse | 'inside-wall' | 'together';

/** Which levels may be tested: the lowest that counts, or each that counts and touches the ground. */
export type LevelChoice = 'lowest' | 'each-on-the-ground';

/** What a rule is held against. */
export type Subject =
  | { readonly of: 'room'; readonly barred: readonly RoomUse[] }
  | { readonly of: 'level'; readonly choice: LevelChoice }
  | { readonly of: 'height' }
  | { readonly of: 'ceiling' }
  /** Doors and windows to the outside; `inside` names the kinds that count in inside walls as well. */
  | { readonly of: 'opening'; readonly inside: readonly ('door' | 'window')[] }
  | { readonly of: 'outside-wall' }
  | { readonly of: 'inside-wall' }
  /** Fixtures to keep at a distance from, and fixtures whose drawn stream of air is to be kept out of. */
  | { readonly of: 'fixture'; readonly kinds: readonly FixtureKind[]; readonly streams: readonly FixtureKind[] }
  /** Machines that have to be off while the detector lies within the distance: a condition, not a verdict. */
  | { readonly of: 'running'; readonly kinds: readonly FixtureKind[] }
  /** Objects, fixtures of these kinds and other detectors, beside and above; with `walls` the faces of inside walls too. */
  | { readonly of: 'object'; readonly walls: boolean; readonly fixtures: readonly FixtureKind[] }
  /** What carries the detector: a thing drawn under its whole foot, or what its own `support` says. */
  | { readonly of: 'support' }
  | { readonly of: 'sun' }
  | { readonly of: 'companion' };

/** One row of a profile. Data only: `check/` measures, `region/` shades, both from this row. */
export interface Rule {
  readonly id: RuleId;
  /** In plain words, e.g. "Sump pit". */
  readonly name: string;
  /** The whole demand in a sentence, without figures, e.g. "Keep away from the sump pit". */
  readonly says: string;
  readonly subject: Subject;
  /** The limits in mm; null where the text gives none. An override replaces `least`. */
  readonly least: Mm | null;
  readonly most: Mm | null;
  readonly measured: 'plan' | 'space' | 'height' | 'none';
  /**
   * What a person says of a level by naming the rule in its `lookedFor`, e.g. "No sump pit". Null: the rule takes no such answer.
   * What is not drawn and was not looked for is not clear: the rule stands as not run.
   */
  readonly absent: string | null;
  readonly sources: readonly Source[];
}

/** How many locations a profile asks for. */
interface Coverage {
  /** One location for each started portion of this floor area of a level, square mm; null where the text has no figure. */
  readonly area: number | null;
  readonly sources: readonly Source[];
}

export interface Profile {
  readonly id: string;
  readonly name: string;
  /** The document and its edition, and how much of it was read. */
  readonly about: string;
  /** Up to 90 days, or longer. */
  readonly term: 'short' | 'long';
  readonly rules: readonly Rule[];
  readonly coverage: Coverage;
}
