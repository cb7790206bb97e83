import type { Plan } from '../../../../geometry/plan/model.ts';
import { namesInLog } from '../../../protocol/custody/detectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { TextField } from '../../fields/text-field.tsx';

const NAMES = 'names-in-log';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (name: string) => void;
  readonly hint?: string;
}

/** A field for a name: typed, or picked from the names in the log. */
export function NameField({ onCommit, ...field }: Props) {
  return <TextField {...field} exact suggestions={NAMES} onCommit={(name) => onCommit(name.trim())} />;
}

/** The names that every name field of the log offers. */
export function NamesInLog({ plan }: { readonly plan: Plan }) {
  const walker = useAppStore(({ walk }) => walk.by.trim());
  const names = new Set([...(walker ? [walker] : []), ...namesInLog(plan)]);
  return (
    <datalist id={NAMES}>
      {[...names].map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  );
}
