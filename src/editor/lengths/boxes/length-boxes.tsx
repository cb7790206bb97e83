import { SHEET_ID } from '../../open-menu.ts';
import { activeTool } from '../../tools/active-tool.ts';
import type { ToolController } from '../../tools/tool-controller.ts';
import { LengthBox } from './length-box.tsx';
import { TypedLength } from './typed-length.tsx';

/** The boxes over the sheet that ask for a length: of the plan, or of what is being drawn. */
export function LengthBoxes() {
  return (
    <>
      <TypedLength onDone={focusSheet} />
      <LengthBox controller={controller} onDone={focusSheet} />
    </>
  );
}

const controller = (): ToolController => activeTool() as ToolController;

function focusSheet(): void {
  document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
}
