import type { ReactNode } from 'react';

interface Props {
  /** The fields. */
  readonly fields: ReactNode;
  /** The results of the answers. */
  readonly outcome: ReactNode;
}

/** The two parts of a page: the fields first, and the results beside or below them, so that an answer moves no field. */
export function Parts({ fields, outcome }: Props) {
  return (
    <div className="parts">
      <div className="parts__part">{fields}</div>
      <div className="parts__part">{outcome}</div>
    </div>
  );
}
