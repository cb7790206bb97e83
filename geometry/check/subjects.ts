import type { LevelModel, OpeningBody, WallJoint, WallPiece } from '../level/types.ts';
import type { Detector, Fixture, FixtureKind, Mm, PlanObject } from '../plan/model.ts';
import { type Body, ringBody, shapeBody, signedBodyDistance, streamBody } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import type { Ring } from '../plane/types.ts';
import type { EffectiveRule } from '../rules/profiles.ts';

/** Meeting a limit exactly passes: a distance meets its limit when it is at most this short of it, mm. */
export const MEETS: Mm = 0.1;

/** Rounding of coordinates, mm: a spot that was worked out to lie on a limit lies on it. */
export const ROUNDING: Mm = 1e-6;

/** A top carries what stands within this height of it, mm: no tape tells them apart. */
export const SEATED: Mm = 3;

/** The size of a detector and the height of its underside. */
export type Cylinder = Pick<Detector, 'base' | 'radius' | 'tall'>;

/** What a subject is: tells which of a rule's sources speaks of it. */
type SubjectKind = FixtureKind | 'opening' | 'outside-wall' | 'inside-wall' | 'object' | 'detector' | 'stream';

/** One thing that a rule keeps the detector away from. */
export interface Subject {
  readonly id: string;
  readonly what: SubjectKind;
  readonly body: Body;
  /** Height of its underside and top above the floor; only what is measured in space heeds them. */
  readonly bottom: Mm;
  readonly top: Mm;
  /** Air that a fixture throws: to stay out of, not at a distance from. */
  readonly stream: boolean;
  /** A body of its own that no detector can be inside of. Walls and their openings are the room's affair. */
  readonly solid: boolean;
}

const listsOf = memoize((_: LevelModel) => new Map<EffectiveRule['subject'], readonly Subject[]>());

/**
 * What the distance rules of a profile are held against on a level. The same for verdict and shading. Rules about the room,
 * the level, heights, sun and the pair have no bodies: an empty list. What an edit leaves alone keeps its Subject object.
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
  return { id, what: 'opening', bottom, top, body: ringBody(body), stream: false, solid: false };
});

/** An object by its body; the same object gives the same subject. */
export const objectSubject = memoize(({ id, bottom, top, shape }: PlanObject): Subject => {
  return { id, what: 'object', bottom, top, body: shapeBody(shape), stream: false, solid: true };
});

/** The objects of a level; the same list gives the same subjects. */
export const objectSubjects = memoize((objects: readonly PlanObject[]) => objects.map(objectSubject));

/** A fixture by its body; the same fixture gives the same subject. */
export const fixtureSubject = memoize(({ id, kind, bottom, top, shape }: Fixture): Subject => {
  return { id, what: kind, bottom, top, body: shapeBody(shape), stream: false, solid: true };
});

const streamSubject = memoize(({ id, bottom, top, shape, stream }: Fixture): Subject | null => {
  return stream && { id, what: 'stream', bottom, top, body: streamBody(stream, shape), stream: true, solid: false };
});

/** A detector as something in the way of another one. */
export const detectorSubject = memoize(({ id, at: [x, y], base, radius, tall }: Detector): Subject => {
  const extent = { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius };
  const body: Body = { kind: 'disc', x, y, radius, extent };
  return { id, what: 'detector', bottom: base, top: base + tall, body, stream: false, solid: true };
});

function solidFixtures(fixtures: readonly Fixture[], kinds: readonly FixtureKind[]): readonly Subject[] {
  return fixtures.filter(({ kind }) => kinds.includes(kind)).map(fixtureSubject);
}

type FixtureRule = Extract<EffectiveRule['subject'], { readonly of: 'fixture' }>;

const fixtureLists = memoize((_: readonly Fixture[]) => new Map<FixtureRule, readonly Subject[]>());

/** The same fixtures give the same list. */
function fixtureSubjects(fixtures: readonly Fixture[], rule: FixtureRule): readonly Subject[] {
  const lists = fixtureLists(fixtures);
  let list = lists.get(rule);
  if (!list) {
    list = listFixtures(fixtures, rule);
    lists.set(rule, list);
  }
  return list;
}

function listFixtures(fixtures: readonly Fixture[], { kinds, streams }: FixtureRule): readonly Subject[] {
  const subjects: Subject[] = [];
  for (const fixture of fixtures) {
    if (kinds.includes(fixture.kind)) subjects.push(fixtureSubject(fixture));
    const stream = streams.includes(fixture.kind) ? streamSubject(fixture) : null;
    if (stream) subjects.push(stream);
  }
  return subjects;
}

/** Walls stand from floor to ceiling; whatever the ceiling, they count at any height. */
interface WallSubjects {
  readonly outside: readonly Subject[];
  readonly inside: readonly Subject[];
  readonly all: readonly Subject[];
}

const wallSubjectsOf = memoize((pieces: readonly WallPiece[]) =>
  memoize((joints: readonly WallJoint[]): WallSubjects => {
    const outside: Subject[] = [];
    const inside: Subject[] = [];
    const add = (ring: Ring, ids: readonly string[], looksOut: boolean) => {
      const body = ringBody(ring);
      for (const id of ids) {
        const what = looksOut ? 'outside-wall' : 'inside-wall';
        const top = Number.POSITIVE_INFINITY;
        (looksOut ? outside : inside).push({ id, what, body, bottom: 0, top, stream: false, solid: false });
      }
    };
    for (const { wall, body, outside: looksOut } of pieces) add(body, [wall.id], looksOut);
    // A joint is as much the one wall's as the other's.
    for (const { walls, body, outside: looksOut } of joints) {
      add(
        body,
        walls.map(({ id }) => id),
        looksOut,
      );
    }
    return { outside, inside, all: [...outside, ...inside] };
  }),
);

function wallSubjects({ pieces, joints }: LevelModel): WallSubjects {
  return wallSubjectsOf(pieces)(joints);
}

/** Whether it stands from floor to ceiling, whatever the ceiling. */
export function isWall({ top }: Subject): boolean {
  return top === Number.POSITIVE_INFINITY;
}

/** Every piece of wall and every joint of a level, outside and inside. */
export function wallBodies(model: LevelModel): readonly Subject[] {
  return wallSubjects(model).all;
}

/** Whether a subject is an object whose top is at a detector's underside, give or take what may still carry it. */
export function isLevelWith({ what, top }: Subject, { base }: Pick<Cylinder, 'base'>): boolean {
  return what === 'object' && Math.abs(top - base) <= SEATED;
}

/** Whether a subject carries a detector: an object, its top within 3 mm of the underside, under the whole foot. */
export function carries(subject: Subject, probe: Cylinder, x: Mm, y: Mm): boolean {
  return isLevelWith(subject, probe) && signedBodyDistance(subject.body, x, y) <= MEETS - probe.radius + ROUNDING;
}

/** Whether a solid body and a detector have some height in common, by more than the hair by which a limit may be missed. */
export function sharesHeight({ solid, bottom, top }: Subject, { base, tall }: Cylinder): boolean {
  return solid && Math.min(top, base + tall) - Math.max(bottom, base) > MEETS;
}

/** Whether a detector stands in a solid body or its rim reaches into it, at a height that both have; not where the body carries it. */
export function isEntered(subject: Subject, probe: Cylinder, x: Mm, y: Mm): boolean {
  if (!sharesHeight(subject, probe)) return false;
  return signedBodyDistance(subject.body, x, y) < probe.radius - MEETS && !carries(subject, probe, x, y);
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
  const kept = limitDistance(rule, subject, probe);
  // Whatever the limit: inside a body that reaches its height nothing stands.
  if (kept === null && sharesHeight(subject, probe)) return Math.max(0, probe.radius - MEETS);
  return kept;
}

function limitDistance(rule: EffectiveRule, subject: Subject, probe: Cylinder): Mm | null {
  const need = (rule.least ?? 0) - MEETS;
  if (need <= 0) return null;
  if (rule.measured !== 'space') return probe.radius + need;
  const height = heightBetween(subject, probe);
  if (height === null || height >= need) return null;
  return probe.radius + Math.sqrt(need * need - height * height);
}

/**
 * How far inside a subject's outline the axis stands on it and is not in its way, mm; null where it is not level with the
 * detector or ends below it.
 */
export function carriedDepth(rule: EffectiveRule, subject: Subject, probe: Cylinder): Mm | null {
  if (rule.measured !== 'space' || subject.top <= probe.base || !isLevelWith(subject, probe)) return null;
  return Math.max(0, probe.radius - MEETS);
}
