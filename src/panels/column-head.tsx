import './column-head.css';

/** The head of a column, on one line with the message over the sheet: its name, and the way to fold it to a strip. */
export function ColumnHead({ name, onFold }: { readonly name: string; readonly onFold: () => void }) {
  return (
    <div className="column-head">
      <p>{name}</p>
      <button type="button" className="text-button" onClick={onFold}>
        Fold<span className="unseen"> away: {name}</span>
      </button>
    </div>
  );
}
