import { create } from 'zustand';

/** What the shelf says about the last act, and how it is taken back. */
interface ShelfSays {
  readonly message: string;
  readonly undo: (() => Promise<void>) | null;
}

export const useShelfSays = create<ShelfSays>()(() => ({ message: '', undo: null }));

export function shelfSays(message: string, undo: ShelfSays['undo'] = null): void {
  useShelfSays.setState({ message, undo });
}
