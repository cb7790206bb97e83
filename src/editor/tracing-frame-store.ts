import { create } from 'zustand';

/** Whether the picture under the level is being moved, turned and sized by hand. */
export const useTracingFrame = create<{ readonly open: boolean }>()(() => ({ open: false }));
