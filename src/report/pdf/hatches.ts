import type { PdfDocument, TilingPattern } from './pdf-library.ts';
import type { SvgElement } from './read-svg.ts';

/** A hatch as a tiling pattern and the color that it is painted in. */
export interface PdfHatch {
  readonly pattern: TilingPattern;
  readonly color: string;
}

/** Returns the hatches that the page defines, by id. Call it after the page's scale is set: patterns take the coordinates of that moment. */
export function pageHatches(doc: PdfDocument, definitions: readonly SvgElement[]): ReadonlyMap<string, PdfHatch> {
  return new Map(
    definitions.map((pattern) => {
      const { id = '', width, height, patternTransform = '' } = pattern.attributes;
      const [, scale = '1', turn = '0'] = /^scale\(([^)]+)\) rotate\(([^)]+)\)$/.exec(patternTransform) ?? [];
      const [across, down] = [Number(width), Number(height)];
      const tile = doc.pattern([0, 0, across, down], across, down, tileOperators(doc, pattern.children));
      doc.save();
      doc.scale(Number(scale));
      doc.rotate(Number(turn));
      tile.embed();
      doc.restore();
      return [id, { pattern: tile, color: markColor(pattern.children) }] as const;
    }),
  );
}

function markColor(marks: readonly SvgElement[]): string {
  const colors = new Set(
    marks.map(({ attributes: { stroke, fill } }) => (stroke && stroke !== 'none' ? stroke : fill)),
  );
  if (colors.size !== 1) throw new Error('A hatch has one color.');
  return [...colors][0] ?? '';
}

/** Returns the operators that draw the marks of one cell. */
function tileOperators(doc: PdfDocument, marks: readonly SvgElement[]): string {
  const operators: string[] = [];
  // The library writes to the page; this collects the operators of the cell instead.
  const recorder: PdfDocument = Object.create(doc, {
    addContent: {
      value(line: string) {
        operators.push(line);
        return recorder;
      },
    },
  });
  for (const { attributes } of marks) {
    recorder.path(attributes.d ?? '');
    const isStroked = attributes.stroke !== undefined && attributes.stroke !== 'none';
    if (isStroked) operators.unshift(`${attributes['stroke-width']} w`);
    operators.push(isStroked ? 'S' : 'f');
  }
  return operators.join('\n');
}
