import type { Stage } from '../../advice/stages.ts';
import { showDialog } from '../../commands/panels.ts';
import { QUESTIONS } from '../../state/questions.ts';
import { later } from '../hooks/later.tsx';
import { Palette } from '../questions/palette.tsx';

const TracingPanel = later(() => import('./draw/tracing-panel.tsx').then((part) => part.TracingPanel));
const LevelPanel = later(() => import('./draw/level/level-panel.tsx').then((part) => part.LevelPanel));
const SitePanel = later(() => import('./site/site-panel.tsx').then((part) => part.SitePanel));
const WhoLooks = later(() => import('../questions/who-looks.tsx').then((part) => part.WhoLooks));
const TapeUnitField = later(() => import('../questions/tape-unit-field.tsx').then((part) => part.TapeUnitField));
const PlacePanel = later(() => import('./place/place-panel.tsx').then((part) => part.PlacePanel));
const TimePanel = later(() => import('./time/time-panel.tsx').then((part) => part.TimePanel));
const HousePanel = later(() => import('./house/house-panel.tsx').then((part) => part.HousePanel));
const LogPanel = later(() => import('./log/log-panel.tsx').then((part) => part.LogPanel));
const ReadPanel = later(() => import('./read/read-panel.tsx').then((part) => part.ReadPanel));
const SheetPanel = later(() => import('./sheet/sheet-panel.tsx').then((part) => part.SheetPanel));

/** The fields and lists of a stage. */
export function StageWork({ stage }: { readonly stage: Stage }) {
  switch (stage) {
    case 'site':
      return <SitePanel />;
    case 'draw':
      return (
        <>
          <Palette questions={QUESTIONS.filter(({ id }) => id !== 'sit')} />
          <WhoLooks />
          <LevelPanel />
          <TapeUnitField />
          <TracingPanel />
        </>
      );
    case 'place':
      return <PlacePanel />;
    case 'time':
      return <TimePanel />;
    case 'house':
      return <HousePanel />;
    case 'log':
      return <LogPanel />;
    case 'read':
      return (
        <>
          <ReadPanel />
          <button type="button" className="button" onClick={() => showDialog({ kind: 'quality' })}>
            Quality book
          </button>
        </>
      );
    case 'sheet':
      return <SheetPanel />;
  }
}
