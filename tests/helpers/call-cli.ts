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
  const said = { out: '', err: '' };
  const out = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    said.out += String(text);
    return true;
  });
  const err = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    said.err += String(text);
    return true;
  });
  try {
    return { code: await run(argv), ...said };
  } finally {
    out.mockRestore();
    err.mockRestore();
  }
}
