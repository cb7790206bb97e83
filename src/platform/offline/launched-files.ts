/** Where the system opens plan files with the installed app, they come in here. @param open takes the files, all at once */
export function openLaunchedFiles(open: (files: File[]) => void): void {
  const { launchQueue } = window as unknown as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files }) => {
    void Promise.all(files.map((file) => file.getFile())).then(open);
  });
}

/** Of the File Handling draft of the WICG; not in the DOM types. */
interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly files: readonly { getFile(): Promise<File> }[] }) => void): void;
}
