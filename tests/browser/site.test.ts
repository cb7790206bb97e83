import type { BrowserContext, Page } from 'playwright-core';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { howMany, someOf } from '../helpers/how-many.ts';
import { sample } from './hands.ts';
import {
  accessibilityFindings,
  drag,
  inputSession,
  type OpenPage,
  openPage,
  type PageOptions,
  settled,
  touchDrag,
} from './harness.ts';
import { openStage } from './samples.ts';

const open = sample.site;
/** Opens the plain basement without a location, at the stage "Property". */
async function property(options: PageOptions = {}): Promise<OpenPage> {
  const opened = await openPage(options);
  await opened.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), {
    ...sample,
    site: { ...open, latitude: null, longitude: null, north: 0, northAnswered: false },
  });
  await openStage(opened.page, 'Property');
  const unfold = opened.page.getByRole('button', { name: /^Property panel/ });
  if (await unfold.isVisible()) await unfold.tap();
  await opened.page.getByRole('slider', { name: /^Compass rose/ }).scrollIntoViewIfNeeded();
  return opened;
}
const site = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan.site);
const steps = (page: Page) => page.evaluate(() => window.__stillspot?.store.temporal.getState().pastStates.length ?? 0);
const rose = (page: Page) => page.getByRole('slider', { name: /^Compass rose/ });
const told = (page: Page) => rose(page).getAttribute('aria-valuetext');
/** Returns a point of the dial, `far` px from its middle, clockwise from up. */
async function onDial(page: Page, degrees: number, far = 48) {
  const box = await rose(page).boundingBox();
  const angle = (degrees * Math.PI) / 180;
  const [x = 0, y = 0] = box ? [box.x + box.width / 2, box.y + box.height / 2] : [];
  return { x: x + far * Math.sin(angle), y: y - far * Math.cos(angle) };
}

describe('the tolerance of the tape', () => {
  it('is refused beyond what a plan takes, in the units of the plan, and the refusal goes', async () => {
    const { page, expectNoTroubles } = await property();
    const field = page.getByLabel('The tape may be off by', { exact: true });
    await field.fill('50 ft');
    await field.press('Enter');
    const refusal = page.getByText('50 ft is too long here. Write at most 3 ft 3 1/4 in.');
    await refusal.waitFor();
    await expect.poll(() => refusal.count()).toBe(1);
    expect(await page.locator('.message > p').first().textContent()).not.toContain('tapeTolerance');
    await field.fill('1 in');
    await field.press('Enter');
    await expect.poll(() => refusal.count()).toBe(0);
    expectNoTroubles();
  });
});

describe('the compass rose', () => {
  it('is turned by mouse, one step of history a turn, and not known again by one press', async () => {
    const { page, expectNoTroubles } = await property();
    expect(await told(page)).toBe('North is not known');
    await drag(page, await onDial(page, 0), await onDial(page, 120));
    await expect.poll(() => site(page)).toMatchObject({ north: 120, northAnswered: true });
    expect(await told(page)).toBe('120° clockwise from up the page');
    expect(await page.getByLabel('North, from up the page').inputValue()).toBe('120°');
    expect(await steps(page)).toBe(1);
    const west = await onDial(page, 270);
    await page.mouse.click(west.x, west.y);
    await expect.poll(async () => (await site(page))?.north).toBe(270);
    await page.getByRole('button', { name: 'Not known', exact: true }).click();
    await expect.poll(() => site(page)).toMatchObject({ north: 0, northAnswered: false });
    expect(await told(page)).toBe('North is not known');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => site(page)).toMatchObject({ north: 270, northAnswered: true });
    expectNoTroubles();
  });

  it('is turned by keys: a held key is one step, Escape gives it up', async () => {
    const { page, expectNoTroubles } = await property();
    await rose(page).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => site(page)).toMatchObject({ north: 0, northAnswered: true });
    for (let press = 0; press < 3; press++) await page.keyboard.down('ArrowRight');
    await page.keyboard.up('ArrowRight');
    await expect.poll(async () => (await site(page))?.north).toBe(3);
    expect(await steps(page)).toBe(2);
    await page.keyboard.press('PageDown');
    await expect.poll(async () => (await site(page))?.north).toBe(348);
    await page.keyboard.down('Home');
    expect(await told(page)).toBe('0° clockwise from up the page');
    await page.keyboard.press('Escape');
    await page.keyboard.up('Home');
    expect((await site(page))?.north).toBe(348);
    expectNoTroubles();
  });

  it('shows its degrees beside the needle and within the ticks, wherever it points', async () => {
    const { page } = await property();
    for (let north = 0; north < 360; north += howMany(37.5, 7.5)) {
      await page.evaluate((degrees) => {
        const { run } = window.__stillspot?.store.getState() ?? {};
        run?.((plan) => ({ ...plan, site: { ...plan.site, north: degrees, northAnswered: true } }));
      }, north);
      await expect.poll(() => told(page)).toBe(`${north}° clockwise from up the page`);
      const { aside, farthest } = await rose(page).evaluate((dial, degrees) => {
        const { x, y, width, height } = (dial.querySelector('.compass__degrees') as SVGTextElement).getBBox();
        const corners = [x, x + width].flatMap((cx) => [y, y + height].map((cy) => [cx - 70, cy - 70] as const));
        const [nx, ny] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
        const off = corners.map(([cx, cy]) => cx * nx + cy * ny);
        const side = Math.sign(off[0] ?? 0);
        return {
          aside: Math.min(...off.map((each) => each * side)),
          farthest: Math.max(...corners.map(([cx, cy]) => Math.hypot(cx, cy))),
        };
      }, north);
      // Half of the needle and of the light border around the figure.
      expect(aside, `${north}°`).toBeGreaterThan(3.5);
      expect(farthest, `${north}°`).toBeLessThan(61);
    }
  });

  it.each(
    someOf(
      [
        [820, 1180],
        [390, 844],
      ] as const,
      1,
    ),
  )('is turned by finger at %d × %d, and the page stays', async (width, height) => {
    const { page, expectNoTroubles } = await property({ viewport: { width, height }, touch: true });
    // Direct sun is computed after the start, and the missing data are listed above.
    await page.getByText('the location of the house is not entered').first().waitFor();
    await settled(page);
    const before = await rose(page).boundingBox();
    await touchDrag(page, await onDial(page, 0), await onDial(page, 45));
    await expect.poll(async () => (await site(page))?.north).toBe(45);
    await settled(page);
    const after = await rose(page).boundingBox();
    // Scrolled by less than a pixel.
    expect(Math.abs((after?.y ?? 0) - (before?.y ?? 0))).toBeLessThan(1);
    const right = await onDial(page, 90);
    await page.touchscreen.tap(right.x, right.y);
    await expect.poll(async () => (await site(page))?.north).toBe(90);
    expect(await accessibilityFindings(page)).toEqual([]);
    expectNoTroubles();
  });
});

describe('the compass rose under a finger that scrolls', () => {
  it('does not turn: the column scrolls, and north stays unknown', async () => {
    const { page, expectNoTroubles } = await property({ viewport: { width: 820, height: 1180 }, touch: true });
    await page.getByText('the location of the house is not entered').first().waitFor();
    await settled(page);
    const before = await rose(page).boundingBox();
    const from = await onDial(page, 200, 30);
    await touchDrag(page, from, { x: from.x + 4, y: from.y - 250 }, 16);
    await expect.poll(async () => (await rose(page).boundingBox())?.y).toBeLessThan((before?.y ?? 0) - 100);
    expect(await site(page)).toMatchObject({ north: 0, northAnswered: false });
    expect(await told(page)).toBe('North is not known');
    expect(await steps(page)).toBe(0);
    expectNoTroubles();
  });
});

describe('what was pressed on the compass rose', () => {
  // Both controls are in view at once.
  it.each(
    someOf(
      [
        [1440, 1000],
        [1024, 1366],
      ] as const,
      1,
    ),
  )('stays at %d × %d when the hint above goes, and when it comes back', async (width, height) => {
    const { page, expectNoTroubles } = await property({ viewport: { width, height } });
    // Not scrolled: removing the hint above leaves nothing to scroll.
    await page.locator('.job').evaluate((column) => column.scrollTo(0, 0));
    const hint = page.locator('.job > .hints').getByText(/north/i);
    await hint.first().waitFor();
    await settled(page);
    const y = async () => (await rose(page).boundingBox())?.y ?? 0;
    const before = await y();
    const right = await onDial(page, 90);
    await page.mouse.click(right.x, right.y);
    await expect.poll(async () => (await site(page))?.north).toBe(90);
    await expect.poll(() => hint.count()).toBe(0);
    await settled(page);
    expect(Math.abs((await y()) - before)).toBeLessThan(1);
    const unknown = page.getByRole('button', { name: 'Not known', exact: true });
    const pressed = (await unknown.boundingBox())?.y ?? 0;
    await unknown.click();
    await hint.first().waitFor();
    await settled(page);
    expect(Math.abs(((await unknown.boundingBox())?.y ?? 0) - pressed)).toBeLessThan(1);
    // Another stage begins at the top, without empty space.
    await openStage(page, 'Draw');
    await settled(page);
    expect(await page.locator('.job__head').evaluate((head) => getComputedStyle(head).marginBottom)).toBe('0px');
    expectNoTroubles();
  });
});

describe('north by the sun', () => {
  it('is set from a wall that the sun shines along and the time, and says what it lacks', async () => {
    const { page, expectNoTroubles } = await property();
    await page.getByText('Find north by the sun').click();
    const line = page.locator('details', { hasText: 'Find north by the sun' }).getByRole('status');
    const press = () => page.getByRole('button', { name: 'Set north by the sun' }).click();
    await press();
    await expect.poll(() => line.textContent()).toMatch(/^Enter the location of the house first/);
    await page.getByLabel('Latitude').fill('40.7');
    await page.getByLabel('Longitude').fill('-74');
    await page.keyboard.press('Enter');
    await press();
    await expect.poll(() => line.textContent()).toBe('Choose where the sun was and when.');
    const wall = page.getByLabel('Along that wall the sun stands');
    expect(await wall.locator('option:not([disabled])').allTextContents()).toEqual([
      'toward the top of the page',
      'toward the right of the page',
      'toward the bottom of the page',
      'toward the left of the page',
    ]);
    await wall.selectOption({ label: 'toward the bottom of the page' });
    await page.getByLabel('Seen at', { exact: true }).fill('2026-10-05T23:00');
    await page.keyboard.press('Enter');
    await press();
    await expect.poll(() => line.textContent()).toMatch(/^The sun was below the horizon then/);
    expect((await site(page))?.northAnswered).toBe(false);
    // Near solar noon of that place: the sun is in the south, so north is up the page.
    await page.getByLabel('Seen at', { exact: true }).fill('2026-10-05T12:44');
    await page.keyboard.press('Enter');
    await press();
    await expect.poll(() => line.textContent()).toMatch(/^North is set, as near as your eye/);
    const { north = 180, northAnswered } = (await site(page)) ?? {};
    expect(northAnswered).toBe(true);
    expect(Math.min(north, 360 - north)).toBeLessThan(1.5);
    expect(await accessibilityFindings(page)).toEqual([]);
    expectNoTroubles();
  });
});

describe('north by a street', () => {
  it('is set from its side of the plan and its way on a map, by keyboard, and says what it lacks', async () => {
    const { page, expectNoTroubles } = await property();
    await page.getByText('Find north by a street').focus();
    await page.keyboard.press('Enter');
    const group = page.locator('details', { hasText: 'Find north by a street' });
    const button = page.getByRole('button', { name: 'Set north by the street' });
    await button.click();
    await expect.poll(() => group.getByRole('status').textContent()).toMatch(/^Choose on which side of the plan/);
    await page.getByLabel('On the plan the street is').selectOption({ label: 'toward the right of the page' });
    await page.getByLabel('On a map it is to the').selectOption('SE');
    await button.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => site(page)).toMatchObject({ north: 315, northAnswered: true });
    expect(await group.getByRole('status').textContent()).toMatch(/^North is set, within 11°/);
    expect(await accessibilityFindings(page)).toEqual([]);
    expectNoTroubles();
  });
});

describe('north by the device', () => {
  /** Simulates the readings of a device's compass, each with a small error. */
  const turnedTo = (page: Page, alpha: number, beta = 2) =>
    page.evaluate(
      ([to, tilt]) => {
        const listen = window.addEventListener.bind(window);
        window.addEventListener = (name: string, ...rest: [EventListenerOrEventListenerObject]) => {
          listen(name, ...rest);
          if (name !== 'deviceorientationabsolute') return;
          for (const off of [-2, -1, 0, 1, 2])
            window.dispatchEvent(
              new DeviceOrientationEvent(name, { absolute: true, alpha: (to + off + 360) % 360, beta: tilt, gamma: 1 }),
            );
        };
      },
      [alpha, beta] as [number, number],
    );
  /** Grants the permissions: a browser may ask its user, and one without windows refuses. */
  const allow = (context: BrowserContext) => context.grantPermissions(['accelerometer', 'gyroscope', 'magnetometer']);
  const group = (page: Page) => page.locator('details', { hasText: 'Find north by this device' });
  const placed = (page: Page) =>
    page.evaluate(() => {
      const { run } = window.__stillspot?.store.getState() ?? {};
      run?.((plan) => ({ ...plan, site: { ...plan.site, latitude: 44.95, longitude: -68.8 } }));
    });

  it('is set by finger once the location is known: magnetic north is never taken for true north', async () => {
    const { page, context, expectNoTroubles } = await property({
      viewport: { width: 390, height: 844 },
      touch: true,
    });
    await allow(context);
    await page.getByText('Find north by this device').tap();
    const button = page.getByRole('button', { name: 'Set north by this device' });
    expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    // The top of the screen points to the east.
    await turnedTo(page, 270);
    await button.tap();
    await expect.poll(() => group(page).getByRole('status').textContent()).toMatch(/^Enter the location of the house/);
    expect(await site(page)).toMatchObject({ northAnswered: false });
    await placed(page);
    await expect.poll(() => group(page).getByRole('status').textContent()).toBe('');
    await button.tap();
    // Magnetic north is 15° west of true north there.
    await expect.poll(async () => (await site(page))?.north).toBeGreaterThan(280);
    expect((await site(page))?.north).toBeLessThan(288);
    expect(await group(page).getByRole('status').textContent()).toMatch(/Magnetic north is 1[45]° west of true north/);
    expect(await accessibilityFindings(page)).toEqual([]);
    expectNoTroubles();
  });

  it('is not set by a device that is not flat or has no compass, which is told', async () => {
    const { page, context } = await property();
    await allow(context);
    await placed(page);
    await page.clock.install();
    await page.getByText('Find north by this device').click();
    const button = page.getByRole('button', { name: 'Set north by this device' });
    await button.click();
    await page.clock.runFor(6000);
    await expect
      .poll(() => group(page).getByRole('status').textContent())
      .toMatch(/^This device gives no compass here\./);
    await turnedTo(page, 270, 80);
    await button.click();
    await page.clock.runFor(6000);
    await expect.poll(() => group(page).getByRole('status').textContent()).toMatch(/^The device was not flat\./);
    expect(await site(page)).toMatchObject({ northAnswered: false });
  });
});

describe('my location', () => {
  let opened: OpenPage;
  const line = () => opened.page.locator('.field-group', { hasText: 'Location' }).getByRole('status').textContent();
  const press = () => opened.page.getByRole('button', { name: 'Use my location' }).click();
  const place = async () => {
    const { latitude, longitude } = (await site(opened.page)) ?? {};
    return [latitude, longitude];
  };
  beforeAll(async () => {
    opened = await property();
  });
  beforeEach(async () => {
    await opened.context.clearPermissions();
  });

  it('is not asked for before the press; a refusal is told and changes nothing', async () => {
    const asked = await opened.page.evaluate(
      async () => (await navigator.permissions.query({ name: 'geolocation' })).state,
    );
    expect(asked).not.toBe('granted');
    const session = await inputSession(opened.page);
    await session.send(
      'Browser.setPermission' as never,
      { permission: { name: 'geolocation' }, setting: 'denied' } as never,
    );
    await press();
    await expect.poll(line).toMatch(/^The browser did not allow it, so nothing was changed\./);
    expect(await place()).toEqual([null, null]);
    expect(await steps(opened.page)).toBe(0);
  });

  it('is entered in one step, with how exact it is; an older one is named', async () => {
    const { page, context } = opened;
    await context.grantPermissions(['geolocation']);
    await context.setGeolocation({ latitude: 44.952_13, longitude: -93.201_28, accuracy: 24.2 });
    await press();
    await expect.poll(place).toEqual([44.9521, -93.2013]);
    expect(await line()).toBe(
      'Entered, right within 25 m as this device says. Time zone: America/Chicago, before America/New_York.',
    );
    expect(await steps(page)).toBe(1);
    await context.setGeolocation({ latitude: 45, longitude: -93, accuracy: 5200 });
    await press();
    await expect.poll(line).toContain('It was 44.9521, -93.2013; Undo restores that.');
  });

  it('tells a device that does not know, and can be stopped', async () => {
    const { page } = opened;
    const fails = (code: number) =>
      page.evaluate((each) => {
        navigator.geolocation.getCurrentPosition = (_, failed) => failed?.({ code: each } as GeolocationPositionError);
      }, code);
    await fails(2);
    await press();
    await expect.poll(line).toMatch(/^This device does not know where it is\. Type latitude and longitude instead/);
    await fails(3);
    await press();
    await expect.poll(line).toMatch(/^This device did not find out where it is within 30 s\./);
    const before = await place();
    await page.evaluate(() => {
      navigator.geolocation.getCurrentPosition = (found) => {
        Object.assign(window, { found });
      };
    });
    await press();
    await page.getByRole('button', { name: 'Stop looking' }).click();
    await page.evaluate(() => {
      const { found } = window as unknown as { found: PositionCallback };
      found({ coords: { latitude: 1, longitude: 2, accuracy: 3 } } as GeolocationPosition);
    });
    await settled(page);
    expect(await line()).toBe('Stopped: nothing was changed.');
    expect(await place()).toEqual(before);
    opened.expectNoTroubles();
  });
});
