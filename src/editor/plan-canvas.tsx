import { useEffect, useLayoutEffect, useRef } from 'react';
import { selectLevel } from '../state/selectors.ts';
import { useShown } from '../state/shown.ts';
import { useAppStore } from '../state/store.ts';
import { hideCross, showCross } from './input/keyboard-cross.ts';
import { listenToPointers } from './input/pointers.ts';
import { spaceBar } from './input/sheet-keys.ts';
import { useLengths } from './lengths/store.ts';
import { SHEET_ID } from './open-menu.ts';
import { OVERLAY } from './overlay/overlay.ts';
import { clearSketch, useSketch } from './overlay/sketch.ts';
import { GROUND } from './stage/ground.ts';
import { SheetStage } from './stage/sheet-stage.ts';
import { useTracingImages } from './stage/tracing-images.ts';
import { exposeForTests } from './test-hook.ts';
import { setActiveTool } from './tools/active-tool.ts';
import { createTool } from './tools/create-tool.ts';
import { pressAt } from './tools/tool-context.ts';
import type { ToolController } from './tools/tool-controller.ts';
import './plan-canvas.css';

/** The sheet: draws the level in view and takes what pointers do on it. Fills its parent. */
export function PlanCanvas() {
  const sheet = useRef<HTMLDivElement>(null);
  const canvases = useRef<HTMLDivElement>(null);
  const controller = useRef<ToolController>(undefined);
  const tool = useAppStore((state) => state.tool);
  const levelName = useAppStore((state) => selectLevel(state).name);
  const cursor = useSketch((sketch) => sketch.cursor);

  useStageSize(sheet);
  useSheetStage(canvases);
  useLayoutEffect(() => {
    clearSketch();
    controller.current = createTool(tool);
    setActiveTool(controller.current);
    // What the tool places can be placed by keyboard at once.
    if (tool.kind === 'select') useSketch.setState({ cursor: 'default' });
    else sheet.current?.focus({ preventScroll: true });
    const { cross } = useSketch.getState();
    if (cross && tool.kind !== 'select') controller.current.hover(pressAt(cross));
    return () => controller.current?.leave?.();
  }, [tool]);
  useEffect(() => {
    const element = sheet.current;
    if (!element) return;
    const current = () => controller.current as ToolController;
    const stopPointers = listenToPointers(element, current, spaceBar.isDown);
    const hide = exposeForTests(element);
    return () => {
      stopPointers();
      hide();
    };
  }, []);

  return (
    <div
      ref={sheet}
      id={SHEET_ID}
      className="plan-canvas"
      style={{ cursor: tool.kind === 'select' ? cursor : 'crosshair' }}
      role="application"
      aria-roledescription="plan"
      aria-label={`Plan of ${levelName.trim() || 'the level'}. Arrows move the crosshair or the selection; ? lists all keys.`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the sheet is worked by keyboard
      tabIndex={0}
      onFocus={({ currentTarget, relatedTarget }) => {
        // From a field on the sheet, or one that is gone, the pointer that rests on the sheet goes on with its work.
        const isPointer = relatedTarget === null && useSketch.getState().pointer !== null;
        if (currentTarget.matches(':focus-visible') && !isLengthBox(relatedTarget) && !isPointer) showCross();
      }}
      onKeyDown={({ key }) => {
        // Whoever came by a press goes on by keys. A run of walls goes on with what it was begun with.
        const isPointer = useSketch.getState().pointer !== null || useAppStore.getState().chain.corners.length > 0;
        if (key !== 'Enter' && !isPointer) showCross();
      }}
      onBlur={({ relatedTarget }) => {
        if (!isLengthBox(relatedTarget)) hideCross();
      }}
    >
      <div ref={canvases} className="plan-canvas__stage" />
    </div>
  );
}

/** A length that is typed on the sheet goes on with the cross that asked for it. */
const isLengthBox = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('.length-box') !== null;

/** The stores that the pictures are made from. */
const STORES = [useAppStore, useSketch, useShown, useTracingImages, useLengths] as const;

/** The Konva stage. React makes its container once; what is on it follows the stores by itself. */
function useSheetStage(container: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    if (!container.current) return;
    const stage = new SheetStage(container.current, { ground: GROUND, overlay: OVERLAY });
    const stops = STORES.map((store) => store.subscribe(stage.wake));
    stage.wake();
    return () => {
      for (const stop of stops) stop();
      stage.destroy();
    };
  }, [container]);
}

/** Keeps the stage as large as its place. */
function useStageSize(sheet: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = sheet.current;
    if (!element) return;
    const observer = new ResizeObserver(() => {
      const { clientWidth: width, clientHeight: height } = element;
      if (width > 0 && height > 0) useAppStore.getState().setStageSize({ width, height });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [sheet]);
}
