import { create } from 'zustand';

/** What the shelf says about the last act, and how it is taken back. */
interface LibraryMessage {
  readonly message: string;
  readonly undo: (() => Promise<void>) | null;
}

export const useLibraryMessage = create<LibraryMessage>()(() => ({ message: '', undo: null }));

export function showLibraryMessage(message: string, undo: LibraryMessage['undo'] = null): void {
  useLibraryMessage.setState({ message, undo });
}
