import { forTerminal } from '../../geometry/messages/plain-text.ts';
import { setSunSource } from '../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';
import { area } from './area.ts';
import { calendar } from './calendar.ts';
import { type Call, type CliCommand, parseCall, UnusableError } from './call.ts';
import { check } from './check.ts';
import { notice } from './notice.ts';
import { serveJobs } from './paper/worker.ts';
import { quality } from './quality.ts';
import { readings } from './readings.ts';
import { report } from './report.ts';
import { sheet } from './sheet.ts';
import { spots } from './spots.ts';
import { timing } from './timing.ts';

const COMMANDS: readonly CliCommand[] = [
  check,
  area,
  spots,
  timing,
  readings,
  quality,
  calendar,
  sheet,
  report,
  notice,
];

/**
 * Runs one command and resolves to its exit code: 0 done, 1 done with a verdict that is blocked or unknown, 2 arguments or a file not
 * usable, 3 Stillspot itself failed on some plans. If no plan is usable, nothing is written to standard output; of several, the others are
 * done. Never exits the process: output may still be pending. Rejects on a fault of Stillspot outside a paper.
 */
export async function run(argv: readonly string[]): Promise<number> {
  const [name, ...rest] = argv;
  if (name === '--help' || name === '-h' || name === 'help') {
    process.stdout.write(usage());
    return 0;
  }
  const command = COMMANDS.find((one) => one.name === name);
  if (!command) {
    const got = name === undefined ? 'No command is given.' : `"${name}" is not a command.`;
    process.stderr.write(`${got}\n\n${usage()}`);
    return 2;
  }
  setSunSource(sweptArea);
  try {
    const call: Call = parseCall(command, rest);
    const { text, isData = call.json, code, problems = [] } = await command.run(call);
    print(process.stderr, [...call.refused, ...problems, ...call.remarks]);
    // JSON escapes control characters of a terminal, and keeps every text unchanged.
    process.stdout.write(isData ? text : forTerminal(text));
    return code;
  } catch (error) {
    if (!(error instanceof UnusableError)) throw error;
    print(process.stderr, [error.message]);
    return 2;
  }
}

function print(stream: NodeJS.WritableStream, lines: readonly string[]): void {
  if (lines.length > 0) stream.write(`${forTerminal(lines.join('\n'))}\n`);
}

function usage(): string {
  const calls = COMMANDS.map(({ name, synopsis, summary }) => [`${name} ${synopsis}`, summary] as const);
  const rows = [...calls, ['--json', 'one JSON document instead of text; lengths in mm, areas in m²'] as const];
  const width = Math.max(...rows.map(([call]) => call.length)) + 2;
  const lines = rows.map(([call, does]) => `  ${call.padEnd(width)}${does}\n`);
  return `Usage: npm run -s stillspot -- COMMAND FILE [options]

${lines.join('')}
Exit code 0: done, no verdict is blocked or unknown. 1: done, some verdict is. 2: the call or a file is not usable.
`;
}

serveJobs();
