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

/** The sheet: draws the level in view and handles pointers on it. Fills its parent. */
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
    // With the focus on the sheet the tool can be used by keyboard at once.
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
        // If the focus comes from a length box, or from a removed element while a pointer is on the sheet, work continues without the
        // cross.
        const isPointer = relatedTarget === null && useSketch.getState().pointer !== null;
        if (currentTarget.matches(':focus-visible') && !isLengthBox(relatedTarget) && !isPointer) showCross();
      }}
      onKeyDown={({ key }) => {
        // Focus by a press shows no cross, so a key does, unless a pointer is on the sheet. A chain that is being drawn continues as it was
        // begun.
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

/** Whether the focus moves to or from a length box: the cross then stays as it was. */
const isLengthBox = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('.length-box') !== null;

/** The stores that the pictures are made from. */
const STORES = [useAppStore, useSketch, useShown, useTracingImages, useLengths] as const;

/** Creates the Konva stage. React renders its container once; the stage itself follows the stores. */
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

/** Keeps the stage at the size of its element. */
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
