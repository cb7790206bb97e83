import type { Deg } from '../plane/types.ts';

export type ParsedTurn =
  | { readonly ok: true; readonly deg: Deg; readonly words: string }
  | { readonly ok: false; readonly message: string };

const TURN = /^(-|\+)?\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*(?:°|deg|degrees)?\s*(?:to the )?(l|left|r|right)?$/;
const EXAMPLE = 'Write it like 45, or 45 left.';

/**
 * Parses the angle by which a wall turns from the previous one: degrees to the right, or to the left with "left", "l" or a
 * minus sign. Returns degrees clockwise on screen, −180…180, and the angle in words; or an error message of one sentence.
 * Never throws.
 */
export function parseTurn(text: string): ParsedTurn {
  const plain = text.trim().toLowerCase().replace('−', '-');
  if (plain === '') return { ok: false, message: `Nothing is written. ${EXAMPLE}` };
  const found = plain.length <= 40 ? TURN.exec(plain) : null;
  if (!found) return { ok: false, message: `"${text.trim().slice(0, 40)}" is not a turn in degrees. ${EXAMPLE}` };
  const [, sign, digits = '', side] = found;
  const size = Number(digits.replace(',', '.'));
  if (size > 180) {
    return { ok: false, message: `A wall turns by 180° at most, not ${size}°. Turn it to the other side.` };
  }
  const left = (sign === '-') !== (side?.startsWith('l') ?? false);
  return { ok: true, deg: left && size > 0 ? -size : size, words: turnWords(left ? -size : size) };
}

function turnWords(deg: Deg): string {
  if (deg === 0) return 'straight on';
  return `${Math.abs(deg)}° to the ${deg < 0 ? 'left' : 'right'}`;
}
