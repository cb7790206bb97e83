import { useRef } from 'react';
import { counted } from '../../../../geometry/messages/index.ts';
import { notAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField } from '../../fields/instant-field.tsx';
import { TextField } from '../../fields/text-field.tsx';

interface Props {
  /** Answers without a name or without a time. */
  readonly lacking: readonly { readonly by: string; readonly at: string | null }[];
  /** Adds name and time to them. */
  readonly onSign: () => void;
  readonly hint: string;
}

/** Name and time of the walk, and a button that adds both to answers without them. */
export function WalkFields({ lacking, onSign, hint }: Props) {
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const { by, at } = useAppStore(({ walk }) => walk);
  const place = useRef<HTMLDivElement>(null);
  const mended = lacking.filter((row) => (by && !row.by) || (at && !row.at));
  const what = [by && 'name', at && 'time'].filter(Boolean).join(' and ');
  return (
    <div className="fields" ref={place} tabIndex={-1}>
      <div className="wide">
        <TextField label="Inspected by" value={by} onCommit={(text) => useAppStore.getState().setWalk({ by: text })} />
      </div>
      <InstantField
        label="Time of the inspection"
        value={at}
        zone={zone}
        hint={hint}
        refuse={notAhead(zone)}
        onCommit={(value) => {
          useAppStore.getState().setWalk({ at: value });
          return '';
        }}
      />
      {lacking.length > 0 && (
        <div className="wide walk-lacks">
          <p>
            {counted(lacking.length, 'answer')} without a name or a time.
            {mended.length === 0 && ' Enter both above.'}
          </p>
          {mended.length > 0 && (
            <button
              type="button"
              className="button"
              onClick={() => {
                onSign();
                place.current?.focus();
              }}
            >
              Put {what} on {counted(mended.length, 'answer')}
            </button>
          )}
        </div>
      )}
    </div>
  );
}
