/** The cuts of each piece as sorted parameters 0…1. The buffers are reused. */
export class Cuts {
  private count = 0;
  private pieces = new Int32Array(64);
  private parameters = new Float64Array(64);
  /** Index in `sorted` of each piece's first cut, with one more entry at the end. */
  private starts = new Int32Array(64);
  private sorted = new Float64Array(64);

  clear(): void {
    this.count = 0;
  }

  add(piece: number, parameter: number): void {
    if (this.count === this.pieces.length) {
      const pieces = new Int32Array(this.count * 2);
      pieces.set(this.pieces);
      this.pieces = pieces;
      const parameters = new Float64Array(this.count * 2);
      parameters.set(this.parameters);
      this.parameters = parameters;
      this.sorted = new Float64Array(this.count * 2);
    }
    this.pieces[this.count] = piece;
    this.parameters[this.count++] = parameter;
  }

  /**
   * Sorts the cuts by piece and parameter. Required before reading.
   *
   * @param pieceCount pieces are numbered 0 to `pieceCount` − 1
   */
  sort(pieceCount: number): void {
    if (this.starts.length <= pieceCount) this.starts = new Int32Array(2 * pieceCount + 1);
    const { count, pieces, parameters, starts, sorted } = this;
    starts.fill(0, 0, pieceCount + 1);
    for (let n = 0; n < count; n++) starts[pieces[n] as number] = (starts[pieces[n] as number] as number) + 1;
    for (let i = 1; i <= pieceCount; i++) starts[i] = (starts[i] as number) + (starts[i - 1] as number);
    // Counting sort, filled from the end of each range backwards.
    for (let n = 0; n < count; n++) {
      const place = (starts[pieces[n] as number] as number) - 1;
      starts[pieces[n] as number] = place;
      sorted[place] = parameters[n] as number;
    }
    for (let i = 0; i < pieceCount; i++) sortRange(sorted, this.start(i), this.end(i));
  }

  /** Returns the index of the first cut of a piece; `end` the one after its last. */
  start(piece: number): number {
    return this.starts[piece] as number;
  }

  end(piece: number): number {
    return this.starts[piece + 1] as number;
  }

  at(cut: number): number {
    return this.sorted[cut] as number;
  }
}

/** Insertion sort: a piece has few cuts. */
function sortRange(values: Float64Array, start: number, end: number): void {
  for (let i = start + 1; i < end; i++) {
    const value = values[i] as number;
    let k = i;
    while (k > start && (values[k - 1] as number) > value) {
      values[k] = values[k - 1] as number;
      k--;
    }
    values[k] = value;
  }
}
