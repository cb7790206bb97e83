import { useTape } from '../../editor/tape/tape-store.ts';
import { later } from '../hooks/later.tsx';
import { MessageLine } from './message-line.tsx';

const TapeLine = later(() => import('../questions/tape-line.tsx').then((part) => part.TapeLine));

/** The line above the sheet. A reading of a laser tape has priority over messages. */
export function SheetLine() {
  const reading = useTape((tape) => tape.reading);
  return reading ? <TapeLine reading={reading} /> : <MessageLine />;
}
