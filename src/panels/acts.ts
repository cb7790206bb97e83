import type { RoomUse, XY } from '../../geometry/plan/model.ts';
import { capital, ROOM_USE_NOUN } from '../../geometry/words.ts';
import type { HintAct } from '../state/guidance.ts';
import { useAppStore } from '../state/store.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import { openQuestion, openStage, unfold, useUi } from './ui.ts';

export const TITLE_FIELD = 'plan-title';

/**
 * Asks what the room at `at` is used for: the next use that is picked names that room. No use is taken for granted, for a
 * use decides whether a detector may sit there.
 */
export function nameRoom(at: XY): void {
  useAppStore.getState().setTool(SELECT_TOOL);
  unfold('job');
  useUi.setState({ stage: 'draw', question: 'used', roomAt: at });
  requestAnimationFrame(() => document.getElementById('question-used')?.focus());
}

/** Names the room that was asked about, or takes the use in hand for the next press on the sheet. */
export function pickUse(use: RoomUse): void {
  const { roomAt } = useUi.getState();
  const { addItem, setTool } = useAppStore.getState();
  if (!roomAt) {
    setTool({ kind: 'room', use });
    return;
  }
  addItem('rooms', { name: capital(ROOM_USE_NOUN[use]), use, at: roomAt });
  useUi.setState({ roomAt: null });
}

/** Does what a hint offers. */
export function act(offer: HintAct): void {
  const { setTool, select } = useAppStore.getState();
  switch (offer.kind) {
    case 'tool':
      setTool(offer.tool);
      openStage(offer.tool.kind === 'detector' ? 'place' : 'draw');
      if (offer.tool.kind === 'wall' || offer.tool.kind === 'room-box') openQuestion('closes');
      if (offer.tool.kind === 'opening') openQuestion('opens');
      return;
    case 'show':
      select(offer.ids);
      return;
    case 'name-room':
      nameRoom(offer.at);
      return;
    case 'title':
      document.getElementById(TITLE_FIELD)?.focus();
  }
}
