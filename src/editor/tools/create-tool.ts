import type { Tool } from '../../state/tool.ts';
import { createAskTool } from './ask-tool.ts';
import { lateTool } from './late-tool.ts';
import { createOpeningTool } from './opening-tool.ts';
import { createPlaceTool } from './place-tool.ts';
import { createRoomBoxTool } from './room-box-tool.ts';
import { createSelectTool } from './select-tool.ts';
import type { ToolController } from './tool-controller.ts';
import { createWallTool } from './wall-tool.ts';

/** Returns the controller of a tool, with no gesture under way. */
export function createTool(tool: Tool): ToolController {
  switch (tool.kind) {
    case 'select':
      return createSelectTool();
    case 'wall':
      return createWallTool();
    case 'opening':
      return createOpeningTool(tool.opening);
    case 'room-box':
      return createRoomBoxTool();
    case 'ask':
      return createAskTool();
    case 'move-here':
    case 'grip':
    case 'frame':
    case 'center':
    case 'split-wall':
    case 'tracing':
      return lateTool(tool);
    default:
      return createPlaceTool(tool);
  }
}
