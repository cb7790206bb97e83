import { vi } from 'vitest';
import { run } from '../../src/cli/main.ts';

/** Output and exit code of a command. */
export interface Called {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command and captures its output. */
export async function callCli(...argv: string[]): Promise<Called> {
  const written = { out: '', err: '' };
  const out = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    written.out += String(text);
    return true;
  });
  const err = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    written.err += String(text);
    return true;
  });
  try {
    return { code: await run(argv), ...written };
  } finally {
    out.mockRestore();
    err.mockRestore();
  }
}
