interface ChoiceRowProps<T> {
  readonly label: string;
  readonly choices: readonly { readonly value: T; readonly words: string }[];
  readonly chosen: T | null;
  /** A second press of the chosen one takes the answer back. */
  readonly onChoose: (value: T | null) => void;
  /** Whether the label is only for screen readers: the heading above says it already. */
  readonly quiet?: boolean;
}

/** A few answers side by side, one press each. */
export function ChoiceRow<T extends string | number | boolean>(props: ChoiceRowProps<T>) {
  const { label, choices, chosen, onChoose, quiet = false } = props;
  return (
    <fieldset className="quick__choices">
      <legend className={quiet ? 'unseen' : 'field__label'}>{label}</legend>
      <div className="buttons">
        {choices.map(({ value, words }) => (
          <button
            key={String(value)}
            type="button"
            className="button"
            aria-pressed={value === chosen}
            onClick={() => onChoose(value === chosen ? null : value)}
          >
            {words}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
