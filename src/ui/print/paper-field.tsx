import { PAPER_NAMES, PAPERS, type PaperName } from '../../report/paper.ts';
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
