import { useSketch } from '../overlay/sketch.ts';
import { activeTool } from './active-tool.ts';
import type { LateTool } from './late/create-late-tool.ts';
import { pressAt, store } from './tool-context.ts';
import type { ToolController } from './tool-controller.ts';

type Code = Pick<typeof import('./late/create-late-tool.ts'), 'createLateTool'>;

const COMING = 'One moment: this tool is still being loaded. Press again when this line is gone.';

let code: Code | null = null;

/** Loads the code of the late tools. Rejects if it cannot be loaded. */
export async function loadLateTools(
  load: () => Promise<Code> = () => import('./late/create-late-tool.ts'),
): Promise<Code> {
  code ??= await load();
  return code;
}

/** Returns the controller of a late tool. While its code is not loaded, a press only shows a message. */
export function lateTool(tool: LateTool, load?: () => Promise<Code>): ToolController {
  if (code) return code.createLateTool(tool);
  const nothing = () => undefined;
  const controller: ToolController = {
    hover: nothing,
    down: () => store().say(COMING),
    drag: nothing,
    up: nothing,
    cancel: () => false,
  };
  loadLateTools(load).then(
    ({ createLateTool }) => {
      Object.assign(controller, createLateTool(tool));
      if (activeTool() !== controller) return;
      if (store().message === COMING) store().say('');
      const { cross } = useSketch.getState();
      if (cross) controller.hover(pressAt(cross));
    },
    () => store().say('This tool could not be loaded. Choose it again once the network is there.'),
  );
  return controller;
}
