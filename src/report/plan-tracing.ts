/** The photo or scan that the level was traced from, drawn faintly under the walls. */
import type { Tracing } from '../../geometry/plan/model.ts';
import { isShowable } from '../drawing/picture-head.ts';
import type { Area } from './paper.ts';
import { element, group, num } from './svg.ts';
import { onPaper, toPaper, type View } from './view.ts';

const FIELD = 'tracing-field';
/** Opacity, low enough that no line of the picture is taken for one of the drawing. */
const STRENGTH = 0.3;

/** Returns the picture clipped to `area`, blended by multiplication so that white stays white; empty if it cannot be shown. */
export function drawTracing({ image, width, height, at, scale, turn }: Tracing, view: View, area: Area): string {
  if (!isShowable(image)) return '';
  const [x, y] = toPaper(view, at);
  const [w, h] = [onPaper(view, width * scale), onPaper(view, height * scale)];
  return group(
    { 'clip-path': `url(#${FIELD})` },
    element('clipPath', { id: FIELD }, element('rect', { ...area })),
    element('image', {
      href: image,
      x: -w / 2,
      y: -h / 2,
      width: w,
      height: h,
      preserveAspectRatio: 'none',
      opacity: STRENGTH,
      style: 'mix-blend-mode:multiply',
      transform: `translate(${num(x)} ${num(y)}) rotate(${num(turn)})`,
    }),
  );
}
