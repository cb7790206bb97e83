import { buildLevel } from '../../geometry/level/build-level.ts';
import { CAUTIONS } from '../../geometry/messages/index.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { formatArea } from '../../geometry/units/index.ts';
import { type CliCommand, lengthOption } from './call.ts';
import { probeFor } from './probe.ts';

const SQUARE_METER = 1e6;

/** `area FILE [--base MM]`: floor area of each room, and its allowed area. */
export const area: CliCommand = {
  name: 'area',
  synopsis: 'FILE [--base MM]',
  summary: 'the floor of each room, and its allowed area',
  options: ['base'],
  run: (call) => {
    const base = lengthOption(call, 'base', USUAL_DETECTOR.base);
    const levels = call.plan.levels.map((level) => ({ level, rooms: roomAreas(call.plan, level, base) }));
    if (call.json) {
      const document = {
        base,
        levels: levels.map(({ level, rooms }) => ({ id: level.id, rooms: rooms.map(inSquareMeters) })),
      };
      return { text: `${JSON.stringify(document, null, 2)}\n`, code: 0 };
    }
    return { text: asText(call.plan, levels), code: 0 };
  },
};

/** Areas in mm²; `sittable`, the allowed area, is null if it cannot be decided; `barred` is the reason for zero or null, else empty. */
interface RoomArea {
  readonly id: string | null;
  readonly name: string;
  readonly floor: number;
  readonly sittable: number | null;
  readonly barred: string;
}

function roomAreas(plan: Plan, level: Level, base: number): RoomArea[] {
  return levelRegion(plan, buildLevel(level), probeFor(level, base)).rooms.map(
    ({ room, area: sittable, barred, decided }) => ({
      id: room.label?.id ?? null,
      name: room.label?.name || room.label?.id || 'room without a label',
      floor: room.floorArea,
      sittable: decided ? sittable : null,
      barred,
    }),
  );
}

function inSquareMeters({ id, floor, sittable }: RoomArea) {
  return { id, floorArea: floor / SQUARE_METER, sittableArea: sittable === null ? null : sittable / SQUARE_METER };
}

function asText(plan: Plan, levels: { level: Level; rooms: RoomArea[] }[]): string {
  const unit = plan.display.length;
  const lines = levels.flatMap(({ level, rooms }) => [
    level.name || level.id,
    ...(rooms.length === 0 ? ['  No room is closed on this level.'] : []),
    ...rooms.map(({ name, floor, sittable, barred }) => {
      const spot = sittable === null ? 'not known' : formatArea(sittable, unit);
      return `  ${name}: floor ${formatArea(floor, unit)}, allowed area ${spot}${barred ? `. ${barred}` : ''}`;
    }),
    '',
  ]);
  return `${[...lines, ...CAUTIONS].join('\n')}\n`;
}
