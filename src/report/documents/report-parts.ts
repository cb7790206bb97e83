/** Pieces that the sections of the report share. */
import type { Party } from '../../../geometry/plan/report-facts.ts';
import type { FlowItem } from '../flow.ts';
import { TYPE_MM } from '../style.ts';
import { type Column, headingItem, tableItems, textItems } from '../table.ts';
import type { TextStyle } from '../text.ts';

export const BODY: TextStyle = { size: 3 };
export const TABLE: TextStyle = { size: 2.75 };
export const FINE: TextStyle = { size: TYPE_MM.small };
export const MISSING = 'MISSING';
export const NOT_KNOWN = { text: MISSING, bold: true } as const;

const FACT_COLUMNS: readonly Column[] = [
  { heading: '', share: 0.28 },
  { heading: '', share: 0.72 },
];

/** Returns a heading, then names with values; an unknown value is marked as missing. */
export function facts(
  title: string,
  rows: readonly (readonly [name: string, value: string])[],
  width: number,
): readonly FlowItem[] {
  return [
    headingItem(title, width),
    ...together(
      tableItems(
        FACT_COLUMNS,
        rows.map(([name, value]) => [name, value.trim() ? { text: value, bold: value.includes(MISSING) } : NOT_KNOWN]),
        width,
        TABLE,
      ),
    ),
  ];
}

/** A higher table breaks across pages, mm. */
const HIGHEST_WHOLE = 80;

/** Returns the items kept on one page, unless they are higher than `HIGHEST_WHOLE`. */
export function together(rows: readonly FlowItem[]): readonly FlowItem[] {
  const height = rows.reduce((sum, { block, above }) => sum + block.height + above, 0);
  return height > HIGHEST_WHOLE
    ? rows
    : rows.map((row, i) => (i < rows.length - 1 ? { ...row, keepWithNext: true } : row));
}

export function section(title: string, lines: readonly string[], width: number): readonly FlowItem[] {
  return lines.length === 0
    ? []
    : [headingItem(title, width), ...lines.flatMap((words) => textItems(words, width, BODY))];
}

/** Returns name, address and numbers in one line. */
export function partyText(party: Party | undefined): string {
  if (!party) return '';
  const { name, address, telephone, email, license } = party;
  return inOneLine([name, address, telephone, email, license.trim() && `license ${license}`]);
}

/** Returns the parts that are known, in one line. */
export const inOneLine = (parts: readonly (string | undefined)[]): string =>
  parts
    .map((part) => part?.trim())
    .filter(Boolean)
    .join(', ');
