import { Pieces, STRIDE } from './pieces.ts';

/** A block is made for at most this many pieces, so that one long-lived zone does not keep the memory of many others in use. */
const LARGEST_BLOCK = 1024;

/**
 * Memory for the outlines of zones that are made together. Many outlines share one block, because allocating and
 * collecting a separate array for each of thousands of zones takes longer than computing its outline.
 */
export class OutlineStore {
  private block = new Pieces(0);
  private next = 0;

  /** Returns a block with room for `count` more pieces. A block never moves: zones refer to its array. */
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
