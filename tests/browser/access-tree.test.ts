import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { ACCESS_PAGES } from './access-pages.ts';
import { type OpenPage, openPage } from './harness.ts';
import { openSample } from './samples.ts';

let open: OpenPage;
let page: Page;
beforeAll(async () => {
  open = await openPage();
  page = open.page;
  await openSample(page, 'Crowded utility');
  await page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
});

/** Roles that a user can press, type into or choose. */
const WORKED = new Set([
  'button',
  'link',
  'textbox',
  'searchbox',
  'checkbox',
  'radio',
  'combobox',
  'listbox',
  'slider',
  'spinbutton',
  'menuitem',
  'DisclosureTriangle',
  'application',
  'switch',
  'tab',
  'option',
]);
const REGIONS = new Set(['dialog', 'navigation', 'main', 'complementary', 'region', 'group', 'menu', 'img', 'table']);

interface TreeNode {
  readonly role: string;
  readonly name: string;
  readonly level: number | null;
}

/** Returns the accessibility tree of the page as the browser passes it to a screen reader, in order. */
async function treeOf(target: Page): Promise<readonly TreeNode[]> {
  const session = await target.context().newCDPSession(target);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  await session.detach();
  return nodes
    .filter(({ ignored }) => !ignored)
    .map(({ role, name, properties }) => ({
      role: String(role?.value ?? ''),
      name: String(name?.value ?? '').trim(),
      level: Number(properties?.find((each) => each.name === 'level')?.value.value ?? Number.NaN) || null,
    }));
}

/** Returns the visible headings with their levels, in order. Content behind a modal dialog is not in the tree: the first is then its title. */
const headingsOf = (nodes: readonly TreeNode[]) =>
  nodes.filter(({ role }) => role === 'heading').map(({ level, name }) => ({ level: level ?? 0, name }));

/** Returns controls whose visible words are not in their accessible name, because users of speech input say the visible words. */
const labelNotInName = () =>
  page.evaluate(() => {
    const words = (text: string) => text.toLowerCase().replace(/\s+/g, ' ').trim();
    const visible = (element: Element): string =>
      [...element.childNodes]
        .map((node) => {
          if (node instanceof Text) return node.data;
          const skipped = node instanceof Element && node.matches('.unseen, [aria-hidden="true"], svg, kbd, option');
          return node instanceof Element && !skipped && node.checkVisibility() ? ` ${visible(node)} ` : '';
        })
        .join('');
    return [...document.querySelectorAll<HTMLElement>('button, a, summary, [role="menuitem"]')]
      .filter((each) => each.checkVisibility({ visibilityProperty: true }))
      .flatMap((each) => {
        const given = each.getAttribute('aria-label');
        const by = each.getAttribute('aria-labelledby');
        const named = by
          ? by
              .split(' ')
              .map((id) => document.getElementById(id)?.textContent)
              .join(' ')
          : given;
        // A tab has only its name as its label; its state is its description.
        const shown = by
          ? words(document.getElementById(by.split(' ')[0] ?? '')?.textContent ?? '')
          : words(visible(each));
        return named === null || words(named).includes(shown) ? [] : [`"${shown}" is named "${named}"`];
      });
  });

describe('the tree of each page', () => {
  it.each(ACCESS_PAGES)('$name: names, roles, headings', async ({ name, show, leave }) => {
    onTestFinished(async () => void (await leave?.(page)));
    await show(page);
    const nodes = await treeOf(page);
    const nameless = nodes.filter((node) => WORKED.has(node.role) && node.name === '');
    expect(nameless).toEqual([]);
    const regions = nodes.filter(
      (node) => REGIONS.has(node.role) && node.name === '' && node.role !== 'main' && node.role !== 'group',
    );
    expect(regions).toEqual([]);
    const headings = headingsOf(nodes);
    const isModal = nodes.some(({ role }) => role === 'dialog');
    expect(headings.filter(({ level }) => level === 1)).toHaveLength(isModal ? 0 : 1);
    // The title of a page or of a dialog comes first, and no level is skipped.
    headings.reduce(
      (before, heading) => {
        expect(heading.level, `${name}: ${heading.name} after level ${before}`).toBeLessThanOrEqual(before + 1);
        return heading.level;
      },
      isModal ? 1 : 0,
    );
    expect(await page.locator('h1').count()).toBe(1);
    expect(await labelNotInName()).toEqual([]);
  });

  it('has one live region that speaks for all acts, beside those of what is open', async () => {
    const live = await page.evaluate(() =>
      [...document.querySelectorAll('[aria-live], [role="status"], [role="alert"], output')]
        .filter((each) => each.closest('dialog, .stage-page, .job, .side, .length-box') === null)
        .filter((each) => each.textContent !== '' || each.id === 'announcer')
        .map(({ id, className }) => id || className),
    );
    expect(live).toEqual(['announcer']);
    open.expectNoTroubles();
  });
});
