import { Pieces, STRIDE } from './pieces.ts';

/** No block is made for more pieces than this, so that a zone that stays does not hold the memory of very many others. */
const LARGEST_BLOCK = 1024;

/**
 * Memory for the outlines of zones that are made together: many in one block, because an array of its own for each of
 * thousands of zones takes longer to make and to collect than its outline to compute.
 */
export class OutlineStore {
  private block = new Pieces(0);
  private next = 0;

  /** Returns a block with room for so many more pieces. A block never moves: zones refer to its array. */
  blockFor(count: number): Pieces {
    const { block } = this;
    if (block.length + count * STRIDE <= block.data.length) return block;
    const size = Math.max(count, this.next);
    // The first block fits exactly: an edit often makes one zone.
    this.next = Math.min(LARGEST_BLOCK, 2 * size);
    this.block = new Pieces(size);
    return this.block;
  }
}
