interface ChoiceRowProps<T> {
  readonly label: string;
  readonly choices: readonly { readonly value: T; readonly words: string }[];
  readonly chosen: T | null;
  /** Called with the chosen answer; null after a second press on it. */
  readonly onChoose: (value: T | null) => void;
  /** Whether the label is only for screen readers, because the heading above says the same. */
  readonly quiet?: boolean;
}

/** A row of answers, each a button. */
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
