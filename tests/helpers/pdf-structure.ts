/** Returns errors in the structure of a PDF file with a plain cross-reference table (ISO 32000-1, 7.5); empty for none. */
export function structureProblems(bytes: Uint8Array): readonly string[] {
  const text = Buffer.from(bytes).toString('latin1');
  const start = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(text)?.[1] ?? Number.NaN);
  if (!text.startsWith('%PDF-1.7')) return ['no header of version 1.7'];
  if (Number.isNaN(start) || !text.startsWith('xref', start)) return ['no cross-reference table where the file says'];
  const table = text.slice(start);
  const size = Number(/\/Size (\d+)/.exec(table)?.[1]);
  const entries = [...table.matchAll(/^(\d{10}) (\d{5}) ([nf]) ?\r?\n/gm)];
  return [
    ...(entries.length === size ? [] : [`${entries.length} entries, /Size ${size}`]),
    ...entries.flatMap(([, offset, , kind], number) =>
      kind === 'f' || text.startsWith(`${number} 0 obj`, Number(offset))
        ? []
        : [`object ${number} is not at ${offset}`],
    ),
    ...streamProblems(text),
    ...catalogProblems(text),
  ];
}

/** Checks that the length of every stream is that in its dictionary (7.3.8.2). */
function streamProblems(text: string): readonly string[] {
  return [...text.matchAll(/\/Length (\d+)(?: (\d+) R)?[\s\S]{0,400}?>>\s*stream\r?\n/g)].flatMap((found) => {
    const [whole, direct, reference] = found;
    if (reference !== undefined) return [];
    const end = (found.index ?? 0) + whole.length + Number(direct);
    return /^\s*endstream/.test(text.slice(end, end + 14)) ? [] : [`a stream does not end after ${direct} bytes`];
  });
}

/** Checks that the file is tagged, has a language and bookmarks, and that its pages belong to the structure (14.7, 14.8, 12.3.3). */
function catalogProblems(text: string): readonly string[] {
  const pages = [...text.matchAll(/\/Type \/Page\b(?!s)/g)].length;
  const parts = ['/Type /Catalog', '/MarkInfo', '/Marked true', '/StructTreeRoot', '/Lang', '/Outlines'];
  const tagged = [...text.matchAll(/\/StructParents \d+/g)].length;
  return [
    ...parts.filter((part) => !text.includes(part)).map((part) => `no ${part}`),
    ...(pages > 0 ? [] : ['no page']),
    ...(tagged === pages ? [] : [`${tagged} of ${pages} pages belong to the structure`]),
  ];
}
