/**
 * Runs one call of the command line and resolves to its exit code (0 done, 1 done with a verdict that is blocked or
 * unknown, 2 call or file not usable). Never ends the process itself: output may still be on its way.
 */
export async function run(argv: string[]): Promise<number> {
  const got = argv.length === 0 ? 'no command' : `"${argv[0]}"`;
  process.stderr.write(`stillspot: got ${got}, expected a command.\nUsage: npm run -s stillspot -- COMMAND FILE\n`);
  return 2;
}
