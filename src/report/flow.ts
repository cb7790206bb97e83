/** Places blocks in columns and pages, in order, each kept whole. */
import type { Block } from './block.ts';
import type { Area } from './paper.ts';
import { group } from './svg.ts';

/** A block of a long text. */
export interface FlowItem {
  readonly block: Block;
  /** Free height above it, mm, unless it is the first on a page. */
  readonly above: number;
  /** Drawn above it if it is the first on a page, e.g. the head of its table. */
  readonly heading?: Block;
  /** Never the last on a page. */
  readonly keepWithNext?: boolean;
  /** Identity of the table that it is a row of: rows of one table on a page are one group. */
  readonly table?: object;
}

/** Blocks with their places in the columns, and the blocks for which there was no room. */
export interface Filled {
  readonly placed: readonly { readonly block: Block; readonly x: number; readonly y: number }[];
  readonly rest: readonly Block[];
}

/** Fills one column after the other. The first block that fits in none, and all after it, are the rest, so that the order is kept. */
export function fillColumns(blocks: readonly Block[], columns: readonly Area[], gap: number): Filled {
  const placed: Filled['placed'][number][] = [];
  let column = 0;
  let used = 0;
  for (const [index, block] of blocks.entries()) {
    let area = columns[column];
    if (area && used + block.height > area.height) {
      column += 1;
      used = 0;
      area = columns[column];
    }
    if (!area || block.height > area.height) return { placed, rest: blocks.slice(index) };
    placed.push({ block, x: area.x, y: area.y + used });
    used += block.height + gap;
  }
  return { placed, rest: [] };
}

export function drawFilled({ placed }: Filled): string {
  return placed.map(({ block, x, y }) => block.draw(x, y)).join('');
}

/** A drawn block of a page with its table. */
type Drawn = { readonly table: object | undefined; readonly drawn: string };

/** Returns the SVG of the pages that a flow needs, each drawn within the same area. */
export function pour(items: readonly FlowItem[], area: Area): readonly string[] {
  const pages: Drawn[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const [index, item] of items.entries()) {
    if (used + item.above + chainHeight(items, index) > area.height) {
      pages.push([]);
      used = 0;
    }
    const page = pages.at(-1) as Drawn[];
    const put = (block: Block) => {
      page.push({ table: item.table, drawn: block.draw(area.x, area.y + used) });
      used += block.height;
    };
    if (used === 0 && item.heading) put(item.heading);
    else if (used > 0) used += item.above;
    put(item.block);
  }
  return pages.map(tablesGrouped);
}

function tablesGrouped(page: readonly Drawn[]): string {
  const runs: { readonly table: object | undefined; drawn: string }[] = [];
  for (const { table, drawn } of page) {
    const last = runs.at(-1);
    if (last && last.table === table) last.drawn += drawn;
    else runs.push({ table, drawn });
  }
  return runs.map(({ table, drawn }) => (table ? group({ role: 'table' }, drawn) : drawn)).join('');
}

/** Height of an item together with the items that must stay on its page, mm. */
function chainHeight(items: readonly FlowItem[], from: number): number {
  let height = 0;
  for (let i = from; i < items.length; i++) {
    const item = items[i];
    if (!item) break;
    height += item.block.height + (i > from ? item.above : 0);
    if (!item.keepWithNext) break;
  }
  return height;
}
