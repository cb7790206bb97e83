import { type Extent, ringExtent } from '../body.ts';
import { type RoomBar, roomBar } from '../check/room.ts';
import { axisDistance, MEETS, type Subject, subjectsOf, wallBodies } from '../check/subjects.ts';
import { overlaps } from '../level/floors.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Plan } from '../plan/model.ts';
import { ringsContain } from '../ring.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import { freeBoundary, type Grown, grown } from './free-boundary.ts';
import { grownOutline, type Piece } from './outline.ts';
import { freeArea, linkRings } from './rings.ts';
import type { ArcRing, LevelRegion, Probe, RoomRegion, Zone } from './types.ts';

export interface RegionOptions {
  /** Keep every plan and space limit by this much more, mm; 0 gives exactly the spots that no check blocks. */
  readonly spare?: Mm;
}

interface Blocker {
  readonly zone: Zone;
  readonly grown: Grown;
}

/**
 * Where the axis of a probe may stand on a level: every rule but `companion`, `level` and `direct-sun` met. Boundaries are
 * exact, lines and circular arcs, and areas are in closed form. A spot inside is never one that a check would block.
 */
export function levelRegion(plan: Plan, model: LevelModel, probe: Probe, options: RegionOptions = {}): LevelRegion {
  const spare = options.spare ?? 0;
  const blockers = levelBlockers(plan, model, probe, spare);
  const walls = wallBodies(model).map(({ body }) => grown(body, Math.max(0, probe.radius - MEETS)));
  const obstacles = [...blockers.map((blocker) => blocker.grown), ...walls];
  const height = heightBar(plan, model, probe, spare);
  return {
    probe,
    zones: blockers.map(({ zone }) => zone),
    rooms: model.rooms.map((room) => roomRegion(room, roomBar(room, plan.protocol), height, obstacles)),
  };
}

function roomRegion(room: Room, bar: RoomBar, height: HeightBar, obstacles: readonly Grown[]): RoomRegion {
  const decided = bar.certain;
  const extent = room.centreRings[0] && ringExtent(room.centreRings[0]);
  if (bar.reason) return { room, rings: [], area: 0, barred: bar.reason, barredBy: 'room-use', decided };
  if (height || !extent) {
    return { room, rings: [], area: 0, barred: height?.reason ?? '', barredBy: height?.rule ?? null, decided };
  }
  const parts = freeParts(room, extent, obstacles);
  return {
    room,
    rings: linkRings(parts),
    area: freeArea(parts, extent.minX, extent.minY),
    barred: '',
    barredBy: null,
    decided,
  };
}

function freeParts(room: Room, extent: Extent, obstacles: readonly Grown[]): Piece[] {
  const near = obstacles.filter((obstacle) => overlaps(obstacle, extent));
  return freeBoundary(near, (x, y) => ringsContain(room.centreRings, [x, y]), extent);
}

/** Every zone of the distance rules at the probe's height. */
function levelBlockers(plan: Plan, model: LevelModel, probe: Probe, spare: Mm): Blocker[] {
  return effectiveRules(plan.protocol).flatMap((rule) => {
    const wanted = spare > 0 ? withSpare(rule, spare) : rule;
    return subjectsOf(rule, model).flatMap((subject) => {
      const keep = axisDistance(wanted, subject, probe);
      if (keep === null) return [];
      const grow = subject.stream ? keep + spare : keep;
      return [{ zone: zoneOf(rule, subject, grow), grown: grown(subject.body, grow) }];
    });
  });
}

function withSpare(rule: EffectiveRule, spare: Mm): EffectiveRule {
  return rule.least === null ? rule : { ...rule, least: rule.least + MEETS + spare };
}

function zoneOf(rule: EffectiveRule, subject: Subject, grow: Mm): Zone {
  let outlines: readonly ArcRing[] | undefined;
  return {
    rule: rule.id,
    subject: subject.id,
    distance: subject.stream ? 0 : (rule.least ?? 0),
    stream: subject.stream,
    /** Worked out when somebody draws it. */
    get outlines() {
      outlines ??= outlinesOf(subject, grow);
      return outlines;
    },
  };
}

function outlinesOf({ body }: Subject, grow: Mm): ArcRing[] {
  const alone = grown(body, grow);
  if (!alone.convex) return linkRings(freeBoundary([alone], () => true)).map(turnedRing);
  return [grownOutline(body, grow, 0).map(toEdge)];
}

function toEdge(piece: Piece): ArcRing[number] {
  return piece.radius > 0
    ? { kind: 'arc', center: [piece.cx, piece.cy], radius: piece.radius, start: piece.start, sweep: piece.sweep }
    : { kind: 'line', from: [piece.x0, piece.y0], to: [piece.x1, piece.y1] };
}

function turnedRing(ring: ArcRing): ArcRing {
  return [...ring]
    .reverse()
    .map((edge) =>
      edge.kind === 'line'
        ? { kind: 'line', from: edge.to, to: edge.from }
        : { ...edge, start: edge.start + edge.sweep, sweep: -edge.sweep },
    );
}

type HeightBar = { readonly rule: RuleId; readonly reason: string } | null;

/** Why nothing may sit at the probe's height anywhere on the level; null when it may. */
function heightBar(plan: Plan, model: LevelModel, { base, tall }: Probe, spare: Mm): HeightBar {
  for (const { id, subject, least, most } of effectiveRules(plan.protocol)) {
    if (subject.of === 'height') {
      if (least !== null && base - least < spare - MEETS) return { rule: id, reason: 'Too low above the floor.' };
      if (most !== null && most - base - tall < spare - MEETS) return { rule: id, reason: 'Too high above the floor.' };
    }
    if (subject.of === 'ceiling' && least !== null && model.level.ceiling - base - tall - least < spare - MEETS) {
      return { rule: id, reason: 'Too near the ceiling.' };
    }
  }
  return null;
}
