import type { ReactNode } from 'react';
import { TextField } from '../../fields/text-field.tsx';

interface Row<K extends string> {
  readonly key: K;
  readonly label: string;
  readonly exact?: boolean;
}

interface GroupProps {
  readonly title: string;
  /** A short text on what is entered in it. */
  readonly known: string;
  readonly children: ReactNode;
}

export function Group({ title, known, children }: GroupProps) {
  return (
    <details className="group">
      <summary>
        {title}: <span className="soft">{known.trim() || 'not given'}</span>
      </summary>
      <div className="fields">{children}</div>
    </details>
  );
}

interface TextsProps<T, K extends string> {
  readonly of: T;
  readonly rows: readonly Row<K>[];
  readonly onCommit: (next: T) => void;
}

/** A field for each text of a section. */
export function Texts<K extends string, T extends Readonly<Record<K, string>>>({
  of,
  rows,
  onCommit,
}: TextsProps<T, K>) {
  return rows.map(({ key, label, exact = false }) => (
    <TextField
      key={key}
      label={label}
      value={of[key]}
      exact={exact}
      onCommit={(text) => onCommit({ ...of, [key]: text.trim() })}
    />
  ));
}
