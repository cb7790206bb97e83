import type { Side } from '../dimension/wall-gaps.ts';
import type { Level, Mm, Plan, PlanObject } from '../plan/model.ts';
import { capital, lowerFirst } from '../plan/nouns.ts';
import type { FurnitureMove, FurnitureVerdict } from '../search/furniture.ts';
import { formatLength } from '../units/index.ts';
import { describeCheck } from './check.ts';
import { compassPoint, subjectName } from './subject.ts';

type PlanContext = Pick<Plan, 'display' | 'site' | 'protocol'>;
/** Page degrees, clockwise from the right. */
const DIRECTION: Readonly<Record<Side, number>> = { right: 0, down: 90, left: 180, up: 270 };

/** Describes whether a detector may stand on an object, in one or two sentences: why not, and what would help. */
export function describeFurniture(
  verdict: FurnitureVerdict,
  object: PlanObject,
  members: 1 | 2,
  plan: PlanContext,
  level: Level,
): string {
  const name = subjectName(level, object.id);
  switch (verdict.kind) {
    case 'good':
      return `${members === 1 ? 'A detector' : 'A pair'} may stand on ${name}, ${describeMargin(verdict.margin, plan)}.`;
    case 'seat':
      return `${capital(name)} is not suitable: people sit or lie on it. Choose something firm.`;
    case 'height':
      return `The top of ${name} is at the wrong height: ${lowerFirst(describeCheck(verdict.check, plan, level))}`;
    case 'small':
      return `${capital(name)} is too small: the whole foot of ${members === 1 ? 'the detector' : 'each'} has to be on it.`;
    case 'room':
      return verdict.reason || `${capital(name)} is in no room.`;
    case 'near': {
      const why = verdict.check ? ` ${describeCheck(verdict.check, plan, level)}` : '';
      const way = verdict.move
        ? `${describeFurnitureMove(verdict.move, name, plan)}.`
        : 'No move within its room helps.';
      return `No spot on ${name}.${why} ${way}`;
    }
  }
}

/** "Move the desk 1 ft 2 in to the east". */
export function describeFurnitureMove(
  { side, by }: FurnitureMove,
  name: string,
  { display, site }: PlanContext,
): string {
  return `Move ${name} ${formatLength(by, display.length, 'up')} to the ${compassPoint(DIRECTION[side], site)}`;
}

function describeMargin(margin: Mm, { display }: PlanContext): string {
  return Number.isFinite(margin) ? `${formatLength(margin, display.length, 'down')} to spare` : 'nothing is near';
}
