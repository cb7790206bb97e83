import { type Body, ringBody, shapeBody, streamBody } from '../body.ts';
import type { LevelModel, Ring } from '../level/types.ts';
import type { Detector, Mm } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';

/** Meeting a limit exactly passes: a distance meets its limit when it is at most this short of it, mm. */
export const MEETS: Mm = 0.1;

/** The size of a detector and the height of its underside. */
export type Cylinder = Pick<Detector, 'base' | 'radius' | 'tall'>;

/** One thing that a rule keeps the detector away from. */
export interface Subject {
  readonly id: string;
  readonly body: Body;
  /** Height of its underside and top above the floor; only what is measured in space heeds them. */
  readonly bottom: Mm;
  readonly top: Mm;
  /** Air that a fixture throws: to stay out of, not at a distance from. */
  readonly stream: boolean;
}

const caches = new WeakMap<LevelModel, Map<string, readonly Subject[]>>();

/**
 * What the distance rules of a profile are held against on a level. The same for verdict and shading. Rules about the room,
 * the level, heights, sun and the pair have no bodies: an empty list.
 */
export function subjectsOf(rule: EffectiveRule, model: LevelModel): readonly Subject[] {
  let known = caches.get(model);
  if (!known) {
    known = new Map();
    caches.set(model, known);
  }
  const key = JSON.stringify(rule.subject);
  const found = known.get(key) ?? listSubjects(rule, model);
  known.set(key, found);
  return found;
}

function listSubjects({ subject }: EffectiveRule, model: LevelModel): Subject[] {
  const { level } = model;
  switch (subject.of) {
    case 'opening':
      return model.openings
        .filter(({ outside, opening: { kind } }) => kind !== 'passage' && (outside || subject.inside.includes(kind)))
        .map(({ opening: { id, bottom, top }, body }) => ({
          id,
          bottom,
          top,
          body: keptRingBody(body),
          stream: false,
        }));
    case 'outside-wall':
      return wallSubjects(model, true);
    case 'inside-wall':
      return wallSubjects(model, false);
    case 'object': {
      const objects = level.objects.map(({ id, shape, bottom, top }) => {
        return { id, bottom, top, body: shapeBody(shape), stream: false };
      });
      return subject.walls ? [...objects, ...wallSubjects(model, false)] : objects;
    }
    case 'fixture':
      return level.fixtures.flatMap(({ id, kind, shape, bottom, top, stream }) => {
        const own: Subject = { id, bottom, top, body: shapeBody(shape), stream: false };
        const listed = subject.kinds.includes(kind) ? [own] : [];
        if (!stream || !subject.streams.includes(kind)) return listed;
        return [...listed, { ...own, body: streamBody(stream, shape), stream: true }];
      });
    default:
      return [];
  }
}

const ringBodies = new WeakMap<Ring, Body>();

/** The body of a ring that the level model keeps: the same ring gives the same body. */
function keptRingBody(ring: Ring): Body {
  let body = ringBodies.get(ring);
  if (!body) {
    body = ringBody(ring);
    ringBodies.set(ring, body);
  }
  return body;
}

const allWalls = new WeakMap<LevelModel, readonly Subject[]>();

/** Every wall piece of a level, outside and inside. */
export function wallBodies(model: LevelModel): readonly Subject[] {
  let walls = allWalls.get(model);
  if (!walls) {
    walls = [...wallSubjects(model, true), ...wallSubjects(model, false)];
    allWalls.set(model, walls);
  }
  return walls;
}

/** Walls stand from floor to ceiling; whatever the ceiling, they count at any height. */
function wallSubjects({ pieces }: LevelModel, outside: boolean): Subject[] {
  return pieces
    .filter((piece) => piece.outside === outside)
    .map(({ wall, body }) => ({
      id: wall.id,
      body: keptRingBody(body),
      bottom: 0,
      top: Number.POSITIVE_INFINITY,
      stream: false,
    }));
}

/**
 * The height between a detector and a thing above it, mm: 0 when they share some height, null when the thing ends at or
 * below the detector's underside (then it may carry the detector and does not count).
 */
export function heightBetween(subject: Subject, { base, tall }: Cylinder): Mm | null {
  if (subject.top <= base) return null;
  return Math.max(0, subject.bottom - (base + tall));
}

/**
 * How far the axis has to keep from a subject's body for the check to pass, mm; null when the subject cannot block.
 * The inverse of the measurement in `measureSubject`, so that a shaded spot is never one that a check would block.
 */
export function axisDistance(rule: EffectiveRule, subject: Subject, probe: Cylinder): Mm | null {
  if (subject.stream) return Math.max(0, probe.radius - MEETS);
  const need = (rule.least ?? 0) - MEETS;
  if (need <= 0) return null;
  if (rule.measured !== 'space') return probe.radius + need;
  const height = heightBetween(subject, probe);
  if (height === null || height >= need) return null;
  return probe.radius + Math.sqrt(need * need - height * height);
}
