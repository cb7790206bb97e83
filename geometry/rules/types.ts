import type { FixtureKind, Mm } from '../plan/model.ts';

/** Stable: files, reports and tests quote them. */
export const RULE_IDS = [
  'room-use',
  'level',
  'height-band',
  'ceiling',
  'outside-opening',
  'outside-wall',
  'moving-air',
  'heat',
  'direct-sun',
  'sump',
  'floor-drain',
  'object',
  'companion',
] as const;
export type RuleId = (typeof RULE_IDS)[number];

/** How a figure was come by: primary text read, secondary page read, from memory, arithmetic, or the trade's habit. */
export type SourceMark = 'primary' | 'secondary' | 'memory' | 'computed' | 'common-practice';

export interface Source {
  /** Document and clause, e.g. "25 Pa. Code 240.310(a)(1)"; for common practice the words "common practice, no published source". */
  readonly cite: string;
  readonly mark: SourceMark;
}

/** What a rule is held against. */
export type Subject =
  | { readonly of: 'room' }
  | { readonly of: 'level' }
  | { readonly of: 'height' }
  | { readonly of: 'ceiling' }
  | { readonly of: 'opening' }
  | { readonly of: 'outside-wall' }
  | { readonly of: 'fixture'; readonly kinds: readonly FixtureKind[]; readonly stream: boolean }
  | { readonly of: 'object' }
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
  /** The limits in mm; null where the rule has none. An override replaces `least`. */
  readonly least: Mm | null;
  readonly most: Mm | null;
  readonly measured: 'plan' | 'space' | 'height' | 'none';
  readonly sources: readonly Source[];
}

export interface Profile {
  readonly id: string;
  readonly name: string;
  readonly rules: readonly Rule[];
}
