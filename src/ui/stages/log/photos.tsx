import { useRef, useState } from 'react';
import type { LogEntry } from '../../../../geometry/plan/test-record.ts';
import { withLogEntry } from '../../../protocol/custody/log-entries.ts';
import { useAppStore } from '../../../state/store.ts';
import { isShowable } from '../../../storage/picture-file.ts';
import { addPhotos } from './photo-actions.ts';

interface Props {
  readonly entry: LogEntry;
  readonly name: string;
}

/** Photos of a detector in its place; stored in the plan file. */
export function Photos({ entry: { detector, photos }, name }: Props) {
  const { run, say } = useAppStore.getState();
  const [large, setLarge] = useState<number | null>(null);
  const drop = (index: number) => {
    setLarge(null);
    const refusal = run((plan) => withLogEntry(plan, detector, { photos: photos.filter((_, i) => i !== index) }));
    if (!refusal) say('The photo is removed. Undo restores it.');
  };
  return (
    <div className="photos">
      <h4 className="log__sub">Photos</h4>
      {photos.length > 0 && (
        <ul className="photos__list">
          {photos.map((photo, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the same photo may be there twice
            <li key={index} className="photo" data-large={large === index || undefined}>
              <button
                type="button"
                className="photo__show"
                aria-expanded={large === index}
                aria-label={`${large === index ? 'Smaller' : 'Larger'}: photo ${index + 1} of ${name}`}
                onClick={() => setLarge(large === index ? null : index)}
              >
                {isShowable(photo) ? (
                  <img src={photo} alt={`${name} where it lay, ${index + 1} of ${photos.length}`} />
                ) : (
                  <span className="small">This picture is damaged or too large to be shown.</span>
                )}
              </button>
              <button
                type="button"
                className="text-button"
                aria-label={`Remove photo ${index + 1} of ${name}`}
                onClick={() => drop(index)}
              >
                Remove
              </button>
            </li>
          ))}
        </ul>
      )}
      <PhotoPicker detector={detector} name={name} />
    </div>
  );
}

function PhotoPicker({ detector, name }: { readonly detector: string; readonly name: string }) {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => picker.current?.click()}>
        Add photos
      </button>
      <p className="fine soft">
        JPEG, PNG or WebP, from the camera or a file. Each is made small and stays in the plan.
      </p>
      <input
        ref={picker}
        type="file"
        // All types of pictures: with a list of types some tablets do not offer the camera. An unreadable file is refused with a message.
        accept="image/*"
        multiple
        className="unseen"
        tabIndex={-1}
        aria-label={`Photos of ${name}`}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = ''; // the same file can be picked again
          if (files.length > 0) void addPhotos(detector, files);
        }}
      />
    </>
  );
}
