import type { Hint, HintAction } from '../../advice/guidance/hint.ts';
import { followHint } from '../../commands/go-to.ts';
import './hints.css';

/** Hints on missing entries and remarks, each with a button that leads there. */
export function Hints({ hints, onFollow }: { readonly hints: readonly Hint[]; readonly onFollow?: () => void }) {
  const follow = (offer: HintAction) => {
    onFollow?.();
    followHint(offer);
  };
  return (
    <ul className="hints">
      {hints.map(({ text, action: offer, missing }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two rooms without a use have the same words
        <li key={`${text}${index}`} className="hint" data-missing={missing || undefined}>
          {text}{' '}
          {offer && (
            <button type="button" className="text-button" onClick={() => follow(offer)}>
              {offer.label}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}
