// Imports only the shapes that are drawn here; each registers itself with the library's core.
import 'konva/lib/shapes/Rect';
import type { Rect as RectNode } from 'konva/lib/shapes/Rect';
import 'konva/lib/shapes/Transformer';
import type { Transformer as TransformerNode } from 'konva/lib/shapes/Transformer';
import { useEffect, useRef } from 'react';
import { Layer, Rect, Stage, Transformer } from 'react-konva/lib/ReactKonvaCore';
import { withTracing } from '../../../geometry/edit/index.ts';
import type { Tracing } from '../../../geometry/plan/model.ts';
import { selectLevelAtRest } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { toPlan, toScreen } from '../../state/viewport.ts';
import { THEMES } from '../../theme/tokens.ts';

/** A turn snaps to level and plumb within this, degrees. */
const SNAP_DEG = 3;

/**
 * Handles around the tracing image, over the whole sheet: drag it, turn it, pull its corners. Escape or the button closes them. They have a
 * separate stage, because the stage of the sheet takes no events (its pointers belong to the tools) and this one is loaded on demand, with
 * react-konva and the Transformer.
 */
export default function TracingFrame() {
  const size = useAppStore((state) => state.stageSize);
  // From the plan, not the preview: during a drag the library moves the handles itself.
  const tracing = useAppStore((state) => selectLevelAtRest(state).tracing);
  useEffect(() => close, []);
  if (!tracing) return null;
  return (
    <div className="tracing-frame">
      <Stage width={size.width} height={size.height}>
        <Layer>
          <Frame tracing={tracing} />
        </Layer>
      </Stage>
      <button type="button" className="button button--main tracing-frame__done" onClick={close}>
        The picture is in place
      </button>
    </div>
  );
}

/** The frame with its grips. A drag previews the image; its end is one step of history. */
function Frame({ tracing }: { readonly tracing: Tracing }) {
  const viewport = useAppStore((state) => state.viewport);
  const theme = THEMES[useAppStore((state) => state.theme)];
  const frame = useRef<RectNode>(null);
  const grips = useRef<TransformerNode>(null);
  useEffect(() => {
    if (frame.current) grips.current?.nodes([frame.current]);
  });
  const [x, y] = toScreen(viewport, tracing.at);
  const widthPx = tracing.width * tracing.scale * viewport.scale;
  const heightPx = tracing.height * tracing.scale * viewport.scale;
  const follow = () => frame.current && showPulled(tracing, frame.current);
  const settle = () => frame.current && takePulled(tracing, frame.current);
  return (
    <>
      <Rect
        ref={frame}
        x={x}
        y={y}
        offsetX={widthPx / 2}
        offsetY={heightPx / 2}
        width={widthPx}
        height={heightPx}
        rotation={tracing.turn}
        stroke={theme.accent}
        {...FRAME_STYLE}
        draggable
        onDragMove={follow}
        onDragEnd={settle}
        onTransform={follow}
        onTransformEnd={settle}
      />
      <Transformer ref={grips} {...GRIPS} anchorFill={theme.paper} anchorStroke={theme.accent} />
    </>
  );
}

const FRAME_STYLE = { strokeWidth: 2, strokeScaleEnabled: false, dash: [6, 4] };
const GRIPS = {
  keepRatio: true,
  flipEnabled: false,
  enabledAnchors: ['top-left', 'top-right', 'bottom-left', 'bottom-right'],
  rotationSnaps: [0, 90, 180, 270],
  rotationSnapTolerance: SNAP_DEG,
  anchorSize: 24,
  borderEnabled: false,
};

function showPulled(tracing: Tracing, frame: RectNode): void {
  // The library does not draw by itself, because `SheetStage` has switched that off.
  frame.getLayer()?.batchDraw();
  useAppStore.getState().setPreviewPlan(withPulled(tracing, frame));
}

function takePulled(tracing: Tracing, frame: RectNode): void {
  const pulled = withPulled(tracing, frame);
  frame.scale({ x: 1, y: 1 });
  if (pulled) useAppStore.getState().run(() => pulled);
}

/** Returns the plan with the image at the place of its frame; null if the edit is refused. */
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

const close = () => useAppStore.getState().setTracingFrameOpen(false);
