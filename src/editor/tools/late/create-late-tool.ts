import type { Tool } from '../../../state/tool.ts';
import type { ToolController } from '../tool-controller.ts';
import { createCenterTool } from './center-tool.ts';
import { createFrameTool } from './frame-tool.ts';
import { createGripTool } from './grip-tool.ts';
import { createMoveHereTool } from './move-here-tool.ts';
import { createMoveTracingTool } from './move-tracing-tool.ts';
import { createSplitWallTool } from './split-wall-tool.ts';
import { createTracingPointsTool } from './tracing-points-tool.ts';

/** The tools that are not needed to draw the first wall. */
export type LateTool = Extract<
  Tool,
  { readonly kind: 'move-here' | 'grip' | 'frame' | 'center' | 'split-wall' | 'tracing' }
>;

/** Returns the controller of a tool whose code is not part of the start. */
export function createLateTool(tool: LateTool): ToolController {
  switch (tool.kind) {
    case 'move-here':
      return createMoveHereTool(tool.ids);
    case 'grip':
      return createGripTool(tool.id);
    case 'frame':
      return createFrameTool();
    case 'center':
      return createCenterTool();
    case 'split-wall':
      return createSplitWallTool(tool.id);
    case 'tracing':
      return tool.task === 'move' ? createMoveTracingTool() : createTracingPointsTool(tool.task);
  }
}
