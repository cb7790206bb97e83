import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import { contentArea } from '../page-frame.ts';
import { inset } from '../paper.ts';
import type { TextStyle } from '../text.ts';
import { blankLine, type DocumentOrder, framed, pageOf, testerOf } from './document-blocks.ts';
import { describePickUp, formatForOccupants } from './format-times.ts';
import { CLOSED_HOURS, entranceRequests } from './occupant-texts.ts';

/** Factors of the type size to try. */
const SHARES = Array.from({ length: 60 }, (_, i) => 1.7 - i * 0.02);

/**
 * Returns the notice for each entrance while a test runs, in type that can be read from the doorstep. Throws if it does not fit on one
 * page. After ANSI/AARST MAH-2019, Exh. 4 (a notice at the entrance); the wording is ours.
 */
export function drawEntranceNotice(order: DocumentOrder): readonly string[] {
  const area = inset(contentArea(pageOf(order)), 8);
  const fits = SHARES.map((share) => noticeBlock(order, area.width, share)).find(({ height }) => height <= area.height);
  if (!fits) throw new Error('The words are too long for one page.');
  return framed(order, 'Notice for each entrance', [fits.draw(area.x, area.y)]);
}

function noticeBlock({ plan }: DocumentOrder, width: number, share: number): Block {
  const middle = (text: string, size: number, weight: TextStyle['weight'] = 'regular') =>
    paragraph(text, width, { size: size * share, weight, anchor: 'middle' });
  const until = describePickUp(plan, formatForOccupants);
  const { name = '', telephone = '' } = plan.report?.firm ?? {};
  const who = [testerOf(plan), name.trim()].filter(Boolean).join(', ');
  return stack([
    middle('Radon test in progress', 15, 'bold'),
    space(4 * share),
    ...(isLongTerm(plan)
      ? [middle('Use the building as you always do.', 8, 'bold')]
      : [
          middle('Keep windows and exterior doors closed.', 9, 'bold'),
          middle('You may come in and go out. Close the door behind you at once.', 6),
          middle(CLOSED_HOURS, 5),
          space(2 * share),
          ...entranceRequests(plan).map((text) => middle(text, 5)),
          middle('Leave other fans as they are set.', 5),
        ]),
    space(3 * share),
    middle('Do not touch, cover or move the detectors.', 9, 'bold'),
    space(4 * share),
    until ? middle(`Until ${until}`, 7, 'bold') : blankLine('Until: day and time', width),
    space(3 * share),
    middle('In an emergency do what safety calls for first.', 5),
    middle('Then tell the tester what was opened, and when.', 5),
    space(3 * share),
    who ? middle(who, 6) : blankLine('Tester, firm', width),
    space(share),
    telephone.trim() ? middle(`Telephone ${telephone.trim()}`, 8, 'bold') : blankLine('Telephone', width),
  ]);
}
