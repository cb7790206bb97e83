import { openFiles } from '../../commands/open-and-save.ts';
import { isPictureFile } from '../../storage/picture-file.ts';
import { bringIn } from '../stages/draw/bring-in.ts';

/**
 * Opens a plan file that is dropped anywhere on the page; imports several files into the library; puts a dropped or pasted picture under
 * the level. Without this the browser would open the file in place of the page. Never stops listening.
 */
export function startFileDrop(): void {
  window.addEventListener('paste', (event) => {
    const picture = [...(event.clipboardData?.files ?? [])].find(isPictureFile);
    if (!picture) return;
    event.preventDefault();
    void bringIn(picture);
  });
  window.addEventListener('dragover', (event) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  window.addEventListener('drop', (event) => {
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length === 0) return;
    event.preventDefault();
    const picture = files.find(isPictureFile);
    void (picture ? bringIn(picture) : openFiles(files));
  });
}
