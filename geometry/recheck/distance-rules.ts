import type { Fixture, Mm, PlanObject, Shape } from '../plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import { wasKept, wasOff } from '../rules/running.ts';
import { apart, ringDistance } from './plane.ts';
import { type Case, leastRow, notRunRow, reasonRow } from './rows.ts';
import { shapeContainsDisc, shapeDistance, streamDistance } from './shapes.ts';
import type { Row } from './types.ts';

/** Rules that are not run while none of their subjects is drawn and nobody has stated that there is none. */
const LOOKED_FOR = ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain'];
/** Limit tolerance, mm. */
const LIMIT_TOLERANCE = 0.1;
/** An object supports the detector if its top is within this height of the base, mm. */
const SUPPORT_TOLERANCE = 3;

/** Returns the distance from the rim, in plan. */
const planDistance = ({ detector }: Case, distance: Mm): Mm => Math.max(0, distance - detector.radius);

/** Returns the distance from the detector in space, with the vertical distance between its top and the item's bottom. */
const spaceDistance = (one: Case, distance: Mm, bottom: Mm): Mm =>
  Math.hypot(planDistance(one, distance), Math.max(0, bottom - (one.detector.base + one.detector.tall)));

/** Returns whether the detector intersects the item, in plan and in height. */
function collides({ detector }: Case, distance: Mm, { bottom, top }: { bottom: Mm; top: Mm }): boolean {
  return distance < detector.radius && top > detector.base && bottom < detector.base + detector.tall;
}

/** Returns the rows, or the row for a rule without drawn subjects. */
function orNotDrawn({ level }: Case, rule: EffectiveRule, rows: Row[]): Row[] {
  if (rows.length > 0 || !LOOKED_FOR.includes(rule.id)) return rows;
  return [
    level.lookedFor?.includes(rule.id) ? { ...notRunRow(rule), verdict: 'clear', notRun: false } : notRunRow(rule),
  ];
}

/** Returns the rows of doors, windows and passages to the outside, and of the inside ones that the profile names. */
export function openingRows(one: Case, rule: EffectiveRule, inside: readonly string[]): Row[] {
  const holes = one.layout.holes.filter(({ outside, opening }) => outside || inside.includes(opening.kind));
  if (rule.least === null) return holes.length > 0 ? [notRunRow(rule)] : orNotDrawn(one, rule, []);
  const rows = holes.map(({ opening, ring }) =>
    leastRow(one, rule, opening.id, planDistance(one, ringDistance(one.detector.at, ring))),
  );
  return orNotDrawn(one, rule, rows);
}

/** Returns the rows of the faces of outside or inside walls. */
export function wallRows(one: Case, rule: EffectiveRule, outside: boolean): Row[] {
  const bodies = one.layout.bodies.filter((body) => body.outside === outside);
  if (rule.least === null) return bodies.length > 0 ? [notRunRow(rule)] : [];
  return bodies.map(({ wall, ring }) =>
    leastRow(one, rule, wall, planDistance(one, ringDistance(one.detector.at, ring))),
  );
}

/** Returns the rows of fixtures of the rule's kinds, and of air streams; a stream that is not drawn is not run. */
export function fixtureRows(
  one: Case,
  rule: EffectiveRule,
  { kinds, streams }: { kinds: readonly string[]; streams: readonly string[] },
): Row[] {
  const isNamed = ({ kind }: Fixture) => kinds.includes(kind) || streams.includes(kind);
  const named = one.level.fixtures.filter(isNamed).flatMap((fixture) => {
    const near = kinds.includes(fixture.kind);
    const blows = streams.includes(fixture.kind);
    const body = bodyRow(one, rule, fixture);
    const air = fixture.stream ? streamRow(one, rule, fixture) : { ...notRunRow(rule), required: null };
    const throws = fixture.stream || !(near || wasOff(one.plan, fixture.kind));
    return [...(near ? [body] : []), ...(blows && throws ? [air] : [])];
  });
  // Any drawn stream counts for a rule about direct airflow, also that of a heater or a dryer.
  const others = streams.length > 0 ? one.level.fixtures.filter((fixture) => fixture.stream && !isNamed(fixture)) : [];
  return [...orNotDrawn(one, rule, named), ...others.map((fixture) => streamRow(one, rule, fixture))];
}

/**
 * Returns the rows of machines that must be off while the detector is near: a condition of the visit, which no position meets by itself.
 */
export function machineRows(one: Case, rule: EffectiveRule, kinds: readonly string[]): Row[] {
  return one.level.fixtures
    .filter(({ kind }) => kinds.includes(kind))
    .map((fixture) => ({ row: bodyRow(one, rule, fixture), wasOff: wasKept(one.plan, fixture.kind) }))
    .filter(({ row }) => row.verdict === 'blocked')
    .map(({ row, wasOff }) =>
      wasOff ? reasonRow(rule, 'clear', row.subject) : { ...row, verdict: 'unknown', notRun: true },
    );
}

function bodyRow(one: Case, rule: EffectiveRule, fixture: Fixture): Row {
  const distance = shapeDistance(fixture.shape, one.detector.at);
  const intersects = collides(one, distance, fixture);
  if (rule.least === null && !intersects) return notRunRow(rule);
  return leastRow(one, rule, fixture.id, planDistance(one, distance), { intersects, required: rule.least ?? 0 });
}

/** Returns the row of a stream. The rim may touch its edge. */
function streamRow(one: Case, rule: EffectiveRule, { id, shape, stream }: Fixture): Row {
  if (!stream) return reasonRow(rule, 'clear', id);
  const measured = streamDistance(shape, stream, one.detector.at) - one.detector.radius;
  return leastRow(one, rule, id, measured, { required: 0 });
}

/** Returns the rows of objects, fixtures of no other rule, detectors of other pairs, and inside walls if the profile counts them. */
export function objectRows(one: Case, rule: EffectiveRule, walls: boolean): Row[] {
  const { level, detector } = one;
  const items = [
    ...level.objects.filter((object) => !isSupportedBy(one, object)),
    ...level.fixtures.filter(({ kind }) => !isCovered(one, kind)),
  ].map((item) => ({ ...item, distance: shapeDistance(item.shape, detector.at) }));
  const others = level.detectors
    .filter(({ id }) => id !== detector.id)
    .map(({ id, pair, at, radius, base, tall }) => ({
      id,
      beside: pair !== null && pair === detector.pair,
      bottom: base,
      top: base + tall,
      distance: Math.max(0, apart(at, detector.at) - radius),
    }))
    // The other detector of a pair has its own rule, but it must not be intersected either.
    .filter((other) => !other.beside || collides(one, other.distance, other));
  const rows = [...items, ...others]
    .filter(({ top }) => top > detector.base)
    .map((item) =>
      leastRow(one, rule, item.id, spaceDistance(one, item.distance, item.bottom), {
        intersects: collides(one, item.distance, item),
      }),
    );
  const all = walls ? [...rows, ...wallRows(one, rule, false)] : rows;
  const isOpen =
    all.every(({ verdict }) => verdict !== 'blocked') && items.some((item) => isMaybeInTheWay(one, rule, item));
  return isOpen ? [...all, { ...notRunRow(rule), required: null }] : all;
}

/** Returns whether an item is near, and only heights that nobody has measured put it below or above the detector. */
function isMaybeInTheWay(
  one: Case,
  rule: EffectiveRule,
  item: (Fixture | PlanObject) & { readonly distance: Mm },
): boolean {
  const { base, tall } = one.detector;
  const { bottom, top, bottomAnswered, topAnswered, distance } = item;
  const isAside = (topAnswered === false && top <= base) || (bottomAnswered === false && bottom > base + tall);
  return isAside && planDistance(one, distance) < (rule.least ?? 0) - LIMIT_TOLERANCE;
}

/** Returns whether the height of the detector depends on an object under it that nobody has measured. */
export function standsOnUnmeasured(one: Case): boolean {
  if (one.detector.support) return false;
  const under = one.level.objects.filter((object) => isSupportedBy(one, object));
  return under.length > 0 && under.every(({ topAnswered }) => topAnswered === false);
}

/** Returns whether another rule of the profile requires a distance from this kind of fixture. */
function isCovered({ plan }: Case, kind: string): boolean {
  return effectiveRules(plan.protocol).some(
    ({ subject }) => subject.of === 'fixture' && (subject.kinds as readonly string[]).includes(kind),
  );
}

function isSupportedBy({ detector }: Case, { shape, top }: { shape: Shape; top: Mm }): boolean {
  return Math.abs(top - detector.base) <= SUPPORT_TOLERANCE && shapeContainsDisc(shape, detector.at, detector.radius);
}

/** Returns the row of what supports the detector: an object under its whole footprint, or its own `support`. */
export function supportRows(one: Case, rule: EffectiveRule): Row[] {
  const under: PlanObject | undefined = one.level.objects.find((object) => isSupportedBy(one, object));
  if (under) return [reasonRow(rule, 'clear', under.id)];
  return one.detector.support ? [reasonRow(rule, 'clear')] : [notRunRow(rule)];
}
