import type { ReactNode } from 'react';
import { toneOf } from '../../../geometry/messages/index.ts';
import { selectDragged } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { later } from '../hooks/later.tsx';
import { useTestValidity } from '../hooks/use-guidance.ts';
import { selectSpokenId, useLevel } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import './verdict-panel.css';

// Not needed before the first detector.
const DetectorVerdict = later(() => import('./detector-verdict.tsx').then((part) => part.DetectorVerdict));
// Not needed before the first wall.
const WhereToPlace = later(() => import('./where-to-place.tsx').then((part) => part.WhereToPlace));

/** The verdict as a sentence: the word, the reason, the remedies as buttons; below it the list of clearances. */
export function VerdictPanel({ numbers }: { readonly numbers: ReactNode }) {
  const level = useLevel();
  const reports = useThrottled(shownReports);
  const spokenId = useThrottled(selectSpokenId);
  const carried = useThrottled(selectDragged);
  const resting = level.detectors.find(({ id }) => id === spokenId);
  const detector = carried?.id === spokenId ? carried : resting;
  const report = reports.find(({ id }) => id === spokenId);
  // A good place is never shown larger than the state of the test.
  const validity = useTestValidity();
  return (
    <section
      className="verdict-panel"
      aria-label="Verdict"
      data-verdict={report ? toneOf(report) : 'none'}
      data-test={validity}
    >
      {detector && report ? (
        <DetectorVerdict detector={detector} report={report} numbers={numbers} />
      ) : (
        <NoDetectorChosen />
      )}
    </section>
  );
}

function NoDetectorChosen() {
  const hasWalls = useLevel().walls.length > 0;
  return (
    <div className="verdict-panel__say">
      <div className="verdict-panel__head">
        <h2 className="verdict-panel__word verdict-panel__word--none">No detector yet</h2>
      </div>
      {hasWalls ? (
        <WhereToPlace />
      ) : (
        <p className="verdict-panel__reason">
          Draw the room first. Then place a detector in it; its verdict stands here.
        </p>
      )}
    </div>
  );
}
