import type { LevelModel, OpeningBody, WallJoint, WallPiece } from '../level/types.ts';
import type { Detector, Fixture, FixtureKind, Mm, PlanObject } from '../plan/model.ts';
import { type Body, ringBody, shapeBody, signedBodyDistance, streamBody } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { Ring } from '../plane/types.ts';
import type { EffectiveRule } from '../rules/profiles.ts';

/**
 * Rounding error, mm, of the difference of two lengths in floating point: 999.9 − 1000 is slightly below −0.1. A length that is short of
 * the limit by no more than this meets it.
 */
export const SUBTRACTION: Mm = 1e-9;

/** Rounding of coordinates, mm: a position computed to be on a limit counts as on it. */
export const ROUNDING: Mm = 1e-6;

/** A top supports a detector whose base is within this height of it, mm: no tape tells them apart. */
export const SUPPORT_TOLERANCE: Mm = 3;

/** The size and base height of a detector. */
export type Cylinder = Pick<Detector, 'base' | 'radius' | 'tall'>;

/** What a subject is; selects the sources of a rule to cite. */
type SubjectKind = FixtureKind | 'opening' | 'outside-wall' | 'inside-wall' | 'object' | 'detector' | 'stream' | 'sun';

/** One body that a rule keeps the detector away from. */
export interface Subject {
  readonly id: string;
  readonly what: SubjectKind;
  readonly body: Body;
  /** Height of its underside and top above the floor; used only by rules measured in space. */
  readonly bottom: Mm;
  readonly top: Mm;
  /** Whether the detector must stay out of it and keeps no distance: a fixture's air stream, or sun under a rule without a distance. */
  readonly keepOut: boolean;
  /**
   * Whether a detector may not intersect it, whatever the limit. False for walls and openings, which the room rule
   * covers.
   */
  readonly solid: boolean;
}

const listsOf = memoize((_: LevelModel) => new Map<EffectiveRule['subject'], readonly Subject[]>());

/**
 * Returns the bodies on a level that a distance rule applies to, the same for verdicts and shading. Empty for rules
 * about the room, the level, heights and the pair, and for the sun (`ruleSubjects`). Memoized by identity: a subject
 * that an edit does not change keeps its object.
 */
export function subjectsOf({ subject }: EffectiveRule, model: LevelModel): readonly Subject[] {
  const lists = listsOf(model);
  let list = lists.get(subject);
  if (!list) {
    list = listSubjects(subject, model);
    lists.set(subject, list);
  }
  return list;
}

/**
 * Returns whether something that a rule names is drawn. The airflow of a heater does not count: drawing it does not
 * mean that somebody looked for registers.
 */
export function isDrawn(rule: EffectiveRule, model: LevelModel): boolean {
  const { subject } = rule;
  if (subject.of !== 'fixture') return subjectsOf(rule, model).length > 0;
  return model.level.fixtures.some(
    ({ kind, stream }) => subject.kinds.includes(kind) || (stream !== null && subject.streams.includes(kind)),
  );
}

function listSubjects(subject: EffectiveRule['subject'], model: LevelModel): readonly Subject[] {
  const { level } = model;
  switch (subject.of) {
    case 'opening':
      return model.openings
        .filter(({ outside, opening: { kind } }) => outside || (kind !== 'passage' && subject.inside.includes(kind)))
        .map(openingSubject);
    case 'outside-wall':
      return wallSubjects(model).outside;
    case 'inside-wall':
      return wallSubjects(model).inside;
    case 'object': {
      const things = [...objectSubjects(level.objects), ...solidFixtures(level.fixtures, subject.fixtures)];
      return subject.walls ? [...things, ...wallSubjects(model).inside] : things;
    }
    case 'fixture':
      return fixtureSubjects(level.fixtures, subject);
    default:
      return [];
  }
}

const openingSubject = memoize(({ opening: { id, bottom, top }, body }: OpeningBody): Subject => {
  return { id, what: 'opening', bottom, top, body: ringBody(body), keepOut: false, solid: false };
});

/** Returns the subject of an object; memoized. */
export const objectSubject = memoize(({ id, bottom, top, shape }: PlanObject): Subject => {
  return { id, what: 'object', bottom, top, body: shapeBody(shape), keepOut: false, solid: true };
});

/** Returns the subjects of a list of objects; memoized. */
export const objectSubjects = memoize((objects: readonly PlanObject[]) => objects.map(objectSubject));

/** Returns the subject of a fixture; memoized. */
export const fixtureSubject = memoize(({ id, kind, bottom, top, shape }: Fixture): Subject => {
  return { id, what: kind, bottom, top, body: shapeBody(shape), keepOut: false, solid: true };
});

const streamSubject = memoize(({ id, bottom, top, shape, stream }: Fixture): Subject | null => {
  return stream && { id, what: 'stream', bottom, top, body: streamBody(stream, shape), keepOut: true, solid: false };
});

/** Returns the subject of a detector, as an obstacle to another one; memoized. */
export const detectorSubject = memoize(({ id, at: [x, y], base, radius, tall }: Detector): Subject => {
  const extent = { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius };
  const body: Body = { kind: 'disc', x, y, radius, extent };
  return { id, what: 'detector', bottom: base, top: base + tall, body, keepOut: false, solid: true };
});

function solidFixtures(fixtures: readonly Fixture[], kinds: readonly FixtureKind[]): readonly Subject[] {
  return fixtures.filter(({ kind }) => kinds.includes(kind)).map(fixtureSubject);
}

type FixtureRule = Extract<EffectiveRule['subject'], { readonly of: 'fixture' }>;

const fixtureLists = memoize((_: readonly Fixture[]) => new Map<FixtureRule, readonly Subject[]>());

function fixtureSubjects(fixtures: readonly Fixture[], rule: FixtureRule): readonly Subject[] {
  const lists = fixtureLists(fixtures);
  let list = lists.get(rule);
  if (!list) {
    list = listFixtures(fixtures, rule);
    lists.set(rule, list);
  }
  return list;
}

/** For a rule about air, every fixture with a stream counts, also a heater with a fan or a dryer. */
function listFixtures(fixtures: readonly Fixture[], { kinds, streams }: FixtureRule): readonly Subject[] {
  const subjects: Subject[] = [];
  for (const fixture of fixtures) {
    if (kinds.includes(fixture.kind)) subjects.push(fixtureSubject(fixture));
    const stream = streams.length > 0 ? streamSubject(fixture) : null;
    if (stream) subjects.push(stream);
  }
  return subjects;
}

/** Walls extend from floor to ceiling and count at any height. */
interface WallSubjects {
  readonly outside: readonly Subject[];
  readonly inside: readonly Subject[];
  readonly all: readonly Subject[];
}

const wallSubjectsOf = memoize((pieces: readonly WallPiece[]) =>
  memoize((joints: readonly WallJoint[]): WallSubjects => {
    const outside: Subject[] = [];
    const inside: Subject[] = [];
    const add = (ring: Ring, ids: readonly string[], isOutside: boolean) => {
      const body = ringBody(ring);
      for (const id of ids) {
        const what = isOutside ? 'outside-wall' : 'inside-wall';
        const top = Number.POSITIVE_INFINITY;
        (isOutside ? outside : inside).push({ id, what, body, bottom: 0, top, keepOut: false, solid: false });
      }
    };
    for (const { wall, body, outside: isOutside } of pieces) add(body, [wall.id], isOutside);
    // A joint belongs to each of its walls.
    for (const { walls, body, outside: isOutside } of joints) {
      add(
        body,
        walls.map(({ id }) => id),
        isOutside,
      );
    }
    return { outside, inside, all: [...outside, ...inside] };
  }),
);

function wallSubjects({ pieces, joints }: LevelModel): WallSubjects {
  return wallSubjectsOf(pieces)(joints);
}

/** Returns whether a subject extends from floor to ceiling. */
export function isWall({ top }: Subject): boolean {
  return top === Number.POSITIVE_INFINITY;
}

/** Returns every wall piece and joint of a level, outside and inside. */
export function everyWall(model: LevelModel): readonly Subject[] {
  return wallSubjects(model).all;
}

/** Returns whether a subject is an object whose top is at a detector's base, within tolerance. */
export function isLevelWith({ what, top }: Subject, { base }: Pick<Cylinder, 'base'>): boolean {
  return what === 'object' && Math.abs(top - base) <= SUPPORT_TOLERANCE;
}

/**
 * Returns whether a subject supports a detector: an object with its top within 3 mm of the base, under the whole
 * footprint.
 */
export function subjectSupports(subject: Subject, probe: Cylinder, x: Mm, y: Mm): boolean {
  return (
    isLevelWith(subject, probe) && signedBodyDistance(subject.body, x, y) <= LIMIT_TOLERANCE - probe.radius + ROUNDING
  );
}

/** Returns whether the height ranges of a solid body and a detector overlap by more than the limit tolerance. */
export function sharesHeight({ solid, bottom, top }: Subject, { base, tall }: Cylinder): boolean {
  return solid && Math.min(top, base + tall) - Math.max(bottom, base) > LIMIT_TOLERANCE;
}

/** Returns whether a detector intersects a solid body, in plan and in height, and is not supported by it. */
export function collides(subject: Subject, probe: Cylinder, x: Mm, y: Mm): boolean {
  if (!sharesHeight(subject, probe)) return false;
  return (
    signedBodyDistance(subject.body, x, y) < probe.radius - LIMIT_TOLERANCE && !subjectSupports(subject, probe, x, y)
  );
}

/**
 * Returns the vertical distance from a detector to a subject above it, mm: 0 when their heights overlap; null when
 * the subject ends at or below the detector's base (then it may support the detector and does not count).
 */
export function heightBetween(subject: Subject, { base, tall }: Cylinder): Mm | null {
  if (subject.top <= base) return null;
  return Math.max(0, subject.bottom - (base + tall));
}

/**
 * Returns how far the axis must be from a subject's body for the check to pass, mm; null when the subject cannot block.
 * Inverse of `measureSubject`, so that a check never blocks an unshaded position, nor the reverse.
 */
export function axisDistance(rule: EffectiveRule, subject: Subject, probe: Cylinder): Mm | null {
  if (subject.keepOut) return Math.max(0, probe.radius - LIMIT_TOLERANCE);
  const distance = limitDistance(rule, subject, probe);
  // Whatever the limit, a detector may not intersect a body at its height.
  if (distance === null && sharesHeight(subject, probe)) return Math.max(0, probe.radius - LIMIT_TOLERANCE);
  return distance;
}

function limitDistance(rule: EffectiveRule, subject: Subject, probe: Cylinder): Mm | null {
  const need = (rule.least ?? 0) - LIMIT_TOLERANCE;
  if (need <= 0) return null;
  if (rule.measured !== 'space') return probe.radius + need;
  const height = heightBetween(subject, probe);
  if (height === null || height >= need) return null;
  return probe.radius + Math.sqrt(need * need - height * height);
}

/**
 * Returns how far inside a subject's outline, mm, the axis must be for the subject to support the detector and not
 * obstruct it; null when its top is not at the base of the detector, or below it.
 */
export function supportedDepth(rule: EffectiveRule, subject: Subject, probe: Cylinder): Mm | null {
  if (rule.measured !== 'space' || subject.top <= probe.base || !isLevelWith(subject, probe)) return null;
  return Math.max(0, probe.radius - LIMIT_TOLERANCE);
}
