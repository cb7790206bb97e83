import { roomAt } from '../../../geometry/check/room.ts';
import { FIXTURE_NOUN, ROOM_USE_NOUN } from '../../../geometry/messages/index.ts';
import { subjectName } from '../../../geometry/messages/subject.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import type { AppState } from '../../state/app-state.ts';
import { OBJECT_DEFAULTS } from '../../state/defaults.ts';
import { selectLevel, selectModel } from '../../state/selectors.ts';
import { useLengths } from '../lengths/store.ts';
import type { Sketch } from '../overlay/sketch.ts';
import { hitAt } from '../tools/pick-at.ts';
import { CURSOR_REACH_PX, pressAt } from '../tools/tool-context.ts';

const WITH_NO_TOOL = 'Enter lists what can be done here';
const FIXED = {
  detector: 'Enter places the detector',
  'move-here': 'Enter moves it here',
  grip: 'Enter takes the grip, then sets it',
  center: 'Enter brings this spot to the middle',
  ask: WITH_NO_TOOL,
  tracing: 'Enter sets the point',
  'split-wall': 'Enter splits the wall',
} as const;

/** Returns what Enter would do at the keyboard's cross, in words; empty without a cross, or while a length is typed. */
export function enterWords(state: AppState, sketch: Sketch): string {
  const { tool } = state;
  const at = sketch.cross;
  if (!at || sketch.typed !== null) return '';
  if (useLengths.getState().open) return 'Digits or Enter correct the length';
  switch (tool.kind) {
    case 'select':
      return selectWords(state, at);
    case 'wall':
      return wallWords(state, sketch.nextCorner ?? at);
    case 'room-box':
      return `Enter sets the ${sketch.box ? 'opposite' : 'first'} corner of the room`;
    case 'frame':
      return `Enter sets the ${sketch.marquee ? 'opposite' : 'first'} corner of the frame`;
    case 'opening':
      if (!sketch.opening) return `No wall here for the ${tool.opening}`;
      return sketch.opening.refusal || `Enter puts the ${tool.opening} in`;
    case 'room':
      return roomAt(selectModel(state), at)
        ? `Enter names this room: ${ROOM_USE_NOUN[tool.use]}`
        : 'No closed room here';
    case 'fixture':
      return `Enter sets the ${FIXTURE_NOUN[tool.fixture]} here`;
    case 'object':
      return `Enter sets the ${OBJECT_DEFAULTS[tool.object].name.toLowerCase()} here`;
    default:
      return FIXED[tool.kind];
  }
}

function selectWords(state: AppState, at: XY): string {
  const level = selectLevel(state);
  const { selection } = state;
  const [only = ''] = selection;
  if (selection.length > 0) {
    const name = selection.length > 1 ? `${selection.length} things` : subjectName(level, only);
    return `Arrows move ${name}, Enter lists what can be done, Escape lets go`;
  }
  const hit = hitAt(pressAt(at));
  if (hit) return `Enter selects ${subjectName(level, hit.id)}`;
  return roomAt(selectModel(state), at)?.label === null ? 'Enter asks what this room is used for' : WITH_NO_TOOL;
}

function wallWords({ chain: { corners }, viewport }: AppState, next: XY): string {
  const reach = CURSOR_REACH_PX / viewport.scale;
  const [start] = corners;
  const last = corners.at(-1);
  if (!start || !last) return 'Enter begins the wall';
  if (distance(last, next) < 1) return 'An arrow shows the direction, Enter ends the walls';
  return corners.length > 2 && distance(start, next) <= reach ? 'Enter closes the room' : 'Enter sets the corner';
}
