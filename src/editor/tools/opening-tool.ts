import { unmeasuredHeights } from '../../../geometry/edit/index.ts';
import { openingRefusal } from '../../../geometry/messages/index.ts';
import type { Opening, OpeningKind } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { cornerLines, fitOpening, wallAt } from '../../../geometry/snap/opening-fit.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { openingLike } from '../../state/last-sizes.ts';
import { selectModel } from '../../state/selectors.ts';
import { askForOpening } from '../lengths/set-out.ts';
import { clearSketch, type OpeningPreview, useSketch } from '../overlay/sketch.ts';
import { currentLevel, gridFor, store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

/** Puts a door, window or passage into a wall; until then previews it at the pointer with its distances to both corners. */
export function createOpeningTool(kind: OpeningKind): ToolController {
  let refused = '';
  const refuse = (words: string) => {
    refused = words;
    store().say(words);
  };
  const show = (point: ToolPoint): OpeningPreview | null => {
    const preview = previewAt(kind, point);
    // Removes a refusal once the pointer is at a place that fits.
    if (refused && preview?.refusal === '' && store().message === refused) store().say('');
    useSketch.setState({ opening: preview, reading: preview ? offsetsInWords(preview) : [] });
    return preview;
  };
  return {
    hover: show,
    down: () => undefined,
    drag: show,
    up: (point) => {
      const preview = show(point);
      if (!preview) {
        refuse(`A ${kind} goes into a wall. Press on the wall.`);
        return;
      }
      if (preview.refusal) {
        refuse(preview.refusal);
        return;
      }
      clearSketch();
      const id = store().addItem('openings', preview.opening);
      if (id) askForOpening(id);
    },
    out: clearSketch,
    cancel: () => {
      clearSketch();
      return false;
    },
  };
}

function previewAt(kind: OpeningKind, point: ToolPoint): OpeningPreview | null {
  const level = currentLevel();
  const place = wallAt(level, point.plan, point.reach * 2);
  if (!place) return null;
  const { wall } = place;
  const { width, bottom, top } = openingLike(level, kind);
  const fit = fitOpening(level, wall, place.along, width, gridFor(point));
  const heights = { bottom: Math.min(bottom, level.ceiling), top: Math.min(top, level.ceiling) };
  const opening: Omit<Opening, 'id'> = {
    wall: wall.id,
    kind,
    offset: fit.offset,
    width,
    ...heights,
    ...unmeasuredHeights(heights),
  };
  const refusal = openingRefusal(level, { id: '', ...opening }, store().plan.display.length);
  return { wall, opening, refusal, offsets: cornerLines(selectModel(store()), wall, fit.offset, width, point.plan) };
}

function offsetsInWords({ offsets, refusal }: OpeningPreview): readonly string[] {
  if (refusal) return [refusal];
  const unit = store().plan.display.length;
  const [near, far] = offsets.map((line) => formatMeasured(distance(...line), unit));
  return [`${near} and ${far} to the corners`];
}
