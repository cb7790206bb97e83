import type { ToolController } from './tool-controller.ts';

let active: ToolController | null = null;

/** The tool that handles the pointer and keys; null before the sheet is on the page. */
export const activeTool = (): ToolController | null => active;

export function setActiveTool(tool: ToolController): void {
  active = tool;
}
