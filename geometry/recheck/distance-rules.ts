import type { Fixture, Mm, PlanObject, Shape } from '../plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import { wasKept, wasOff } from '../rules/running.ts';
import { apart, ringDistance } from './plane.ts';
import { type Case, leastRow, notRunRow, wordRow } from './rows.ts';
import { shapeCarries, shapeDistance, streamDistance } from './shapes.ts';
import type { Row } from './types.ts';

/** Rules that stand as not run while nothing of theirs is drawn and nobody said that it was looked for. */
const ASKED_FOR = ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain'];
/** An object whose top is this near to the base carries the detector, mm. */
const CARRIES = 3;

/** From the rim, in plan. */
const planDistance = ({ detector }: Case, distance: Mm): Mm => Math.max(0, distance - detector.radius);

/** With the height between the detector's top and the thing's bottom. */
const spaceDistance = (one: Case, distance: Mm, bottom: Mm): Mm =>
  Math.hypot(planDistance(one, distance), Math.max(0, bottom - (one.detector.base + one.detector.tall)));

/** Whether the detector is in the thing: over one another in plan and in height. */
function collides({ detector }: Case, distance: Mm, { bottom, top }: { bottom: Mm; top: Mm }): boolean {
  return distance < detector.radius && top > detector.base && bottom < detector.base + detector.tall;
}

/** Rows, or what stands where nothing of the rule is drawn. */
function orNothingDrawn({ level }: Case, rule: EffectiveRule, rows: Row[]): Row[] {
  if (rows.length > 0 || !ASKED_FOR.includes(rule.id)) return rows;
  return [
    level.lookedFor?.includes(rule.id) ? { ...notRunRow(rule), verdict: 'clear', notRun: false } : notRunRow(rule),
  ];
}

/** Doors, windows and passages to the outside, and those inside that the profile names. */
export function openingRows(one: Case, rule: EffectiveRule, inside: readonly string[]): Row[] {
  const holes = one.house.holes.filter(({ outside, opening }) => outside || inside.includes(opening.kind));
  if (rule.least === null) return holes.length > 0 ? [notRunRow(rule)] : orNothingDrawn(one, rule, []);
  const rows = holes.map(({ opening, ring }) =>
    leastRow(one, rule, opening.id, planDistance(one, ringDistance(one.detector.at, ring))),
  );
  return orNothingDrawn(one, rule, rows);
}

/** Faces of outside or inside walls. */
export function wallRows(one: Case, rule: EffectiveRule, outside: boolean): Row[] {
  const bodies = one.house.bodies.filter((body) => body.outside === outside);
  if (rule.least === null) return bodies.length > 0 ? [notRunRow(rule)] : [];
  return bodies.map(({ wall, ring }) =>
    leastRow(one, rule, wall, planDistance(one, ringDistance(one.detector.at, ring))),
  );
}

/** Fixtures of the rule's kinds, and the air that fixtures throw; where it is not drawn nobody can tell whether the detector is in it. */
export function fixtureRows(
  one: Case,
  rule: EffectiveRule,
  { kinds, streams }: { kinds: readonly string[]; streams: readonly string[] },
): Row[] {
  const rows = one.level.fixtures.flatMap((fixture) => {
    const near = kinds.includes(fixture.kind);
    const blows = streams.includes(fixture.kind);
    const body = bodyRow(one, rule, fixture);
    const air = fixture.stream ? streamRow(one, rule, fixture) : { ...notRunRow(rule), required: null };
    const throws = fixture.stream || !(near || wasOff(one.plan, fixture.kind));
    return [...(near ? [body] : []), ...(blows && throws ? [air] : [])];
  });
  return orNothingDrawn(one, rule, rows);
}

/** Machines that have to be off while the detector lies near: a condition of the visit, which no place meets by itself. */
export function machineRows(one: Case, rule: EffectiveRule, kinds: readonly string[]): Row[] {
  return one.level.fixtures
    .filter(({ kind }) => kinds.includes(kind))
    .map((fixture) => ({ row: bodyRow(one, rule, fixture), kept: wasKept(one.plan, fixture.kind) }))
    .filter(({ row }) => row.verdict === 'blocked')
    .map(({ row, kept }) =>
      kept ? wordRow(rule, 'clear', row.subject) : { ...row, verdict: 'unknown', notRun: true },
    );
}

function bodyRow(one: Case, rule: EffectiveRule, fixture: Fixture): Row {
  const distance = shapeDistance(fixture.shape, one.detector.at);
  const entered = collides(one, distance, fixture);
  if (rule.least === null && !entered) return notRunRow(rule);
  return leastRow(one, rule, fixture.id, planDistance(one, distance), { entered, required: rule.least ?? 0 });
}

/** Out of the stream: the rim may touch its edge. */
function streamRow(one: Case, rule: EffectiveRule, { id, shape, stream }: Fixture): Row {
  if (!stream) return wordRow(rule, 'clear', id);
  const measured = streamDistance(shape, stream, one.detector.at) - one.detector.radius;
  return leastRow(one, rule, id, measured, { required: 0 });
}

/** Objects, fixtures of no other rule, detectors of no common pair, and inside walls where the profile counts them. */
export function objectRows(one: Case, rule: EffectiveRule, walls: boolean): Row[] {
  const { level, detector } = one;
  const things = [
    ...level.objects.filter((object) => !carries(one, object)),
    ...level.fixtures.filter(({ kind }) => !isCovered(one, kind)),
  ].map((thing) => ({ ...thing, distance: shapeDistance(thing.shape, detector.at) }));
  const others = level.detectors
    .filter(({ id }) => id !== detector.id)
    .map(({ id, pair, at, radius, base, tall }) => ({
      id,
      beside: pair !== null && pair === detector.pair,
      bottom: base,
      top: base + tall,
      distance: Math.max(0, apart(at, detector.at) - radius),
    }))
    // The other of a pair is told by its own rule; but nothing stands inside of another, whatever the rule.
    .filter((other) => !other.beside || collides(one, other.distance, other));
  const rows = [...things, ...others]
    .filter(({ top }) => top > detector.base)
    .map((thing) =>
      leastRow(one, rule, thing.id, spaceDistance(one, thing.distance, thing.bottom), {
        entered: collides(one, thing.distance, thing),
      }),
    );
  return walls ? [...rows, ...wallRows(one, rule, false)] : rows;
}

/** Whether another rule of the profile keeps a distance from this kind of fixture. */
function isCovered({ plan }: Case, kind: string): boolean {
  return effectiveRules(plan.protocol).some(
    ({ subject }) => subject.of === 'fixture' && (subject.kinds as readonly string[]).includes(kind),
  );
}

function carries({ detector }: Case, { shape, top }: { shape: Shape; top: Mm }): boolean {
  return Math.abs(top - detector.base) <= CARRIES && shapeCarries(shape, detector.at, detector.radius);
}

/** What carries the detector: an object under its whole foot, or what its own `support` says. */
export function supportRows(one: Case, rule: EffectiveRule): Row[] {
  const under: PlanObject | undefined = one.level.objects.find((object) => carries(one, object));
  if (under) return [wordRow(rule, 'clear', under.id)];
  return one.detector.support ? [wordRow(rule, 'clear')] : [notRunRow(rule)];
}
