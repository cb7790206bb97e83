import { ITEM_KINDS, type ItemKind, itemsOf } from '../plan/kinds.ts';
import type { Level } from '../plan/model.ts';
import { emptyPlan } from './empty.ts';
import { parsePlan } from './parse.ts';
import { quoted } from './problem.ts';
import { isRecord } from './schema/walk.ts';

/**
 * Marks copied items among other text on the clipboard. The version is raised when an older version could misread them.
 */
const FORMAT = 'stillspot-things';
const VERSION = 1;

export type ReadClip =
  | { readonly ok: true; readonly clip: Level }
  /** Why the text cannot be pasted and what to do, in words. */
  | { readonly ok: false; readonly reason: string };

/** Returns copied items as text: JSON of a level that contains nothing else. */
export function writeClip(clip: Level): string {
  return JSON.stringify({ format: FORMAT, version: VERSION, level: clip });
}

/**
 * Reads copied items from text of any origin. The level in it is validated like one of a plan file; anything else is
 * refused with a reason. Never throws and never repairs.
 */
export function readClip(text: string): ReadClip {
  if (text.trim() === '') return refused('There is nothing to paste. Copy a thing first.');
  const value = jsonOf(text);
  if (!isRecord(value)) return refused(foreign(text));
  if (value.format === 'stillspot-plan')
    return refused('What was copied is a whole plan, not things from one. Save it as a file and open that.');
  if (value.format !== FORMAT) return refused(foreign(text));
  if (value.version !== VERSION)
    return refused('What was copied comes from a newer Stillspot. Reload this page, then paste again.');
  const parsed = parsePlan(JSON.stringify({ ...emptyPlan(), levels: [value.level] }));
  if (!parsed.ok) return refused(`What was copied is damaged. ${parsed.problems[0]?.message ?? ''}`.trim());
  const [clip] = parsed.plan.levels;
  if (!clip || ITEM_KINDS.every((kind) => itemsOf<ItemKind>(clip, kind).length === 0))
    return refused('There is nothing to paste. Copy a thing first.');
  return { ok: true, clip };
}

function foreign(text: string): string {
  const begins = quoted(text.trim().split(/\s+/).join(' '));
  return `What was copied is not a thing from a plan: it reads ${begins}. Copy an item on a plan first.`;
}

function refused(reason: string): ReadClip {
  return { ok: false, reason };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}
