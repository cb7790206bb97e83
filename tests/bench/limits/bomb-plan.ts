import { readFileSync } from 'node:fs';
import type { Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { whitePng } from './bombs.ts';

const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!read.ok) throw new Error('the plain basement cannot be read');

export const PLAIN_PLAN: Plan = { ...read.plan, title: 'Pictures' };

/** Returns a plan with a tracing picture and six photos of one detector, each about this size, px. */
export function bombPlan(width: number, height: number): Plan {
  // The pictures differ, so that one decoded picture does not serve for all.
  const [image = '', ...photos] = Array.from({ length: 7 }, (_, i) => whitePng(width, height - i));
  const tracing = {
    ...{ image, name: 'sketch.png', width, height, at: [0, 0] as const, scale: 1, turn: 0, opacity: 1 },
    ...{ shown: true, locked: true },
  };
  const [level] = PLAIN_PLAN.levels;
  const detector = level?.detectors[0]?.id;
  if (!level || !detector) throw new Error('the plain basement has a detector');
  const entry = { detector, serial: '', placedBy: '', fetchedBy: '', sealed: null, tampering: 'none' } as const;
  return { ...PLAIN_PLAN, levels: [{ ...level, tracing }], log: [{ ...entry, note: '', photos, custody: [] }] };
}
