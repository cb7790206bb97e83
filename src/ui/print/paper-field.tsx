import { type Orientation, PAPER_NAMES, PAPERS, type PaperName } from '../../report/paper.ts';
import { ChoiceField } from '../fields/choice-field.tsx';

interface PaperFieldProps {
  readonly label: string;
  readonly value: PaperName;
  readonly onCommit: (paper: PaperName) => void;
}

const CHOICES = PAPER_NAMES.map((value) => ({ value, words: PAPERS[value].words }));

/** A field for the size of the paper. */
export function PaperField({ label, value, onCommit }: PaperFieldProps) {
  return <ChoiceField label={label} value={value} choices={CHOICES} onCommit={onCommit} />;
}

const FITS = 'fits';
const ORIENTATION_CHOICES = [
  { value: 'portrait', words: 'Portrait' },
  { value: 'landscape', words: 'Landscape' },
] as const;
const WITH_DRAWING = [{ value: FITS, words: 'As the drawing fits' }, ...ORIENTATION_CHOICES] as const;

interface OrientationFieldProps {
  readonly label: string;
  /** Null: the orientation that shows the drawing larger. */
  readonly value: Orientation | null;
  readonly onCommit: (orientation: Orientation | null) => void;
}

/** A field for the orientation of a drawing's paper. */
export function OrientationField({ label, value, onCommit }: OrientationFieldProps) {
  return (
    <ChoiceField
      label={label}
      value={value ?? FITS}
      choices={WITH_DRAWING}
      onCommit={(chosen) => onCommit(chosen === FITS ? null : chosen)}
    />
  );
}

/** A field for the orientation of a text page, which is landscape unless another one is chosen. */
export function PageOrientationField({ label, value, onCommit }: OrientationFieldProps) {
  return <ChoiceField label={label} value={value ?? 'landscape'} choices={ORIENTATION_CHOICES} onCommit={onCommit} />;
}
