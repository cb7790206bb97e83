import { openFile } from '../panels/file-acts.ts';

/** Where the system opens plan files with the installed app, they come in here. */
export function takeHandedFiles(): void {
  const { launchQueue } = window as unknown as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files }) => {
    const [first] = files;
    if (first) void first.getFile().then(openFile);
  });
}

/** Of the File Handling draft of the WICG; not in the DOM types. */
interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly files: readonly { getFile(): Promise<File> }[] }) => void): void;
}
