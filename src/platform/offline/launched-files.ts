/** Receives plan files that the system opens with the installed app. @param open called with all files of one launch */
export function openLaunchedFiles(open: (files: File[]) => void): void {
  const { launchQueue } = window as unknown as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files }) => {
    void Promise.all(files.map((file) => file.getFile())).then(open);
  });
}

/** From the WICG draft on file handling; not in the DOM types. */
interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly files: readonly { getFile(): Promise<File> }[] }) => void): void;
}
