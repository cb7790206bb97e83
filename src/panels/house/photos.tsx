import { useRef } from 'react';
import type { LogEntry } from '../../../geometry/plan/model.ts';
import { logOf, withLog } from '../../job/log/edit.ts';
import { useAppStore } from '../../state/store.ts';

/** Photos of a detector where it lay; kept in the plan file itself. */
export function Photos({ entry: { detector, photos } }: { readonly entry: LogEntry }) {
  const run = useAppStore((state) => state.run);
  const picker = useRef<HTMLInputElement>(null);
  return (
    <div className="photos">
      {photos.map((photo, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the same photo may be there twice
        <figure key={index} className="photo">
          <img src={photo} alt={`${index + 1} of ${photos.length} of the detector`} />
          <button
            type="button"
            className="text-button"
            aria-label={`Take photo ${index + 1} away`}
            onClick={() => run((plan) => withLog(plan, detector, { photos: photos.filter((_, i) => i !== index) }))}
          >
            Take away
          </button>
        </figure>
      ))}
      <button type="button" className="button" onClick={() => picker.current?.click()}>
        Add a photo
      </button>
      <input
        ref={picker}
        type="file"
        accept="image/png,image/jpeg,image/webp"
        className="unseen"
        tabIndex={-1}
        aria-label="Photo of the detector"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = ''; // the same file can be picked again
          if (file) void addPhoto(detector, file);
        }}
      />
    </div>
  );
}

async function addPhoto(detector: string, file: File): Promise<void> {
  const { say } = useAppStore.getState();
  say(`Reading ${file.name || 'the photo'}…`);
  const { readPicture } = await import('../../io/picture.ts');
  const read = await readPicture(file);
  if (!read.ok) {
    say(read.reason);
    return;
  }
  const { image } = read.picture;
  const { run } = useAppStore.getState();
  if (!run((plan) => withLog(plan, detector, { photos: [...logOf(plan, detector).photos, image] }))) {
    say('The photo is in the log.');
  }
}
