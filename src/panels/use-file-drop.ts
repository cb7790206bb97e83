import { useEffect } from 'react';
import { saysPicture } from '../io/picture-kinds.ts';
import { openFile } from './file-acts.ts';
import { bringIn } from './tracing-acts.ts';

/** A plan file that is dropped anywhere on the page is opened, a picture that is dropped or pasted is laid under the level; without this the browser would leave the page for it. */
export function useFileDrop(): void {
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      const [file] = event.dataTransfer?.files ?? [];
      if (!file) return;
      event.preventDefault();
      void (saysPicture(file) ? bringIn(file) : openFile(file));
    };
    const paste = (event: ClipboardEvent) => {
      const picture = [...(event.clipboardData?.files ?? [])].find(saysPicture);
      if (!picture) return;
      event.preventDefault();
      void bringIn(picture);
    };
    window.addEventListener('paste', paste);
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('paste', paste);
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, []);
}
