import { useTape } from '../../editor/tape/tape-store.ts';
import { later } from '../hooks/later.tsx';
import { MessageLine } from './message-line.tsx';

const TapeLine = later(() => import('../questions/tape-line.tsx').then((part) => part.TapeLine));

/** The line over the sheet. What a laser tape typed comes before all else. */
export function SheetLine() {
  const reading = useTape((tape) => tape.reading);
  return reading ? <TapeLine reading={reading} /> : <MessageLine />;
}
