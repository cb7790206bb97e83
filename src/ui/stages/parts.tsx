import type { ReactNode } from 'react';

interface Props {
  /** What is asked. */
  readonly fields: ReactNode;
  /** What the answers come to. */
  readonly outcome: ReactNode;
}

/** The two parts of a page: the fields first, and beside or below them what they come to. An answer moves no field. */
export function Parts({ fields, outcome }: Props) {
  return (
    <div className="parts">
      <div className="parts__part">{fields}</div>
      <div className="parts__part">{outcome}</div>
    </div>
  );
}
