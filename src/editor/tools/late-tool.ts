import { store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

type Step = 'down' | 'drag' | 'up';

/** Returns a tool whose code is not part of the start. Presses made before it is there wait for it. */
export function lateTool(load: () => Promise<ToolController>): ToolController {
  let waiting: (readonly [Step, ToolPoint])[] = [];
  const keep = (step: Step) => (point: ToolPoint) => {
    waiting.push([step, point]);
  };
  const forget = () => {
    const busy = waiting.length > 0;
    waiting = [];
    return busy;
  };
  const tool: ToolController = {
    hover: () => undefined,
    down: keep('down'),
    drag: keep('drag'),
    up: keep('up'),
    cancel: forget,
    // Only the press under way counts for nothing.
    interrupt: () => {
      waiting = waiting.slice(
        0,
        waiting.findLastIndex(([step]) => step === 'down'),
      );
    },
    leave: forget,
  };
  load().then(
    (loaded) => {
      // What the loaded tool leaves out is not done by the waiting one.
      Object.assign(tool, { interrupt: undefined, leave: undefined }, loaded);
      for (const [step, point] of waiting) loaded[step](point);
    },
    () => store().say('This tool could not be loaded. Choose it again once the network is there.'),
  );
  return tool;
}
