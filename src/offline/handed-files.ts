import { openFiles } from '../panels/file-acts.ts';

/** Where the system opens plan files with the installed app, they come in here. */
export function takeHandedFiles(): void {
  const { launchQueue } = window as unknown as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files }) => {
    void Promise.all(files.map((file) => file.getFile())).then(openFiles);
  });
}

/** Of the File Handling draft of the WICG; not in the DOM types. */
interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly files: readonly { getFile(): Promise<File> }[] }) => void): void;
}
