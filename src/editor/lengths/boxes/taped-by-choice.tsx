import { useState } from 'react';
import { TAPED_BY, type TapedBy } from '../../../../geometry/dimension/taped-by.ts';
import { useAppStore } from '../../../state/store.ts';
import { withSaid } from '../../../state/wall-settings.ts';

const WORDS: Readonly<Record<TapedBy, string>> = { inside: 'Inside', outside: 'Outside', center: 'Center' };

/** The choice of how lengths between walls are taped: asked at the first length, and offered at each. */
export function TapedByChoice({ onChoice }: { readonly onChoice: () => void }) {
  const settings = useAppStore(({ wallSettings }) => wallSettings);
  // The words stay as long as the box is open: a shorter line would move the pressed button.
  const [isAsked] = useState(!settings.said.includes('by'));
  return (
    <fieldset className="box-choice" onPointerDown={(event) => event.preventDefault()}>
      <legend>{isAsked ? 'How do you tape it? The next ones are taped so too.' : 'Taped'}</legend>
      {TAPED_BY.map((by) => (
        <button
          key={by}
          type="button"
          className="button"
          aria-pressed={by === settings.by}
          onClick={() => {
            useAppStore.getState().setWallSettings(withSaid(settings, { by }));
            onChoice();
          }}
        >
          {WORDS[by]}
        </button>
      ))}
    </fieldset>
  );
}

/** Stores the shown choice as answered once a length is set, so that it is not asked again. */
export function keepTapedBy(): void {
  const { wallSettings, setWallSettings } = useAppStore.getState();
  if (!wallSettings.said.includes('by')) setWallSettings(withSaid(wallSettings, { by: wallSettings.by }));
}
