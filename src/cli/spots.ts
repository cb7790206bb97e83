import { levelBar } from '../../geometry/check/level.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Room } from '../../geometry/level/types.ts';
import { describeAssumedTops } from '../../geometry/messages/assumed-top.ts';
import { CAUTIONS, checkFigures, checkSubject } from '../../geometry/messages/index.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { bestPairs } from '../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../geometry/search/best-spots.ts';
import type { Limit } from '../../geometry/search/field/primitives.ts';
import { limitCheck } from '../../geometry/search/limit-check.ts';
import { type CliCommand, countOption, lengthOption } from './call.ts';
import { probeFor } from './probe.ts';

/** Default number of spots per level: about as many as a technician looks at. */
const COUNT = 5;

/** `spots FILE [--base MM] [--count N] [--pair]`: the best places for a detector, or for a collocated pair. */
export const spots: CliCommand = {
  name: 'spots',
  synopsis: 'FILE [--base MM] [--count N] [--pair]',
  summary: 'the best places for a detector, or for a pair side by side',
  options: ['base', 'count'],
  flags: ['pair'],
  run: (call) => {
    const base = lengthOption(call, 'base', USUAL_DETECTOR.base);
    const count = countOption(call, 'count', COUNT);
    const pair = call.flags.has('pair');
    const levels = call.plan.levels.map((level) => {
      const probe = probeFor(level, base);
      return { level, probe, places: placesOn(call.plan, level, probe, count, pair) };
    });
    return { text: call.json ? asJson(base, levels) : asText(call.plan, levels, pair), code: 0 };
  },
};

/** Lengths in mm; the margin is infinite if no rule has a subject to measure. */
interface Place {
  readonly axes: readonly XY[];
  readonly room: Room;
  readonly margin: number;
  readonly bound: number;
  readonly limitedBy: Limit | null;
}
interface LevelPlaces {
  readonly level: Level;
  readonly probe: Probe;
  readonly places: readonly Place[];
}

function placesOn(plan: Plan, level: Level, probe: Probe, count: number, pair: boolean): Place[] {
  const model = buildLevel(level);
  if (pair)
    return bestPairs(plan, model, probe, { count, anyGap: true }).map(({ at, ...place }) => ({ ...place, axes: at }));
  return bestSpots(plan, model, probe, { count }).map(({ at, ...place }) => ({ ...place, axes: [at] }));
}

function asJson(base: number, levels: readonly LevelPlaces[]): string {
  const document = {
    base,
    levels: levels.map(({ level, places }) => ({
      id: level.id,
      spots: places.map(({ axes, room, margin, bound, limitedBy }) => ({
        at: axes.length === 1 ? axes[0] : axes,
        room: room.label?.id ?? null,
        margin: finite(margin),
        bound: finite(bound),
        limitedBy,
      })),
    })),
    cautions: CAUTIONS,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

function finite(mm: number): number | null {
  return Number.isFinite(mm) ? mm : null;
}

function asText(plan: Plan, levels: readonly LevelPlaces[], pair: boolean): string {
  const lines = levels.flatMap(({ level, probe, places }) => {
    const bar = levelBar(plan, level);
    const none = `No place for ${pair ? 'a pair' : 'a detector'} at this height.`;
    return [
      level.name || level.id,
      ...(bar ? [`  ${bar}`] : []),
      ...(places.length === 0 ? [`  ${none}`] : []),
      ...places.map((place, k) => `  ${k + 1}. ${placeLine(plan, level, probe, place)}`),
      '',
    ];
  });
  return `${[...lines, 'Places are x and y on the page, in mm.', ...CAUTIONS].join('\n')}\n`;
}

function placeLine(plan: Plan, level: Level, probe: Probe, { axes, room, limitedBy }: Place): string {
  const at = axes.map(([x, y]) => `${Math.round(x)}, ${Math.round(y)}`).join(' and ');
  const row = limitedBy && limitCheck(plan, buildLevel(level), probe, axes, limitedBy);
  const spare = row
    ? `${checkFigures(row, plan).spare} ${limitedBy?.stream ? 'of' : 'at'}`
    : 'nothing to keep away from';
  const where = `${room.label?.name || room.label?.id} at ${at}`;
  const words = `${where}: ${[spare, row && checkSubject(row, plan, level)].filter(Boolean).join(' ')}.`;
  return [words, describeAssumedTops(level, axes, probe, plan.display.length)].filter(Boolean).join(' ');
}
