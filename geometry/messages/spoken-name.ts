import { roomAt } from '../check/room.ts';
import type { LevelModel } from '../level/types.ts';
import type { Level, Opening, XY } from '../plan/model.ts';
import { FIXTURE_NOUN, listed } from '../plan/nouns.ts';
import { along, distance } from '../plane/point.ts';
import { jambs } from '../snap/pick.ts';

/** A room is looked up this far from the face of a wall, mm. */
const BESIDE = 50;

/**
 * Returns the name of an item for use without context: "A1", "door 2 of Bedroom", "sump pit", "wall 3". Items with the same noun are
 * numbered in file order, as in the list of the level. "" for an id that is not on the level.
 */
export function spokenName(level: Level, model: LevelModel | null, id: string): string {
  const detector = level.detectors.find((one) => one.id === id);
  if (detector) return detector.label.trim() || 'detector without a label';
  const fixture = level.fixtures.find((one) => one.id === id);
  if (fixture) return fixture.name.trim() || numbered(FIXTURE_NOUN[fixture.kind], unnamed(level, fixture.kind), id);
  const object = level.objects.find((one) => one.id === id);
  if (object) return object.name.trim() || 'object without a name';
  const room = level.rooms.find((one) => one.id === id);
  if (room) return room.name.trim() || 'room without a name';
  const opening = level.openings.find((one) => one.id === id);
  if (opening) return openingName(level, model, opening);
  return level.walls.some((one) => one.id === id) ? `wall ${level.walls.findIndex((one) => one.id === id) + 1}` : '';
}

const unnamed = ({ fixtures }: Level, kind: string) =>
  fixtures.filter((one) => one.kind === kind && one.name.trim() === '');

function numbered(noun: string, same: readonly { readonly id: string }[], id: string): string {
  return same.length > 1 ? `${noun} ${same.findIndex((one) => one.id === id) + 1}` : noun;
}

function openingName(level: Level, model: LevelModel | null, opening: Opening): string {
  const same = level.openings.filter(({ kind }) => kind === opening.kind);
  const rooms = model ? roomsBeside(level, model, opening) : [];
  const noun = numbered(opening.kind, same, opening.id);
  return rooms.length > 0 ? `${noun} of ${listed(rooms)}` : noun;
}

/** Returns the names of the rooms on both sides of an opening. */
function roomsBeside(level: Level, model: LevelModel, opening: Opening): readonly string[] {
  const ends = jambs(level, opening);
  const wall = level.walls.find(({ id }) => id === opening.wall);
  if (!ends || !wall) return [];
  const [near, far] = ends;
  const [x, y] = along(near, far, 0.5);
  const off = (wall.thickness / 2 + BESIDE) / (distance(near, far) || 1);
  const [nx, ny] = [(near[1] - far[1]) * off, (far[0] - near[0]) * off];
  const sides: readonly XY[] = [
    [x + nx, y + ny],
    [x - nx, y - ny],
  ];
  const names = sides.map((side) => roomAt(model, side)?.label?.name.trim() ?? '').filter(Boolean);
  return [...new Set(names)];
}
