import { namedDetectors } from '../../../protocol/custody/detectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { testStateOf } from '../../../state/test-state.ts';
import { Cautions } from '../../verdict/cautions.tsx';
import { Papers } from '../house/papers.tsx';
import { Parts } from '../parts.tsx';
import { StandingNote } from '../read/standing-note.tsx';
import { DetectorLogs } from './detector-logs.tsx';
import { WeatherNotes } from './weather-notes.tsx';
import { WhoHasIt } from './who-has-it.tsx';
import './log.css';

/** The log of the detectors, from their serial numbers to the laboratory, and of the weather. */
export function LogPanel() {
  const plan = useAppStore((state) => state.plan);
  const all = namedDetectors(plan);
  return (
    <Parts
      fields={
        <>
          <DetectorLogs plan={plan} />
          <WeatherNotes plan={plan} />
        </>
      }
      outcome={
        <>
          {all.length > 0 && <WhoHasIt plan={plan} all={all} />}
          <StandingNote plan={plan} state={testStateOf(plan)} />
          <Papers kinds={['log']} />
          <Cautions />
        </>
      }
    />
  );
}
