import type { Tool } from '../../state/tool.ts';
import { createMoveTracingTool } from './move-tracing-tool.ts';
import type { ToolController } from './tool-controller.ts';
import { createTracingPointsTool } from './tracing-points-tool.ts';

type TracingTask = Extract<Tool, { readonly kind: 'tracing' }>['task'];

/** Returns the tool for a task on the picture under the level. */
export const createTracingTool = (task: TracingTask): ToolController =>
  task === 'move' ? createMoveTracingTool() : createTracingPointsTool(task);
