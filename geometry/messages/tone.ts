import { openChecks } from '../check/looked-for.ts';
import type { DetectorReport, Verdict } from '../check/types.ts';
import type { Plan } from '../plan/model.ts';
import { listed, lowerFirst } from '../plan/nouns.ts';
import { type EffectiveRule, ruleOf } from '../rules/profiles.ts';
import { headlineOf } from './headline.ts';

/** A verdict for display: clear is divided into clear with every check run, and clear of what is drawn. */
export type Tone = Verdict | 'clear-of-drawn';

/** From worst to best. */
export const TONES: readonly Tone[] = ['blocked', 'unknown', 'tight', 'clear-of-drawn', 'clear'];

export const TONE_WORD: Readonly<Record<Tone, string>> = {
  blocked: 'blocked',
  unknown: 'unknown',
  tight: 'tight',
  clear: 'clear',
  'clear-of-drawn': 'clear of what is drawn',
};

/** Returns the tone of a report: its verdict; if it is clear and something was not run, only clear of what is drawn. */
export function toneOf(report: DetectorReport): Tone {
  const { verdict } = report;
  return verdict === 'clear' && openChecks(report).length > 0 ? 'clear-of-drawn' : verdict;
}

/**
 * Returns the headline for the middle of a sentence or after a label: "clear", "clear of what is drawn", "tight to what
 * is drawn".
 */
export function headlineText(report: DetectorReport): string {
  return lowerFirst(headlineOf(report).word);
}

/** The rules that a report leaves open: those whose subjects nobody looked for, and all others that were not run. */
export function openRules(report: DetectorReport, { protocol }: Pick<Plan, 'protocol'>): OpenRules {
  const open = openChecks(report);
  const ids = new Set(open.map(({ rule }) => rule));
  const drawn = new Set(open.flatMap(({ rule, subject }) => (subject === null ? [] : [rule])));
  const rules = [...ids].map((id) => ruleOf(protocol, id));
  // The sun is confirmed for one spot and not looked for on a walk through the house; drawn subjects need no looking for either.
  const isLookedFor = ({ id, absent, subject }: EffectiveRule) =>
    absent !== null && subject.of !== 'sun' && !drawn.has(id);
  return { looks: rules.filter(isLookedFor), others: rules.filter((rule) => !isLookedFor(rule)) };
}

export interface OpenRules {
  readonly looks: readonly EffectiveRule[];
  readonly others: readonly EffectiveRule[];
}

/**
 * Returns what a report leaves open, in sentences: "Not looked for: heat and sump pit. Not run: direct sun."; "" for
 * nothing.
 */
export function describeOpenRules(report: DetectorReport, plan: Pick<Plan, 'protocol'>): string {
  const { looks, others } = openRules(report, plan);
  const named = (rules: readonly EffectiveRule[]) => listed(rules.map(({ name }) => name.toLowerCase()));
  const parts = [
    looks.length > 0 ? `Not looked for: ${named(looks)}.` : '',
    others.length > 0 ? `Not run: ${named(others)}.` : '',
  ];
  return parts.filter(Boolean).join(' ');
}

/** Returns the worst tone of the reports; null for none. */
export function worstTone(reports: readonly DetectorReport[]): Tone | null {
  const tones = new Set(reports.map(toneOf));
  return TONES.find((tone) => tones.has(tone)) ?? null;
}
