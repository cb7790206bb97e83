import { store } from './tool-context.ts';
import type { ToolController } from './tool-controller.ts';

/** Returns a tool whose code is not part of the start. Until it is there, presses do nothing. */
export function lateTool(load: () => Promise<ToolController>): ToolController {
  const nothing = () => undefined;
  const tool: ToolController = { hover: nothing, down: nothing, drag: nothing, up: nothing, cancel: () => false };
  load().then(
    (loaded) => Object.assign(tool, loaded),
    () => store().say('This tool could not be loaded. Choose it again once the network is there.'),
  );
  return tool;
}
