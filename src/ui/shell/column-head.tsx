import type { ReactNode } from 'react';
import './column-head.css';

interface Props {
  readonly name: string;
  readonly onFold: () => void;
  /** Content of the head in place of the name. */
  readonly children?: ReactNode;
}

/** The head of a column, in line with the message above the sheet: its name, and the button that folds it to a strip. */
export function ColumnHead({ name, onFold, children }: Props) {
  return (
    <div className="column-head">
      {children || <p>{name}</p>}
      <button type="button" className="text-button" onClick={onFold}>
        Fold<span className="unseen"> away: {name}</span>
      </button>
    </div>
  );
}
