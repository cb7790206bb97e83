import { expect, it } from 'vitest';
import { putCross } from '../../../../src/editor/overlay/sketch.ts';
import { setActiveTool } from '../../../../src/editor/tools/active-tool.ts';
import { lateTool } from '../../../../src/editor/tools/late-tool.ts';
import type { ToolController } from '../../../../src/editor/tools/tool-controller.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import { at } from '../../../helpers/tool-stage.ts';

const message = () => useAppStore.getState().message;

/** A tool that writes down what it is told. */
function recorded() {
  const calls: string[] = [];
  const call = (name: string) => () => {
    calls.push(name);
  };
  const tool: ToolController = {
    hover: call('hover'),
    down: call('down'),
    drag: call('drag'),
    up: call('up'),
    cancel: () => false,
  };
  return { calls, tool };
}

it('a press says that the tool is not there yet; where its code cannot be had, that is said', async () => {
  const tool = lateTool({ kind: 'frame' }, () => Promise.reject(new Error('offline')));
  tool.down(at(0, 0));
  expect(message()).toMatch(/^One moment: /);
  await expect.poll(message).toMatch(/^This tool could not be loaded\./);
});

it('a press before its code is there does nothing; then the line goes, and the next press is the tool’s', async () => {
  const { calls, tool: made } = recorded();
  let come: (code: { createLateTool: () => ToolController }) => void = () => undefined;
  const tool = lateTool({ kind: 'frame' }, () => new Promise((done) => (come = done)));
  setActiveTool(tool);
  putCross([0, 0]);
  tool.down(at(0, 0));
  tool.up(at(0, 0));
  come({ createLateTool: () => made });
  await expect.poll(message).toBe('');
  // The crosshair shows at once what the tool does there.
  expect(calls).toEqual(['hover']);
  tool.down(at(0, 0));
  tool.up(at(0, 0));
  expect(calls).toEqual(['hover', 'down', 'up']);
});

it('once it is there, every tool of its kind is there at once', () => {
  const { calls, tool } = recorded();
  expect(lateTool({ kind: 'center' }, () => Promise.reject(new Error('asked for twice')))).toBeDefined();
  expect([calls, tool.cancel()]).toEqual([[], false]);
});
