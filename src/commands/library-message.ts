import { create } from 'zustand';

/** The message of the library about the last action, and how it is undone. */
interface LibraryMessage {
  readonly message: string;
  readonly undo: (() => Promise<void>) | null;
}

export const useLibraryMessage = create<LibraryMessage>()(() => ({ message: '', undo: null }));

export function showLibraryMessage(message: string, undo: LibraryMessage['undo'] = null): void {
  useLibraryMessage.setState({ message, undo });
}
