import { SHEET_ID } from '../editor/open-menu.ts';
import type { Command } from './command.ts';
import { withAny } from './shortcut.ts';

/** Regions of the page in the order of F6: a selector of the region, and one of the element in it that gets the focus. */
const REGIONS = [
  ['.stage-bar', '[aria-current], button'],
  ['.job', 'button'],
  [`#${SHEET_ID}`, ''],
  ['.stage-page', 'h2'],
  ['.side', 'button'],
] as const;

/** Commands that move the focus from one region of the page to the next, past all elements in between. */
export const REGION_COMMANDS: readonly Command[] = [
  {
    id: 'next-region',
    name: 'To the next part of the page',
    shortcuts: [{ ...withAny('F6'), alt: 'up', ctrl: 'up' }],
    modes: ['field', 'page', 'form'],
    run: (_, event) => goOn(event?.shiftKey ? -1 : 1),
    help: [
      {
        keys: 'F6, Shift + F6',
        does: 'To the next part of the page, the one before: stages, their work, plan, verdict',
      },
    ],
  },
];

function goOn(step: 1 | -1): void {
  const regions = REGIONS.flatMap(([region, inner]) => {
    const root = document.querySelector<HTMLElement>(region);
    if (!root?.checkVisibility({ visibilityProperty: true })) return [];
    const target = inner ? root.querySelector<HTMLElement>(inner) : root;
    return target ? [{ root, target }] : [];
  });
  const now = regions.findIndex(({ root }) => root.contains(document.activeElement));
  const next = now < 0 && step < 0 ? -1 : now + step;
  regions.at(next % regions.length)?.target.focus();
}
