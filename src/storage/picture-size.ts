/** How much of a file that is, in words: "0.4 MB", "less than 0.1 MB". */
export function megabytes(bytes: number): string {
  return bytes < 100_000 ? 'less than 0.1 MB' : `${(bytes / 1e6).toFixed(1)} MB`;
}
