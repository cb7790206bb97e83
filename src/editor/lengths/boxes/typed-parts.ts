import { type LengthUnit, parseLength } from '../../../../geometry/units/index.ts';
import { useAppStore } from '../../../state/store.ts';
import { type OpenLength, stepLength, useLengths } from '../store.ts';
import { type ReadLength, readLength } from './read-length.ts';

/** Several lengths in one text, as written on a sketch: "22 x 28" sets the open length and those after it. */

/** One length of the text, and what it is for; `read` is null if there is no further length to set. */
interface TypedPart {
  readonly text: string;
  readonly read: ReadLength | null;
  readonly length: ReturnType<typeof parseLength> | null;
}

const BETWEEN = /\s*(?:[x×;]|\bby\b)\s*/i;

/** Returns the lengths of a text, which signs or words such as "x" and "by" separate. */
function textsOf(text: string): readonly string[] {
  return text.trim().split(BETWEEN);
}

/** Returns what each length of a text is for, in the plan as it is now. */
export function typedParts(text: string, open: OpenLength, first: ReadLength, unit: LengthUnit): readonly TypedPart[] {
  const later = open.run.slice(open.at + 1).flatMap((step) => {
    const subject = step();
    return subject ? [readLength(subject)] : [];
  });
  return textsOf(text).map((each, i): TypedPart => {
    const read = i === 0 ? first : (later[i - 1] ?? null);
    const length = read && parseLength(each, unit, { bare: read.bare, negative: read.negative });
    return { text: each, read, length };
  });
}

/** Returns why the lengths of a text cannot be set, in words; empty if each is a valid length and is asked for. */
export function partsRefusal(parts: readonly TypedPart[]): string {
  const extra = parts.findIndex(({ read }) => read === null);
  if (extra > 0) return `Only ${extra === 1 ? 'one length is' : `${extra} lengths are`} asked for here. Write no more.`;
  const wrong = parts.find(({ length }) => length && !length.ok);
  return wrong?.length && !wrong.length.ok ? wrong.length.message : '';
}

/**
 * Returns the lengths in words, as they were understood: "Width 22 in, Depth 28 in"; empty for a single one that is written like that
 * already.
 */
export function partsEcho(parts: readonly TypedPart[]): string {
  const [only] = parts;
  if (only && parts.length === 1) return only.length?.ok && only.length.echo !== only.text ? only.length.echo : '';
  const words = parts.map(({ read, length }) => (read && length?.ok ? `${read.label} ${length.echo}` : ''));
  return words.filter(Boolean).join(', ');
}

/**
 * Commits the lengths to the open field and to those after it, one after the other. Returns the reason of a refusal, in words; empty on
 * success. After a refusal the remaining text is in the field of the refused length.
 */
export function commitParts(parts: readonly TypedPart[], open: OpenLength): string {
  for (const [i, { length }] of parts.entries()) {
    const now = i === 0 ? open : useLengths.getState().open;
    // Read again: a room may have another depth once its width is corrected.
    const read = now && readLength(now.subject);
    const trouble = now && read && length?.ok ? read.commit(length.mm, now.moves) : GONE;
    if (trouble && now && i > 0) {
      const first = parts.slice(i).map(({ text }) => text);
      useLengths.setState({ open: { ...now, typing: true, first: first.join(' x ') } });
      useAppStore.getState().say(trouble);
    }
    if (trouble) return trouble;
    if (i < parts.length - 1) stepLength(1);
  }
  return '';
}

const GONE = 'That length is not there any more.';
