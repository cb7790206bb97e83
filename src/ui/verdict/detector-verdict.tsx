import type { ReactNode } from 'react';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { capital, describeNotRun, describeReport, headlineText, toneOf } from '../../../geometry/messages/index.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import { unbrokenFigures } from '../../../geometry/units/no-break.ts';
import { isOpenToCorrection } from '../../protocol/validity/validity.ts';
import { useAppStore } from '../../state/store.ts';
import { testStateOf } from '../../state/test-state.ts';
import { later } from '../hooks/later.tsx';
import { useLevel, usePlan } from '../hooks/use-level.ts';
import { OpenRows } from '../questions/open-rows.tsx';
import { Loosened } from '../stages/place/loosened.tsx';
import { OtherLists } from './other-lists.tsx';
import { RecheckLine } from './recheck-line.tsx';
import { SunLine } from './sun-line.tsx';
import { VerdictMark } from './verdict-mark.tsx';
import { ByPress, WaysOut } from './ways-out.tsx';

// Loaded later, because it is below the verdict.
const ClearanceList = later(() => import('./clearance-list.tsx').then((part) => part.ClearanceList));

interface Props {
  readonly detector: Detector;
  readonly report: DetectorReport;
  readonly numbers: ReactNode;
}

/** The verdict of one detector in words, its remedies, and its clearances. */
export function DetectorVerdict({ detector, report, numbers }: Props) {
  const plan = usePlan();
  const level = useLevel();
  const room = level.rooms.find(({ id }) => id === report.room);
  const notRun = describeNotRun(report, plan, level);
  const testFails = useAppStore((state) => testStateOf(state.plan).validity === 'not-evaluated');
  const isOpen = useAppStore((state) => isOpenToCorrection(state.plan, testStateOf(state.plan)));
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
          {testFails && (
            <p className="verdict-panel__where">
              This is the placement alone: the test is invalid{isOpen && ' as it stands'}.
            </p>
          )}
        </div>
        <p className="verdict-panel__reason">{unbrokenFigures(describeReport(report, plan, level))}</p>
        <OpenRows detector={detector} report={report} plan={plan} level={level} />
        <Loosened />
        <RecheckLine id={detector.id} />
        <SunLine detector={detector} report={report} />
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
              {notRun.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </>
  );
}
