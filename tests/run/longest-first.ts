import type { TestSequencer, TestSpecification } from 'vitest/node';

/** Runs the longest files first, so that at the end no process waits long for another. */
export abstract class LongestFirst implements TestSequencer {
  /** Ends of the paths of the longest-running files, without `.test.ts`, longest first. */
  protected abstract readonly longest: readonly string[];

  sort(files: TestSpecification[]): TestSpecification[] {
    return [...files].sort((a, b) => this.rank(a) - this.rank(b));
  }

  shard(files: TestSpecification[]): TestSpecification[] {
    return files;
  }

  /** Returns the order of a file that is not among the longest, 0 first. */
  protected rankOfOther(_: TestSpecification): number {
    return 0;
  }

  private rank(file: TestSpecification): number {
    const place = this.longest.findIndex((name) => file.moduleId.endsWith(`${name}.test.ts`));
    return place >= 0 ? place : this.longest.length + this.rankOfOther(file);
  }
}
