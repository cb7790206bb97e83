/** Formats figures as text and tables. */

const THIN = ' ';

/** Returns three significant digits, with a comma for thousands: 0.123, 1.23, 12.3, 123, 1,234. */
export function digits(value: number): string {
  if (!Number.isFinite(value)) return '–';
  if (value === 0) return '0';
  const places = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return value.toLocaleString('en-US', { minimumFractionDigits: places, maximumFractionDigits: places });
}

/** Returns milliseconds as µs, ms or s. */
export function duration(ms: number): string {
  if (!Number.isFinite(ms)) return '–';
  if (ms < 0.01) return `${digits(ms * 1000)}${THIN}µs`;
  return ms < 10_000 ? `${digits(ms)}${THIN}ms` : `${digits(ms / 1000)}${THIN}s`;
}

export function megabytes(bytes: number): string {
  return `${digits(bytes / 1e6)}${THIN}MB`;
}

/** Returns a share as a percentage with its sign. */
export function signedPercent(share: number): string {
  if (!Number.isFinite(share)) return '–';
  return `${share > 0 ? '+' : ''}${(share * 100).toFixed(3)}${THIN}%`;
}

/** Returns "met", or "missed by" with the percentage. */
export function againstBudget(value: number, most: number): string {
  if (value <= most) return 'met';
  return `missed by ${digits((value / most - 1) * 100)}${THIN}%`;
}

/** Returns a Markdown table; the first column is text, the others are figures. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  const rule = `| ${head.map((_, i) => (i === 0 ? '---' : '---:')).join(' | ')} |`;
  return [line(head), rule, ...rows.map(line)].join('\n');
}
