import { useAppStore } from '../../state/store.ts';
import { later } from '../hooks/later.tsx';

const RoomUseBox = later(() => import('../questions/room-use-box.tsx').then((part) => part.RoomUseBox));

/** The box over the sheet that asks for the use of a room. */
export function AskedRoom() {
  const at = useAppStore(({ roomAsked }) => roomAsked);
  return at && <RoomUseBox at={at} />;
}
