import { type Orientation, PAPER_NAMES, PAPERS, type PaperName } from '../../report/paper.ts';
import { ChoiceField } from '../fields/choice-field.tsx';

interface PaperFieldProps {
  readonly label: string;
  readonly value: PaperName;
  readonly onCommit: (paper: PaperName) => void;
}

const CHOICES = PAPER_NAMES.map((value) => ({ value, words: PAPERS[value].words }));

/** The size of the paper. */
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
  /** Null: whichever shows the drawing larger. */
  readonly value: Orientation | null;
  readonly onCommit: (orientation: Orientation | null) => void;
}

/** How the paper lies. */
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

/** The same of a page of words, which is laid out for landscape unless something else is chosen. */
export function PageOrientationField({ label, value, onCommit }: OrientationFieldProps) {
  return <ChoiceField label={label} value={value ?? 'landscape'} choices={ORIENTATION_CHOICES} onCommit={onCommit} />;
}
