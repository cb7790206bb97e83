import { footprintSize } from '../../../geometry/dimension/footprint.ts';
import type { Handle } from '../../../geometry/edit/reshape.ts';
import { tapedLength } from '../../../geometry/edit/wall-run.ts';
import { TAPED_BY_WORDS } from '../../../geometry/messages/taped-by.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { formatLength, formatMeasured } from '../../../geometry/units/index.ts';
import { store } from './tool-context.ts';

/** Returns the measure that a handle changes, in words, for the note beside the pointer. */
export function handleMeasure(level: Level, { kind, id }: Handle): readonly string[] {
  const length = (mm: number) => formatLength(mm, store().plan.display.length);
  const wall = level.walls.find((each) => each.id === id);
  const { by } = store().wallSettings;
  if (wall) {
    const taped = tapedLength(level, [wall.from, wall.to], by);
    return [`${formatMeasured(taped, store().plan.display.length)} ${TAPED_BY_WORDS[by]}`];
  }
  const opening = level.openings.find((each) => each.id === id);
  if (opening) return [`${length(opening.width)} wide`];
  const fixture = level.fixtures.find((each) => each.id === id);
  if (kind === 'stream' && fixture?.stream)
    return [`Reaches ${length(fixture.stream.reach)}`, `toward ${Math.round(fixture.stream.direction)}°`];
  const thing = fixture ?? level.objects.find((each) => each.id === id);
  if (!thing) return [];
  const { across, width, depth, turn } = footprintSize(thing.shape);
  if (kind === 'turn' && turn !== null) return [`Turned ${Math.round(turn)}°`];
  if (across !== null) return [`${length(across)} across`];
  return width !== null && depth !== null ? [`${length(width)} × ${length(depth)}`] : [];
}
