import { nextStep, stillToDo } from '../../advice/stages.ts';
import { followHint } from '../../commands/go-to.ts';
import { answerFor } from '../../state/questions.ts';
import { useAppStore } from '../../state/store.ts';
import type { Tool } from '../../state/tool.ts';
import { useGuidance } from '../hooks/use-guidance.ts';
import { useLevel } from '../hooks/use-level.ts';
import { ClosingWays, useMissedStart } from '../questions/closing-offer.tsx';
import { CommandButton } from './command-button.tsx';
import './message-line.css';

/** The line above the sheet: the last message, what the next press does, or the next missing thing. */
export function MessageLine() {
  const message = useAppStore((state) => state.message);
  const tool = useAppStore((state) => state.tool);
  const kept = useAppStore((state) => state.keepTool);
  const { say } = useAppStore.getState();
  const stages = useGuidance();
  const next = stages && nextStep(stages);
  const level = useLevel();
  // The empty sheet shows what to do first.
  const bare = level.walls.length === 0;
  // The message may ask for the use of a room of this level.
  const unnamed = stillToDo(stages ?? []).find(
    ({ action: offer }) => offer?.kind === 'name-room' && offer.levelId === level.id,
  );
  const remark = useAppStore((state) => state.remark);
  const remedy = remark?.action && message.includes(remark.words) ? remark.action : null;
  const offer = message ? (remedy ?? unnamed?.action) : tool.kind === 'select' && next?.action;
  const corners = useAppStore(({ chain }) => chain.corners.length);
  const missed = useMissedStart();
  const doing = message || missed || `${kept ? 'Tool kept. ' : ''}${doingWords(tool, corners)}`;
  return (
    <div className="message" data-message={message ? '' : undefined}>
      {/* Announced by `announce/announcer.ts`. */}
      <p className={doing ? '' : 'unseen'}>{doing}</p>
      {!doing && !bare && next && <p className="message__next">{next.says}</p>}
      {offer && (remedy || !bare) && (
        <button type="button" className="text-button" onClick={() => followHint(offer)}>
          {offer.label}
        </button>
      )}
      {message && (
        <button type="button" className="text-button" onClick={() => say('')}>
          Hide
        </button>
      )}
      {!message && missed && <ClosingWays />}
      {!message && corners > 1 && <CommandButton command="end-walls" className="text-button" />}
      {corners === 0 && answerFor(tool) && tool.kind !== 'opening' && (
        <CommandButton command="keep" className="text-button" />
      )}
      {!message && corners < 2 && tool.kind !== 'select' && (
        <CommandButton command="put-back" className="text-button" />
      )}
    </div>
  );
}

/** Returns what the next press on the sheet does; `corners` is the number of corners of the run of walls. */
function doingWords(tool: Tool, corners: number): string {
  switch (tool.kind) {
    case 'select':
      return '';
    case 'wall':
      if (corners === 0) return 'Press where the wall begins, then at each corner.';
      return corners < 3
        ? 'Press at the next corner, or type how long the wall is.'
        : 'Press at the next corner, or the first one again to close the room.';
    case 'room-box':
      return 'Drag from one corner of the room to the opposite one.';
    case 'opening':
      return `Press on the wall that holds the ${tool.opening}.`;
    case 'room':
      return 'Press inside the room that it is.';
    case 'detector':
      return 'Press where the detector goes.';
    case 'move-here':
      return tool.ids.length > 1 ? 'Press where the first of them goes.' : 'Press where it goes.';
    case 'grip':
      return 'Press on one of its grips, then where that goes.';
    case 'frame':
      return 'Press one corner of the frame, then the opposite one.';
    case 'center':
      return 'Press the spot to center.';
    case 'ask':
      return 'Point at a spot of the floor, or press it, to see what excludes a detector there.';
    case 'tracing':
      return TRACING_WORDS[tool.task];
    case 'split-wall':
      return 'Press where the wall is to be split.';
    default:
      return `Press where it stands: ${nameOf(tool)}.`;
  }
}

const TRACING_WORDS = {
  scale: 'Press one end of a length on the picture that you know.',
  straighten: 'Press a point of a wall on the picture that should be level or plumb.',
  shift: 'Press a point of the picture, then the spot of the plan where it belongs.',
  move: 'Drag the picture, or move it with the arrow keys. The wheel or two fingers still move the view.',
} as const;

function nameOf(tool: Tool): string {
  const answer = answerFor(tool);
  return answer ? answer.name.toLowerCase() : 'the tool';
}
