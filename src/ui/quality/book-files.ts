import { partMissing } from '../../platform/part-missing.ts';
import { csv } from '../../protocol/csv.ts';
import type { ControlChart } from '../../protocol/quality/control-charts.ts';
import { chartName } from '../../protocol/quality/describe-quality.ts';
import { downloadFile, fileStem } from '../../storage/plan-files.ts';

/** Both functions return a message that says where the file is, or why it could not be saved. */

export function saveTable(name: string, rows: Parameters<typeof csv>[0]): string {
  downloadFile(`${name}.csv`, new Blob([csv(rows)], { type: 'text/csv' }));
  return `${name}.csv is in your downloads.`;
}

/** Saves the chart as an SVG in mm with its font, its flags and the cautions. */
export async function saveChart(chart: ControlChart): Promise<string> {
  const name = fileStem(`control chart ${chartName(chart)}`);
  try {
    const [{ controlChartSheet }, { withEmbeddedFont }] = await Promise.all([
      import('../../report/documents/control-chart-sheet.ts'),
      import('../../report/embedded-font.ts'),
    ]).catch(partMissing);
    const svg = await withEmbeddedFont(controlChartSheet(chart));
    downloadFile(`${name}.svg`, new Blob([svg], { type: 'image/svg+xml' }));
    return `${name}.svg is in your downloads.`;
  } catch (error) {
    return error instanceof Error ? error.message : 'The chart could not be drawn.';
  }
}
