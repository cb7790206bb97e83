import type { ReactNode } from 'react';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import {
  capital,
  describeCollision,
  describeReport,
  headlineText,
  notRunRules,
  toneOf,
} from '../../../geometry/messages/index.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import { unbrokenFigures } from '../../../geometry/units/no-break.ts';
import { selectDragged } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { later } from '../hooks/later.tsx';
import { selectSpokenId, useLevel, usePlan } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { Loosened } from '../stages/place/loosened.tsx';
import { VerdictMark } from './verdict-mark.tsx';
import './verdict-panel.css';

// Beside a verdict, and there is none before the first detector.
const WaysOut = later(() => import('./ways-out.tsx').then((part) => part.WaysOut));
const ByPress = later(() => import('./ways-out.tsx').then((part) => part.ByPress));
const OpenRows = later(() => import('../questions/open-rows.tsx').then((part) => part.OpenRows));
// Below the verdict, and there is none before the first detector.
const ClearanceList = later(() => import('./clearance-list.tsx').then((part) => part.ClearanceList));
const OtherLists = later(() => import('./other-lists.tsx').then((part) => part.OtherLists));
const RecheckLine = later(() => import('./recheck-line.tsx').then((part) => part.RecheckLine));

/** The verdict as a sentence: the word, the reason, the way out as a button; below it the list of clearances. */
export function VerdictPanel({ numbers }: { readonly numbers: ReactNode }) {
  const level = useLevel();
  const reports = useThrottled(shownReports);
  const spokenId = useThrottled(selectSpokenId);
  const carried = useThrottled(selectDragged);
  const resting = level.detectors.find(({ id }) => id === spokenId);
  const detector = carried?.id === spokenId ? carried : resting;
  const report = reports.find(({ id }) => id === spokenId);
  return (
    <section className="verdict-panel" aria-label="Verdict" data-verdict={report ? toneOf(report) : 'none'}>
      {detector && report ? <Spoken detector={detector} report={report} numbers={numbers} /> : <NoDetectorChosen />}
    </section>
  );
}

interface SpokenProps {
  readonly detector: Detector;
  readonly report: DetectorReport;
  readonly numbers: ReactNode;
}

function Spoken({ detector, report, numbers }: SpokenProps) {
  const plan = usePlan();
  const level = useLevel();
  const room = level.rooms.find(({ id }) => id === report.room);
  const notRun = notRunRules(report, plan);
  const entered = describeCollision(level, detector, report);
  return (
    <>
      <div className="verdict-panel__say">
        <div className="verdict-panel__head">
          <VerdictMark verdict={toneOf(report)} size={34} />
          <h2 className="verdict-panel__word">{capital(headlineText(report))}</h2>
          <p className="verdict-panel__where">
            Detector {detector.label.trim() || 'without a label'}
            {room ? `, ${room.name.trim() || 'room without a name'}` : ''}
          </p>
        </div>
        <p className="verdict-panel__reason">{unbrokenFigures(describeReport(report, plan, level))}</p>
        {entered && <p className="verdict-panel__attention">{entered}</p>}
        <OpenRows detector={detector} report={report} plan={plan} level={level} />
        <Loosened />
        <RecheckLine id={detector.id} />
        <WaysOut detector={detector} report={report} />
        <ByPress id={detector.id} />
      </div>
      {numbers}
      <div className="verdict-panel__clearances">
        <ClearanceList report={report} plan={plan} level={level} />
        <OtherLists detector={detector} />
        {notRun.length > 0 && (
          <div className="not-run">
            <h3>Not run</h3>
            <ul>
              {notRun.map(({ rule, reason }) => (
                <li key={rule}>
                  {rule}: {reason}
                </li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </>
  );
}

function NoDetectorChosen() {
  const hasWalls = useLevel().walls.length > 0;
  return (
    <div className="verdict-panel__say">
      <div className="verdict-panel__head">
        <h2 className="verdict-panel__word verdict-panel__word--none">No detector yet</h2>
      </div>
      <p className="verdict-panel__reason">
        {hasWalls
          ? 'Set one where it might sit. Bare paper is where it may; what a rule takes away is hatched.'
          : 'Draw the room first. Then set a detector in it and read here whether it may sit there.'}
      </p>
    </div>
  );
}
