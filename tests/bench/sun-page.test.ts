import { expect, it } from 'vitest';
import { withSection } from './sun-page.ts';

it('a section takes the place of an earlier one, or goes to the end', () => {
  const page = '# Speed\n\nText.\n\n## How time grows\n\nMore.\n';
  const once = withSection(page, '## Direct sun\n\n1\n');
  expect(once).toBe(`${page}\n## Direct sun\n\n1\n`);
  expect(withSection(once, '## Direct sun\n\n2\n')).toBe(once.replace('1', '2'));
  const before = '# Speed\n\n## Direct sun\n\n1\n\n## How time grows\n';
  expect(withSection(before, '## Direct sun\n\n2\n')).toBe(before.replace('1', '2'));
});
