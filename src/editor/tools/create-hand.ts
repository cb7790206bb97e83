import type { Tool } from '../../state/tool.ts';
import { createAskHand } from './ask-hand.ts';
import { createCentreHand } from './centre-hand.ts';
import { createFrameHand } from './frame-hand.ts';
import { createGripHand } from './grip-hand.ts';
import type { Hand } from './hand.ts';
import { createMoveHereHand } from './move-here-hand.ts';
import { createMoveTracingHand } from './move-tracing-hand.ts';
import { createOpeningHand } from './opening-hand.ts';
import { createRoomBoxHand } from './room-box-hand.ts';
import { createSelectHand } from './select-hand.ts';
import { createSetDownHand } from './set-down-hand.ts';
import { createSplitHand } from './split-hand.ts';
import { createTracingHand } from './tracing-hand.ts';
import { createWallHand } from './wall-hand.ts';

export type { Hand } from './hand.ts';

/** The hand for a tool, with nothing under way. */
export function createHand(tool: Tool): Hand {
  switch (tool.kind) {
    case 'select':
      return createSelectHand();
    case 'wall':
      return createWallHand();
    case 'room-box':
      return createRoomBoxHand();
    case 'opening':
      return createOpeningHand(tool.opening);
    case 'move-here':
      return createMoveHereHand(tool.ids);
    case 'grip':
      return createGripHand(tool.id);
    case 'frame':
      return createFrameHand();
    case 'centre':
      return createCentreHand();
    case 'ask':
      return createAskHand();
    case 'tracing':
      return tool.task === 'move' ? createMoveTracingHand() : createTracingHand(tool.task);
    case 'split-wall':
      return createSplitHand(tool.id);
    default:
      return createSetDownHand(tool);
  }
}
