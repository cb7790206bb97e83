// Only the shapes that are drawn here: each registers itself with the library's core.
import { selectLevelAtRest } from '../../state/selectors.ts';
import 'konva/lib/shapes/Rect';
import type { Rect as RectNode } from 'konva/lib/shapes/Rect';
import 'konva/lib/shapes/Transformer';
import type { Transformer as TransformerNode } from 'konva/lib/shapes/Transformer';
import { useEffect, useRef } from 'react';
import { Layer, Rect, Stage, Transformer } from 'react-konva/lib/ReactKonvaCore';
import { withTracing } from '../../../geometry/edit/index.ts';
import type { Tracing } from '../../../geometry/plan/model.ts';
import { useAppStore } from '../../state/store.ts';
import { toPlan, toScreen } from '../../state/viewport.ts';
import { THEMES } from '../../theme/tokens.ts';
import { useTracingFrame } from './tracing-frame-store.ts';

/** A turn snaps to level and plumb within this, degrees. */
const SNAP_DEG = 3;

/** Handles around the tracing image, over the whole sheet: drag it, turn it, pull its corners. Escape or the button ends it. */
export default function TracingFrame() {
  const size = useAppStore((state) => state.stageSize);
  const viewport = useAppStore((state) => state.viewport);
  // From the plan, not the draft: during a drag the handles are ahead of it.
  const tracing = useAppStore((state) => selectLevelAtRest(state).tracing);
  const theme = THEMES[useAppStore((state) => state.theme)];
  const frame = useRef<RectNode>(null);
  const grips = useRef<TransformerNode>(null);
  useEffect(() => {
    if (frame.current) grips.current?.nodes([frame.current]);
  });
  useEffect(() => close, []);
  if (!tracing) return null;
  const [x, y] = toScreen(viewport, tracing.at);
  const [width, height] = [
    tracing.width * tracing.scale * viewport.scale,
    tracing.height * tracing.scale * viewport.scale,
  ];
  const follow = () => {
    const { current } = frame;
    if (!current) return;
    // The library draws nothing by itself: `SheetStage` switched that off.
    current.getLayer()?.batchDraw();
    useAppStore.getState().setDraft(withPulled(tracing, current));
  };
  const settle = () => {
    const { current } = frame;
    if (!current) return;
    const pulled = withPulled(tracing, current);
    current.scale({ x: 1, y: 1 });
    if (pulled) useAppStore.getState().run(() => pulled);
  };
  return (
    <div className="tracing-frame">
      <Stage width={size.width} height={size.height}>
        <Layer>
          <Rect
            ref={frame}
            x={x}
            y={y}
            offsetX={width / 2}
            offsetY={height / 2}
            width={width}
            height={height}
            rotation={tracing.turn}
            stroke={theme.accent}
            strokeWidth={2}
            strokeScaleEnabled={false}
            dash={[6, 4]}
            draggable
            onDragMove={follow}
            onDragEnd={settle}
            onTransform={follow}
            onTransformEnd={settle}
          />
          <Transformer
            ref={grips}
            keepRatio
            flipEnabled={false}
            enabledAnchors={['top-left', 'top-right', 'bottom-left', 'bottom-right']}
            rotationSnaps={[0, 90, 180, 270]}
            rotationSnapTolerance={SNAP_DEG}
            anchorSize={24}
            anchorFill={theme.paper}
            anchorStroke={theme.accent}
            borderEnabled={false}
          />
        </Layer>
      </Stage>
      <button type="button" className="button button--main tracing-frame__done" onClick={close}>
        The picture lies right
      </button>
    </div>
  );
}

/** Returns the plan with the image where its frame was dragged to; null when no plan could hold it. */
function withPulled(tracing: Tracing, frame: RectNode) {
  const state = useAppStore.getState();
  const level = selectLevelAtRest(state);
  const edited = withTracing(state.plan, level.id, {
    ...tracing,
    at: toPlan(state.viewport, [frame.x(), frame.y()]),
    scale: tracing.scale * frame.scaleX(),
    turn: Math.round(frame.rotation() * 1000) / 1000,
  });
  return edited.ok ? edited.plan : null;
}

const close = () => useTracingFrame.setState({ open: false });
