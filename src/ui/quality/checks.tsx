import { useState } from 'react';
import { freeId } from '../../../geometry/edit/free-id.ts';
import { capital } from '../../../geometry/messages/index.ts';
import { describeSources } from '../../../geometry/messages/sources.ts';
import type { QualityCheck } from '../../../geometry/plan/test-record.ts';
import { CHECK_WORD, correctiveAction } from '../../protocol/quality/describe-quality.ts';
import { type CheckRecord, UNDATED } from '../../protocol/quality/quality-book.ts';
import { checkTable } from '../../protocol/quality/quality-csv.ts';
import { decimalText } from '../../protocol/results/exact.ts';
import { enteredText } from '../../protocol/results/radon.ts';
import { useAppStore } from '../../state/store.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';
import { saveTable } from './book-files.ts';
import { type CheckDraft, CheckFields } from './check-fields.tsx';
import { Scroller } from './scroller.tsx';

interface Props {
  readonly checks: readonly CheckRecord[];
  readonly say: (text: string) => void;
}

const MARK = { clear: 'clear', warning: 'tight', 'out-of-control': 'blocked', unknown: 'unknown' } as const;

/** Blanks and spikes of all plans with their results; those of the open plan are entered here. */
export function Checks({ checks, say }: Props) {
  return (
    <section aria-label="Blanks and spikes" className="book__part">
      <h3>Blanks and spikes</h3>
      {checks.length === 0 ? (
        <p>None is recorded yet.</p>
      ) : (
        <>
          <CheckTable checks={checks} />
          <button
            type="button"
            className="button book__save"
            onClick={() => say(saveTable('quality-blanks-and-spikes', checkTable(checks)))}
          >
            Save blanks and spikes as a table (CSV)
          </button>
        </>
      )}
      <OwnChecks say={say} />
    </section>
  );
}

function CheckTable({ checks }: Pick<Props, 'checks'>) {
  return (
    <Scroller name="Blanks and spikes, all plans">
      <table className="book__table">
        <thead>
          <tr>
            <th scope="col">Month</th>
            <th scope="col">Kind</th>
            <th scope="col">Serial</th>
            <th scope="col">Result</th>
            <th scope="col">Compared with</th>
            <th scope="col">Verdict</th>
            <th scope="col">What to do</th>
          </tr>
        </thead>
        <tbody>
          {checks.map((record, i) => {
            const { check, month, where, error, verdict } = record;
            const action = correctiveAction(record);
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: ids are only told apart within a plan
              <tr key={i}>
                <td className="book__when">{month === UNDATED ? 'No date' : month}</td>
                <th scope="row">{capital(check.kind)}</th>
                <td>{[check.serial, where].filter(Boolean).join(', ')}</td>
                <td>{enteredText(check)}</td>
                <td>
                  {heldAgainst(check)}
                  {error && `, ${decimalText(error, 1)}% off`}
                </td>
                <td>
                  <span className="book__count" data-verdict={MARK[verdict]}>
                    <VerdictMark verdict={MARK[verdict]} size={16} /> {CHECK_WORD[verdict]}
                  </span>
                </td>
                <td className="book__text">
                  {action?.text}
                  {action && <span className="soft"> {describeSources(action.sources)}</span>}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Scroller>
  );
}

function heldAgainst({ kind, reference, detectionLimit, unit }: QualityCheck): string {
  const value = kind === 'spike' ? reference : detectionLimit;
  if (value === null) return 'not known';
  return `${kind === 'spike' ? 'exposed to' : 'detection limit'} ${enteredText({ value, unit })}`;
}

/** Adds, changes and removes blanks and spikes of the open plan. */
function OwnChecks({ say }: Pick<Props, 'say'>) {
  const plan = useAppStore((state) => state.plan);
  const run = useAppStore((state) => state.run);
  const own = plan.quality ?? [];
  const { timeZone } = plan.site;
  const write = (quality: readonly QualityCheck[]) => run((now) => ({ ...now, quality }));
  return (
    <div className="book__own">
      <h4>Of the open plan{plan.title.trim() ? `: ${plan.title.trim()}` : ''}</h4>
      {own.map((check) => (
        <fieldset key={check.id} className="book__check">
          <legend>{checkName(check)}</legend>
          <CheckFields
            check={check}
            zone={timeZone}
            onChange={(patch) => write(own.map((each) => (each.id === check.id ? whole({ ...each, ...patch }) : each)))}
          />
          <button
            type="button"
            className="button"
            onClick={() => {
              write(own.filter((each) => each.id !== check.id));
              say(`${checkName(check)} is removed. Undo restores it.`);
              document.getElementById('book-new-check')?.focus();
            }}
          >
            Remove {checkName(check).toLowerCase()}
          </button>
        </fieldset>
      ))}
      <NewCheck
        key={own.length}
        zone={timeZone}
        start={freshDraft(plan.display.radon, plan.kit.detectionLimit)}
        onWrite={(draft) => {
          const check = whole({ ...draft, id: freeId(new Set(own.map(({ id }) => id)), 'q') });
          const trouble = write([...own, check]);
          say(trouble || `${checkName(check)} is recorded.`);
        }}
      />
    </div>
  );
}

const checkName = ({ kind, serial, id }: QualityCheck) => `${capital(kind)} ${serial.trim() || id}`;

/** Returns the draft as a check; a blank has no reference. */
const whole = (check: CheckDraft & { readonly id: string }): QualityCheck => ({
  ...check,
  value: check.value ?? 0,
  reference: check.kind === 'blank' ? null : check.reference,
});

function freshDraft(
  unit: QualityCheck['unit'],
  limit: { readonly value: number; readonly unit: QualityCheck['unit'] } | undefined,
): CheckDraft {
  return {
    kind: 'blank',
    at: null,
    serial: '',
    by: '',
    value: null,
    unit,
    reference: null,
    detectionLimit: limit?.unit === unit ? limit.value : null,
    note: '',
  };
}

interface NewCheckProps {
  readonly zone: string;
  readonly start: CheckDraft;
  readonly onWrite: (draft: CheckDraft) => void;
}

/** Fields of a new check, which is not stored before it has a result: a blank without one must not count as zero. */
function NewCheck({ zone, start, onWrite }: NewCheckProps) {
  const [draft, setDraft] = useState(start);
  return (
    <details className="group">
      <summary id="book-new-check">Record a blank or spike</summary>
      <CheckFields
        check={draft}
        zone={zone}
        onChange={(patch) => {
          setDraft((now) => ({ ...now, ...patch }));
          return '';
        }}
      />
      <button
        type="button"
        className="button button--main"
        disabled={draft.value === null}
        onClick={() => onWrite(draft)}
      >
        Record it
      </button>
      {draft.value === null && <p className="small soft">Enter the result first.</p>}
    </details>
  );
}
