import type { FixtureKind, Mm, RoomUse } from '../plan/model.ts';

/** Stable ids: files, reports and tests refer to them. A profile need not have every rule. */
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

/**
 * Where a figure comes from: primary text, secondary page, memory, arithmetic, common practice, or our interpretation
 * of a silent text.
 */
export type SourceMark = 'primary' | 'secondary' | 'memory' | 'computed' | 'common-practice' | 'our-reading';

export interface Source {
  /**
   * Document and clause, e.g. "25 Pa. Code 240.310(a)(1)"; "common practice, no published source"; or
   * "our reading: " and the interpretation.
   */
  readonly cite: string;
  readonly mark: SourceMark;
  /** The parts of the rule that only this source supports. Omitted: every part that no other source names. */
  readonly of?: readonly SourceScope[];
}

/**
 * A part of a rule with its own source: a kind of fixture, a use of a room, inside walls, or same room and height of a
 * pair.
 */
export type SourceScope = FixtureKind | RoomUse | 'inside-wall' | 'together';

/**
 * Which levels may be tested: the lowest that is lived in, or in a property transfer could be; the lowest that is lived in, whatever the
 * purpose; or each level that is or could be lived in and touches the ground.
 */
export type LevelChoice = 'lowest' | 'lowest-lived-in' | 'each-on-the-ground';

/** What a rule measures or examines. */
export type RuleSubject =
  | { readonly of: 'room'; readonly barred: readonly RoomUse[] }
  | { readonly of: 'level'; readonly choice: LevelChoice }
  | { readonly of: 'height' }
  | { readonly of: 'ceiling' }
  /** Doors and windows to the outside; `inside` names the kinds that count in inside walls as well. */
  | { readonly of: 'opening'; readonly inside: readonly ('door' | 'window')[] }
  | { readonly of: 'outside-wall' }
  | { readonly of: 'inside-wall' }
  /**
   * Fixtures to keep a distance from, and fixtures whose air stream must be avoided. If any of the latter are named, the drawn air stream of
   * every other fixture must be avoided as well.
   */
  | { readonly of: 'fixture'; readonly kinds: readonly FixtureKind[]; readonly streams: readonly FixtureKind[] }
  /** Machines that must be off while a detector is within the distance: a condition of the test, not a verdict. */
  | { readonly of: 'running'; readonly kinds: readonly FixtureKind[] }
  /**
   * Objects, fixtures of these kinds and other detectors, beside and above; with `walls` also the faces of inside
   * walls.
   */
  | { readonly of: 'object'; readonly walls: boolean; readonly fixtures: readonly FixtureKind[] }
  /** What supports the detector: an item drawn under its whole footprint, or its own `support`. */
  | { readonly of: 'support' }
  | { readonly of: 'sun' }
  | { readonly of: 'companion' };

/** A row of a profile. Data only: `check/` measures and `region/` shades from the same row. */
export interface Rule {
  readonly id: RuleId;
  /** Short name, e.g. "Sump pit". */
  readonly name: string;
  /** The requirement in one sentence, without figures, e.g. "Keep away from the sump pit". */
  readonly says: string;
  readonly subject: RuleSubject;
  /** The limits, mm; null where the text gives none. An override replaces `least`. */
  readonly least: Mm | null;
  readonly most: Mm | null;
  readonly measured: 'plan' | 'space' | 'height' | 'none';
  /**
   * The statement that a person makes about a level by naming the rule in its `lookedFor`, e.g. "No sump pit". Null:
   * the rule takes no such statement. When no subject is drawn and nobody looked for one, the rule is reported as not
   * run, never as clear.
   */
  readonly absent: string | null;
  readonly sources: readonly Source[];
}

/** How many test locations a profile requires. */
interface Coverage {
  /** One location per started portion of this floor area of a level, mm²; null where the text gives no figure. */
  readonly area: number | null;
  readonly sources: readonly Source[];
}

export interface Profile {
  readonly id: string;
  readonly name: string;
  /** The document and its edition, and which part was read. */
  readonly about: string;
  /** Short-term: up to 90 days. */
  readonly term: 'short' | 'long';
  readonly rules: readonly Rule[];
  readonly coverage: Coverage;
}
