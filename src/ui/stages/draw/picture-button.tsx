import { useRef } from 'react';
import { bringIn } from './bring-in.ts';

/** A button that picks a picture and puts it under the level. */
export function PictureButton({ words, className }: { readonly words: string; readonly className: string }) {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className={className} onClick={() => picker.current?.click()}>
        {words}
      </button>
      <input
        ref={picker}
        type="file"
        accept="image/png,image/jpeg,image/webp"
        className="unseen"
        tabIndex={-1}
        aria-label="Picture to draw over"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = ''; // the same file can be picked again
          if (file) void bringIn(file);
        }}
      />
    </>
  );
}
