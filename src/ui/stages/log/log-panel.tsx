import { useAppStore } from '../../../state/store.ts';
import { testStateOf } from '../../../state/test-state.ts';
import { Cautions } from '../../verdict/cautions.tsx';
import { Papers } from '../house/papers.tsx';
import { StandingNote } from '../read/standing-note.tsx';
import { DetectorLogs } from './detector-logs.tsx';
import { WeatherNotes } from './weather-notes.tsx';
import './log.css';

/** What happened to the detectors, from their serial numbers to the laboratory, and the weather meanwhile. */
export function LogPanel() {
  const plan = useAppStore((state) => state.plan);
  return (
    <>
      <StandingNote state={testStateOf(plan)} />
      <DetectorLogs plan={plan} />
      <WeatherNotes plan={plan} />
      <Papers kinds={['log']} />
      <Cautions />
    </>
  );
}
