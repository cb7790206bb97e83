import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ACCESS_PAGES } from './access-pages.ts';
import { download, type OpenPage, openPage } from './harness.ts';
import { openStage, pickSample, saved } from './samples.ts';

describe('the content security policy of the page', () => {
  let open: OpenPage;
  const requested = new Set<string>();
  beforeAll(async () => {
    open = await openPage();
    open.page.on('request', (request) => requested.add(request.url()));
    await open.context.addInitScript(() => {
      const broken: string[] = [];
      Object.assign(window, { broken });
      addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
        broken.push(`${effectiveDirective} ${blockedURI}`),
      );
    });
    await open.page.reload();
  });
  afterAll(() => open.context.close());

  it('stands in the page and allows nothing from elsewhere', async () => {
    const policy = await open.page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
    expect(policy).toMatch(/^default-src 'none'; script-src 'self' 'sha256-[^']+'; /);
    expect(policy).not.toMatch(/https?:|\*|unsafe/);
  });

  it('bars a style that somebody puts into the page, and leaves those of the app', async () => {
    // A page of its own, because a blocked request is logged as an error.
    const { page, context } = await openPage();
    const seen = await page.evaluate(async () => {
      const told = new Promise<string>((done) =>
        addEventListener('securitypolicyviolation', (event) => done(event.effectiveDirective), { once: true }),
      );
      const probe = document.createElement('p');
      probe.className = 'probe';
      const style = document.createElement('style');
      style.textContent = '.probe{position:fixed}';
      document.body.append(style, probe);
      const ink = getComputedStyle(document.documentElement).getPropertyValue('--ink');
      return { barred: await told, position: getComputedStyle(probe).position, ink };
    });
    expect(seen).toEqual({ barred: 'style-src-elem', position: 'static', ink: expect.stringMatching(/^#/) });
    await context.close();
  });

  it('is not violated by any page or paper, and nothing is requested from another origin', async () => {
    const { page } = open;
    await pickSample(page, /^Plain basement/);
    await saved(page);
    for (const { show, leave } of ACCESS_PAGES) {
      await show(page);
      await leave?.(page);
    }
    await openStage(page, 'Plan sheet');
    for (const name of ['Save the report (PDF)', 'Save the sheets (PDF)', 'Save the results as a table (CSV)']) {
      await download(page, () => page.getByRole('button', { name }).click());
    }
    await openStage(page, 'Draw');
    await download(page, () => page.getByRole('button', { name: 'Picture', exact: true }).click());
    await page.getByText('Computed twice, in two ways.').first().waitFor();
    const violations = await page.evaluate(() => (window as unknown as { broken: string[] }).broken);
    expect(violations).toEqual([]);
    const { origin } = new URL(page.url());
    const elsewhere = [...requested].filter((url) => !/^(?:data|blob):/.test(url) && new URL(url).origin !== origin);
    expect(requested.size).toBeGreaterThan(20);
    expect(elsewhere).toEqual([]);
    open.expectNoTroubles();
  });
});
