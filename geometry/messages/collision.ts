import { collisionsOf } from '../check/collisions.ts';
import type { DetectorReport } from '../check/types.ts';
import type { Detector, Level } from '../plan/model.ts';
import { listed } from '../plan/nouns.ts';
import { subjectName } from './subject.ts';

/**
 * Describes what a detector intersects if no check says so: "It stands inside the washer. Set it clear of it." The
 * checks block each such item, so this is "" for a report of the same drawing.
 */
export function describeCollision(level: Level, detector: Detector, report: DetectorReport): string {
  const blocking = new Set(report.checks.filter(({ verdict }) => verdict === 'blocked').map(({ subject }) => subject));
  const entered = collisionsOf(level, detector).filter(({ thing }) => !blocking.has(thing.id));
  if (entered.length === 0) return '';
  const names = listed(entered.map(({ thing }) => subjectName(level, thing.id)));
  const how = entered.some(({ whole }) => whole) ? 'stands inside' : 'reaches into';
  return `It ${how} ${names}. Move it clear of ${entered.length === 1 ? 'it' : 'them'}.`;
}
