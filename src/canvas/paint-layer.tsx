import type { Context } from 'konva/lib/Context';
import type { Shape as KonvaShape } from 'konva/lib/Shape';
import { Layer, Shape } from 'react-konva';
import { THEMES } from '../design/tokens.ts';
import { useAppStore } from '../state/store.ts';
import type { Pen } from './paint/pen.ts';

interface Props {
  readonly name: string;
  /** Draws the layer in screen pixels. A new function is a new picture. */
  readonly paint: (pen: Pen) => void;
}

/** One canvas of the stage. It listens to nothing: what is under the pointer is found by `geometry/pick.ts`. */
export function PaintLayer({ name, paint }: Props) {
  const view = useAppStore((state) => state.viewport);
  const theme = useAppStore((state) => THEMES[state.theme]);
  const unit = useAppStore((state) => state.plan.display.length);
  const draw = (context: Context, shape: KonvaShape) => {
    const ratio = shape.getLayer()?.getCanvas().getPixelRatio() ?? 1;
    const ctx = context._context;
    ctx.save();
    paint({ ctx, view, theme, unit, ratio });
    ctx.restore();
  };
  return (
    <Layer listening={false} name={name}>
      <Shape listening={false} sceneFunc={draw} />
    </Layer>
  );
}
