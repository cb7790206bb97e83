import { create } from 'zustand';

/** Whether the tracing image has handles on the sheet to be moved, turned and sized by. */
export const useTracingFrame = create<{ readonly open: boolean }>()(() => ({ open: false }));
