import { conditionsReport } from '../../job/conditions/report.ts';
import { useAppStore } from '../../state/store.ts';
import { InstantField } from '../fields/instant-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { AgreementFields } from './agreement-fields.tsx';
import { ConditionItem } from './condition-item.tsx';
import { DetectorLogs } from './detector-logs.tsx';
import { Papers } from './papers.tsx';
import { useWalk } from './walk.ts';
import { WeatherNotes } from './weather-notes.tsx';
import './house.css';

const WHOLE = { holds: 'Kept', 'not-evaluated': 'Not evaluated', unknown: 'Unknown' } as const;
const TONE = { holds: 'clear', 'not-evaluated': 'blocked', unknown: 'unknown' } as const;

/** The house during the test: each condition with who saw it and when, the log of the detectors, and the papers that go out. */
export function HousePanel() {
  const plan = useAppStore((state) => state.plan);
  const { by, at } = useWalk();
  const report = conditionsReport(plan);
  return (
    <>
      <div className="house-whole" data-verdict={TONE[report.whole]} role="status">
        <strong>{WHOLE[report.whole]}</strong>
        <p>{report.says}</p>
      </div>
      <div className="fields">
        <div className="wide">
          <TextField
            label="Who walks through the house"
            value={by}
            hint="Goes onto each answer, with the time below."
            onCommit={(text) => useWalk.setState({ by: text })}
          />
        </div>
        <InstantField
          label="Time of the walk"
          value={at}
          zone={plan.site.timeZone}
          onCommit={(value) => {
            useWalk.setState({ at: value });
            return '';
          }}
        />
      </div>
      <section aria-labelledby="conditions-heading">
        <h3 id="conditions-heading">Closed-building conditions</h3>
        <ul className="conditions">
          {report.rows.map((row) => (
            <ConditionItem key={row.item.id} row={row} />
          ))}
        </ul>
      </section>
      <DetectorLogs plan={plan} />
      <WeatherNotes plan={plan} />
      <AgreementFields plan={plan} />
      <Papers />
    </>
  );
}
