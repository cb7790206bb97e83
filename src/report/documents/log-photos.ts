import type { Plan } from '../../../geometry/plan/model.ts';
import { isShowable } from '../../drawing/picture-head.ts';
import { logEntryOf } from '../../protocol/custody/log-entries.ts';
import { type Block, besides, paragraph, stack } from '../block.ts';
import type { FlowItem } from '../flow.ts';
import { COLOR, LINE_MM } from '../style.ts';
import { element, rectElement } from '../svg.ts';
import { headingItem } from '../table.ts';
import { shortened, type TextStyle } from '../text.ts';
import { placedDetectors } from './detector-places.ts';

/** Size of a photo, mm, for five in a row; the plan file keeps the photos in full size. */
const PHOTO = { width: 46, height: 34, gap: 4 } as const;
const NAME: TextStyle = { size: 2.75 };

/** Returns the photos of the detectors with their names, in rows. */
export function photoItems(plan: Plan, width: number): readonly FlowItem[] {
  const photos = placedDetectors(plan).flatMap(({ detector, name }) =>
    logEntryOf(plan, detector.id).photos.map((image, i, { length }) =>
      photoBlock(image, length > 1 ? `${name}, ${i + 1} of ${length}` : name),
    ),
  );
  const perRow = Math.max(1, Math.floor((width + PHOTO.gap) / (PHOTO.width + PHOTO.gap)));
  const rows = Array.from({ length: Math.ceil(photos.length / perRow) }, (_, i) =>
    photos.slice(i * perRow, (i + 1) * perRow),
  );
  if (rows.length === 0) return [];
  return [
    headingItem('Photos', width),
    ...rows.map((row) => ({
      block: besides(row.map((block, i) => ({ left: i * (PHOTO.width + PHOTO.gap), block }))),
      above: 2,
    })),
  ];
}

function photoBlock(image: string, name: string): Block {
  const { width, height } = PHOTO;
  const picture: Block = {
    height: height + 0.8,
    draw: (x, y) =>
      (isShowable(image)
        ? element('image', { href: image, x, y, width, height, preserveAspectRatio: 'xMidYMid meet' })
        : '') + rectElement(x, y, width, height, { fill: 'none', stroke: COLOR.inkSoft, 'stroke-width': LINE_MM.rule }),
  };
  return stack([picture, paragraph(shortened(name, width, NAME), width, NAME)]);
}
