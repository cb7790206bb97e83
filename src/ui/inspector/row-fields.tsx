import { usePanels } from '../../commands/panels.ts';
import { ROW_FIELDS } from '../../commands/row.ts';
import { LengthField } from '../fields/length-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { setOutRow } from './set-out-row.ts';

/** Fields that copy the selection in a row: number of copies, spacing, direction. */
export function RowFields() {
  const isOpen = usePanels(({ rowOpen }) => rowOpen);
  const row = usePanels(({ row }) => row);
  if (!isOpen) return null;
  const keep = (change: Partial<typeof row>) => {
    usePanels.setState({ row: { ...row, ...change } });
    return undefined;
  };
  return (
    <fieldset id={ROW_FIELDS} className="row-fields">
      <legend>In a row</legend>
      <div className="fields">
        <NumberField
          label="How many more"
          value={row.more}
          unit=""
          least={1}
          most={100}
          onCommit={(more) => keep({ more: Math.round(more ?? 1) })}
        />
        <LengthField label="Middle to middle" value={row.spacing} onCommit={(spacing) => keep({ spacing })} />
        <NumberField
          label="Direction"
          value={row.direction}
          unit="°"
          least={-360}
          most={360}
          hint="0 is right on the page, 90 down. Doors and windows keep to their wall."
          onCommit={(direction) => keep({ direction: direction ?? 0 })}
        />
      </div>
      <div className="buttons">
        <button type="button" className="button button--main" onClick={() => setOutRow(usePanels.getState().row)}>
          Place the row
        </button>
        <button type="button" className="button" onClick={() => usePanels.setState({ rowOpen: false })}>
          Close
        </button>
      </div>
    </fieldset>
  );
}
