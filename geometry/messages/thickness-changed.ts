import type { Mm } from '../plan/model.ts';
import { counted } from '../plan/nouns.ts';
import { formatLength, type LengthUnit } from '../units/index.ts';

/**
 * What stays in place when the thickness of a wall is changed: the taped face (inside, outside) or the center-line. The center-line stays
 * because lengths are taped between center-lines (center), because rooms are on both sides (partition) or on neither (no-room), or because
 * the walls joined to it could not follow (joined).
 */
export type StaysAt = 'inside' | 'outside' | 'center' | 'partition' | 'no-room' | 'joined';

export interface ThicknessChange {
  readonly stays: StaysAt;
  /** How much thicker the wall has become, mm; negative if thinner. */
  readonly more: Mm;
}

/** Returns what stays and what moves after thickness changes, a sentence or two for each reason. "" if no thickness changed. */
export function describeThicknessChanges(changes: readonly ThicknessChange[], unit: LengthUnit): string {
  const changed = changes.filter(({ more }) => more !== 0);
  return STAYS_AT.flatMap((stays) => {
    const alike = changed.filter((each) => each.stays === stays);
    const [first] = alike;
    if (!first) return [];
    const more = alike.every((each) => each.more === first.more) ? first.more : null;
    if (stays === 'inside') return [faceWords('inside', 'outside', alike.length, more && [more > 0, more], unit)];
    if (stays === 'outside') return [faceWords('outside', 'inside', alike.length, more && [more < 0, more], unit)];
    const walls =
      changed.length === 1
        ? 'The wall keeps its'
        : `${counted(alike.length, 'wall')} ${alike.length === 1 ? 'keeps its' : 'keep their'}`;
    const by = more === null ? 'half the change' : formatLength(Math.abs(more) / 2, unit, 'up');
    return [`${walls} center line${WHY[stays]}. Each face moves by ${by}.`];
  }).join(' ');
}

/** @param move whether the other face moves out, and by how much, mm; null where the walls differ */
function faceWords(
  taped: string,
  other: string,
  walls: number,
  move: readonly [out: boolean, by: Mm] | null | 0,
  unit: LengthUnit,
): string {
  const one = walls === 1;
  const stays = one ? `The ${taped} face stays where it was taped.` : `The ${taped} faces stay where they were taped.`;
  if (!move) return stays;
  const [out, by] = move;
  return `${stays} The ${other} ${one ? 'face moves' : 'faces move'} ${out ? 'out' : 'in'} by ${formatLength(Math.abs(by), unit, 'up')}.`;
}

const STAYS_AT: readonly StaysAt[] = ['inside', 'outside', 'center', 'partition', 'no-room', 'joined'];

const WHY: Readonly<Record<Exclude<StaysAt, 'inside' | 'outside'>, string>> = {
  center: ', from which it was taped',
  partition: ': a room lies on both sides, and nobody can know which face was taped',
  'no-room': ': no closed room lies along it, and nobody can know which face was taped',
  joined: ': the walls that are joined to it, or what is in them, could not go along',
};
