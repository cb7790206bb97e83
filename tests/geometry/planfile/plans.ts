import fc from 'fast-check';
import { FIXTURE_KINDS, ROOM_USES } from '../../../geometry/plan/model.ts';

/** Plans as in files, valid in structure and in meaning; keys with a default are sometimes omitted. */
type Json = Readonly<Record<string, unknown>>;

const coordinate = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: -20_000, max: 20_000 }) },
  fc.double({ min: -1e7, max: 1e7, noNaN: true }),
);
const size = fc.oneof(fc.integer({ min: 0, max: 5000 }), fc.double({ min: 0, max: 1e4, noNaN: true }));
const height = fc.double({ min: -1e5, max: 1e5, noNaN: true });
const point = fc.tuple(coordinate, coordinate);
const text = fc.oneof(fc.string({ maxLength: 12 }), fc.string({ unit: 'grapheme', maxLength: 6 }));
const extraKey = fc.oneof(
  fc.constantFrom('__proto__', 'constructor', 'prototype', 'toString', 'note~/1', ''),
  fc.string({ maxLength: 6 }).map((key) => `x-${key}`),
);

/** Returns records with some keys omitted, and some unknown keys added at the front and at the back. */
function loose(required: Record<string, fc.Arbitrary<unknown>>, optional: Record<string, fc.Arbitrary<unknown>> = {}) {
  const known = fc.record({ ...required, ...optional }, { requiredKeys: Object.keys(required) });
  const unknown = fc.array(fc.tuple(extraKey, fc.jsonValue({ maxDepth: 2 })), { maxLength: 1 });
  return fc.tuple(unknown, known, unknown).map(([front, middle, back]): Json => {
    return Object.fromEntries([...front, ...Object.entries(middle), ...back]);
  });
}

/** A star-shaped ring: corners in the order of their angles about a middle, so that it is simple. */
const ring = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 35 }), { minLength: 3, maxLength: 8 }),
    fc.array(fc.integer({ min: 100, max: 900 }), { minLength: 8, maxLength: 8 }),
    fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })),
  )
  // Without gaps of half a turn or more: else the middle is outside and the sides may touch there.
  .filter(([angles]) => {
    const sorted = [...angles].sort((a, b) => a - b);
    return sorted.every((angle, i) => (sorted[i + 1] ?? (sorted[0] as number) + 36) - angle < 18);
  })
  .map(([angles, radii, [x, y]]) =>
    [...angles]
      .sort((a, b) => a - b)
      .map((angle, index) => {
        const radius = radii[index] as number;
        return [x + radius * Math.cos((angle * Math.PI) / 18), y + radius * Math.sin((angle * Math.PI) / 18)];
      }),
  );

const shape = fc.oneof(
  fc.record({ circle: loose({ center: point, radius: size }) }),
  fc.record({ box: loose({ center: point, width: size, depth: size }, { turn: coordinate }) }),
  fc.record({ polygon: fc.record({ points: ring }) }),
);
const stream = loose({ direction: coordinate, spread: fc.integer({ min: 0, max: 360 }), reach: size });
const heights = fc
  .tuple(fc.integer({ min: -500, max: 3000 }), fc.integer({ min: 0, max: 3000 }))
  .map(([bottom, tall]) => ({ bottom, top: bottom + tall }));
const radon = fc.constantFrom('pCi/L', 'Bq/m3');
/** Returns the value, or sometimes null. */
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

const wall = loose({ from: point, to: point, thickness: size }, { side: fc.constantFrom('auto', 'outside', 'inside') });
const withHeights = (thing: fc.Arbitrary<Json>) =>
  fc.tuple(thing, heights).map(([one, two]): Json => ({ ...one, ...two }));
const fixture = withHeights(
  loose({ kind: fc.constantFrom(...FIXTURE_KINDS), shape }, { name: text, stream: orNull(stream) }),
);
const object = withHeights(loose({ shape }, { name: text }));
const room = loose({ name: text, use: fc.constantFrom(...ROOM_USES), at: point });
const detector = loose(
  { at: point, base: height, radius: size, tall: size },
  { label: text, pair: orNull(fc.string({ minLength: 1, maxLength: 3 })) },
);
/** Where an opening is along its wall, as a fraction of the free length, and its width, as a fraction of the wall. */
const shade = fc.oneof(
  fc.constantFrom('covered', 'well', null),
  loose(
    {},
    { overhang: loose({ depth: size, above: size }), obstruction: fc.double({ min: 0, max: 90, noNaN: true }) },
  ),
);

const opening = fc.tuple(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.double({ min: 0.01, max: 1, noNaN: true }),
  withHeights(loose({ kind: fc.constantFrom('door', 'window', 'passage') }, { glazed: fc.boolean(), shade })),
);

const tracing = loose(
  {
    image: fc.constant('data:image/jpeg;base64,/9j/'),
    width: fc.integer({ min: 1, max: 9000 }),
    height: fc.integer({ min: 1, max: 9000 }),
    at: point,
    scale: fc.double({ min: 0.01, max: 100, noNaN: true }),
  },
  {
    name: text,
    turn: coordinate,
    opacity: fc.double({ min: 0, max: 1, noNaN: true }),
    shown: fc.boolean(),
    locked: fc.boolean(),
  },
);
const level = fc.record({
  head: loose(
    {
      name: text,
      order: fc.integer({ min: 0, max: 9 }),
      ceiling: fc.integer({ min: 1, max: 9000 }),
      living: fc.constantFrom('lived-in', 'could-be', 'no'),
      ground: fc.constantFrom('basement', 'slab', 'crawlspace', 'none'),
    },
    { tracing },
  ),
  walls: fc.array(wall, { maxLength: 4 }),
  openings: fc.array(opening, { maxLength: 2 }),
  rooms: fc.array(room, { maxLength: 2 }),
  fixtures: fc.array(fixture, { maxLength: 3 }),
  objects: fc.array(object, { maxLength: 2 }),
  detectors: fc.array(detector, { maxLength: 2 }),
});
type LevelParts = typeof level extends fc.Arbitrary<infer T> ? T : never;

const lengthOf = ({ from, to }: Json) => {
  const [[ax, ay], [bx, by]] = [from, to] as [[number, number], [number, number]];
  return Math.hypot(bx - ax, by - ay);
};

function assembled({ head, walls, openings, ...lists }: LevelParts, fresh: (prefix: string) => string): Json {
  const named = (things: readonly Json[], prefix: string) =>
    things.map((thing): Json => ({ id: fresh(prefix), ...thing }));
  const ownWalls = named(walls, 'w');
  const wide = ownWalls.filter((one) => lengthOf(one) > 10 && lengthOf(one) < 1e7);
  const holes = openings.flatMap(([where, share, thing], index): Json[] => {
    const host = wide[index % Math.max(1, wide.length)];
    if (!host) return [];
    const width = share * lengthOf(host);
    return [{ id: fresh('o'), wall: host.id, width, offset: where * (lengthOf(host) - width), ...thing }];
  });
  const all = {
    openings: holes,
    rooms: named(lists.rooms, 'r'),
    fixtures: named(lists.fixtures, 'f'),
    objects: named(lists.objects, 't'),
    detectors: named(lists.detectors, 'd'),
  };
  const present = Object.entries(all).filter(([, list]) => list.length > 0);
  return { id: fresh('L'), ...head, walls: ownWalls, ...Object.fromEntries(present) };
}

const hours = fc.integer({ min: 1, max: 200 });
const instant = fc.constantFrom(
  '2026-03-07T18:00:00-05:00',
  '2024-02-29T00:00:00Z',
  '2026-12-31T23:59:59.25+14:00',
  null,
);
const later = fc.constantFrom('2027-03-10T06:00:00-05:00', null);
const RULES = [
  'ceiling',
  'outside-opening',
  'outside-wall',
  'moving-air',
  'heat',
  'direct-sun',
  'sump',
  'floor-drain',
  'object',
];
const override = fc.record({
  rule: fc.constantFrom(...RULES),
  distance: size,
  note: fc.constantFrom('county form', 'kit sheet'),
});

const sections = {
  title: text,
  display: loose({}, { length: fc.constantFrom('feet-inches', 'metric'), radon: fc.constantFrom('pCi/L', 'Bq/m3') }),
  site: loose(
    {},
    {
      label: text,
      timeZone: fc.constantFrom('America/New_York', 'Europe/Dublin', 'UTC', 'Asia/Kolkata'),
      latitude: orNull(fc.double({ min: -90, max: 90, noNaN: true })),
      longitude: orNull(fc.double({ min: -180, max: 180, noNaN: true })),
      north: coordinate,
      horizon: fc.double({ min: 0, max: 90, noNaN: true }),
      purpose: fc.constantFrom('own-household', 'property-transfer', 'after-mitigation'),
    },
  ),
  protocol: loose(
    {},
    {
      profile: fc.constant('home-short-term'),
      overrides: fc.uniqueArray(override, { selector: ({ rule }) => rule, maxLength: 3 }),
    },
  ),
  tapeTolerance: fc.double({ min: 0, max: 1e3, noNaN: true }),
  kit: fc
    .tuple(
      loose(
        {},
        {
          kind: text,
          labDays: fc.integer({ min: 0, max: 20 }),
          lot: text,
          detectionLimit: loose({ value: size, unit: radon }),
        },
      ),
      hours,
      hours,
    )
    .map(([kit, a, b]) => ({
      ...kit,
      minimumHours: Math.min(a, b),
      maximumHours: Math.max(a, b),
    })),
  visit: loose(
    {},
    {
      closedSince: instant,
      mitigationOnSince: instant,
      start: instant,
      end: later,
      plannedEnd: instant,
      closedUntil: instant,
      posted: instant,
      received: instant,
      device: fc.constantFrom('passive', 'monitor'),
      forecast: loose(
        {},
        {
          sustained: fc.option(fc.integer({ min: 0, max: 200 })),
          storm: fc.option(fc.boolean()),
          at: instant,
          source: text,
          note: text,
        },
      ),
    },
  ),
  conditions: fc.array(
    loose(
      {
        item: fc.constantFrom('windows-closed', 'fans-off'),
        state: fc.constantFrom('kept', 'broken', 'not-applicable', 'unknown'),
      },
      { at: instant, note: text },
    ),
    { maxLength: 2 },
  ),
  practice: loose({
    days: fc.array(
      loose({ day: fc.constantFrom('mon', 'sun'), from: fc.constant('08:30'), to: fc.constant('17:00') }),
      {
        maxLength: 2,
      },
    ),
    daysOff: fc.array(fc.constantFrom('2026-11-26', '2028-02-29'), { maxLength: 2 }),
  }),
  weather: fc.array(loose({ text }, { at: instant }), { maxLength: 1 }),
  agreement: loose({}, { signedBy: text, at: instant, refused: fc.boolean(), note: text }),
  earlier: fc.array(
    loose(
      { value: size, unit: radon, term: fc.constantFrom('short-term', 'long-term') },
      { at: instant, note: text, detector: fc.constant(null) },
    ),
    { maxLength: 1 },
  ),
  quality: fc
    .array(
      loose(
        { kind: fc.constantFrom('blank', 'spike'), value: size, unit: radon },
        { at: instant, serial: text, by: text, reference: orNull(size), detectionLimit: orNull(size), note: text },
      ),
      { maxLength: 2 },
    )
    .map((checks) => checks.map((check, index) => ({ ...check, id: `q${index + 1}` }))),
};

const logEntry = loose(
  {},
  {
    serial: text,
    placed: fc.boolean(),
    placedBy: text,
    fetchedBy: text,
    sealed: instant,
    tampering: fc.constantFrom('none', 'seen', 'unknown'),
    note: text,
    photos: fc.array(fc.constant('data:image/png;base64,AAAA'), { maxLength: 1 }),
    custody: fc.array(loose({ from: text, to: text }, { at: instant, note: text }), { maxLength: 2 }),
  },
);

/** A valid file, as the value that its JSON contains. */
export const planFile: fc.Arbitrary<Json> = fc
  .tuple(
    loose({ format: fc.constant('stillspot-plan'), version: fc.constant(1) }, sections),
    fc.array(level, { minLength: 1, maxLength: 2 }),
    fc.integer({ min: 0, max: 9 }),
    radon,
    fc.option(logEntry, { nil: null }),
  )
  .map(([head, levels, value, unit, entry]): Json => {
    const counts = new Map<string, number>();
    const fresh = (prefix: string) => {
      counts.set(prefix, (counts.get(prefix) ?? 0) + 1);
      return `${prefix}${counts.get(prefix)}`;
    };
    const built = levels.map((parts) => assembled(parts, fresh));
    const detectors = built.flatMap((one) => (one.detectors ?? []) as Json[]);
    const readings = detectors.map(({ id }) => ({ detector: id, value: value + 0.5, unit }));
    const log = entry ? detectors.map(({ id }) => ({ ...entry, detector: id })) : [];
    return {
      ...head,
      levels: built,
      ...(readings.length > 0 ? { readings } : {}),
      ...(log.length > 0 ? { log } : {}),
    };
  });

const EMPTY_LEVEL = { id: 'L1', name: '', order: 0, ceiling: 2400, living: 'lived-in', ground: 'basement', walls: [] };

/** Returns the smallest valid file, with one change. */
export function smallFile(change: Json = {}): Json {
  return { format: 'stillspot-plan', version: 1, levels: [EMPTY_LEVEL], ...change };
}
