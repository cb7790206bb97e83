import { expect, it } from 'vitest';
import { lateTool } from '../../../../src/editor/tools/late-tool.ts';
import type { ToolController, ToolPoint } from '../../../../src/editor/tools/tool-controller.ts';
import { at } from '../../../helpers/tool-stage.ts';

/** A late tool, what the loaded one was told, and the moment it comes. */
function late() {
  const told: string[] = [];
  const tell =
    (step: string) =>
    ({ plan }: ToolPoint) => {
      told.push(`${step} ${plan[0]}`);
    };
  const loaded: ToolController = {
    hover: tell('hover'),
    down: tell('down'),
    drag: tell('drag'),
    up: tell('up'),
    cancel: () => false,
  };
  let resolve: (part: ToolController) => void = () => undefined;
  const promise = new Promise<ToolController>((done) => {
    resolve = done;
  });
  const tool = lateTool(() => promise);
  const come = async () => {
    resolve(loaded);
    await promise;
  };
  return { tool, told, come };
}

it('presses made before the tool is there are handed to it in their order', async () => {
  const { tool, told, come } = late();
  tool.down(at(1, 0));
  tool.up(at(1, 0));
  tool.down(at(2, 0));
  tool.drag(at(3, 0));
  await come();
  tool.up(at(4, 0));
  expect(told).toEqual(['down 1', 'up 1', 'down 2', 'drag 3', 'up 4']);
});

it('a second finger takes back only the press under way', async () => {
  const { tool, told, come } = late();
  tool.down(at(1, 0));
  tool.up(at(1, 0));
  tool.down(at(2, 0));
  tool.interrupt?.();
  await come();
  expect([told, tool.interrupt]).toEqual([['down 1', 'up 1'], undefined]);
});

it('Escape or another tool takes back every press', async () => {
  for (const end of ['cancel', 'leave'] as const) {
    const { tool, told, come } = late();
    tool.down(at(1, 0));
    tool.up(at(1, 0));
    tool[end]?.();
    await come();
    expect([told, tool.leave]).toEqual([[], undefined]);
  }
});
