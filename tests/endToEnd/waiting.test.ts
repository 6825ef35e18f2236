import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { until } from './processes.ts';
import { PASSWORD, startWaitingHub, type WaitingHub } from './waitingHub.ts';

// Offline and back: what is entered on several pages while the hub is away waits, over a closed page as
// well, and is entered once. Counted in the hub's own journal.

const SLOW = 45_000; // ms; a page that lost its hub tries again after half a minute at the latest

describe.skipIf(!hasChromium)(`a page that waits for its hub, in Chromium${needsChromium}`, () => {
  let one: WaitingHub;
  beforeAll(async () => {
    one = await startWaitingHub();
  }, 120_000);
  afterAll(() => one?.kill());

  const signIn = async (page: Page, name = 'Una', password = PASSWORD) => {
    await page.getByLabel('Your name').fill(name);
    await page.getByLabel('Password').fill(password);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText(`Signed in as ${name}`).waitFor();
  };
  /** Una's phone, with the pages it opened before and the page's own files kept. */
  const phone = async (paths: readonly string[], without = '') => {
    const opened = await openBrowser({ width: 320 });
    const { page, context } = opened;
    if (without !== '') await context.addInitScript(without);
    await page.goto(one.page);
    await signIn(page);
    await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
    for (const path of paths) {
      await page.goto(one.page + path);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.getByText('Asking the hub…').first().waitFor({ state: 'detached' });
    }
    return opened;
  };
  const lost = (page: Page) =>
    page.getByText(/^No link to the hub since/).waitFor({ timeout: SLOW });
  const waits = (page: Page, n: number) =>
    page
      .getByText(n === 1 ? '1 entry waits to be sent.' : `${n} entries wait to be sent.`)
      .waitFor({ timeout: SLOW });
  const nothingWaits = (page: Page) =>
    page.locator('#waiting').waitFor({ state: 'hidden', timeout: SLOW });
  const goTo = async (page: Page, path: string) => {
    await page.goto(one.page + path);
    await page.getByRole('heading', { level: 1 }).waitFor();
  };

  const pick = async (page: Page, kg: string) => {
    const form = page.getByRole('form', { name: 'Enter a picking' });
    await form.getByRole('button', { name: /South patch/ }).click();
    await form.getByLabel('Picked, in kg').fill(kg);
    await form.getByRole('button', { name: 'Store it' }).click();
  };
  const putAway = async (page: Page, kg: string) => {
    await page.getByRole('button', { name: 'strawberry', exact: true }).click();
    await page.getByLabel('Weight in kg').fill(kg);
    await page.keyboard.press('Enter');
  };
  const lose = async (page: Page) => {
    const form = page.getByRole('form', { name: 'Log a loss' });
    await form.getByRole('button', { name: 'Long House', exact: true }).click();
    await form.getByRole('button', { name: '1 tray', exact: true }).click();
    await form.getByRole('button', { name: /^Eaten/ }).click();
  };
  const kilos = () => one.entered('pick').map(({ body }) => (body.facts as { kg: number }).kg);

  test('entries of several pages wait over a closed page, and are each entered once as of when they were said', {
    timeout: 180_000,
  }, async () => {
    const { page, context, close } = await phone(['/losses', '/cool-room', '/pickings']);
    await one.kill();
    await lost(page);
    await pick(page, '1.5');
    await waits(page, 1);
    expect(await page.getByText(/The hub has stored/).count()).toBe(0);
    expect(await page.locator('#waiting').textContent()).toMatch(/weight 1\.5.kg/);
    expect(await shutsOut(page)).toEqual([]);
    await fitsItsWidth(page);
    await goTo(page, '/cool-room'); // the page is opened anew, without its hub
    await putAway(page, '2');
    await waits(page, 2);
    await goTo(page, '/losses');
    await lose(page);
    await waits(page, 3);
    // A page nobody opened here before says so.
    await goTo(page, '/worth');
    await page
      .getByText(/was not opened on this device before/)
      .first()
      .waitFor();
    const said = Date.now();
    await page.close();

    await one.restart();
    await until(() => Date.now() - said > 1000, 'another second');
    const back = await context.newPage();
    await goTo(back, '/pickings');
    await nothingWaits(back);
    await back
      .getByText(/1\.5.kg/)
      .first()
      .waitFor();
    const [picks, lots, losses] = ['pick', 'lot', 'loss'].map((what) => one.entered(what));
    expect([picks?.length, lots?.length, losses?.length]).toEqual([1, 1, 1]);
    for (const entry of [picks?.[0], lots?.[0], losses?.[0]])
      expect(entry).toMatchObject({ who: 'Una' });
    for (const { t } of [...(picks ?? []), ...(lots ?? []), ...(losses ?? [])])
      expect(t).toBeLessThanOrEqual(said);
    await close();
  });

  test('an answer that is lost on its way makes nothing double', { timeout: 120_000 }, async () => {
    const { page, close } = await phone(['/pickings']);
    let dropped = 0;
    await page.route('**/api/picks', async (route) => {
      if (route.request().method() !== 'POST' || dropped > 0) return route.continue();
      dropped++;
      await route.fetch(); // the hub has it, and stores it …
      await route.abort('connectionreset'); // … and its answer never arrives
    });
    await pick(page, '2.25');
    await waits(page, 1);
    await nothingWaits(page);
    expect(dropped).toBe(1);
    expect(kilos().filter((kg) => kg === 2.25)).toHaveLength(1);
    await close();
  });

  test.for([
    ['with locks', '', 3],
    [
      'without, as over plain http',
      'Object.defineProperty(Navigator.prototype, "locks", { value: undefined })',
      4,
    ],
  ] as const)(
    'two tabs send what waits once, in its order: %s',
    { timeout: 120_000 },
    async ([, without, base]) => {
      const { page, context, close } = await phone(['/pickings'], without);
      const other = await context.newPage();
      await goTo(other, '/pickings');
      await other.getByRole('form', { name: 'Enter a picking' }).waitFor();
      await away(context, true);
      await lost(page);
      await lost(other);
      const order = [0.1, 0.2, 0.3, 0.4].map((more) => Number((base + more).toFixed(1)));
      for (const [i, kg] of order.entries()) {
        await pick(i % 2 === 0 ? page : other, String(kg));
        await waits(page, i + 1);
        await waits(other, i + 1);
      }
      await away(context, false);
      await nothingWaits(page);
      await nothingWaits(other);
      expect(kilos().filter((kg) => order.includes(kg))).toEqual(order);
      await close();
    },
  );
  const away = (context: BrowserContext, is: boolean) => context.setOffline(is);

  test('what the hub refuses is kept with its sentence, mended, and entered once', {
    timeout: 120_000,
  }, async () => {
    const lot = await one
      .hub()
      .post<{ id: string }>('/api/lots', { crop: 'strawberry', place: 'cool-room', kg: 6 });
    const { page, context, close } = await phone(['/cool-room']);
    await page.getByRole('button', { name: /^Take from it: 6.kg/ }).waitFor();
    await away(context, true);
    await lost(page);
    await page.getByRole('button', { name: /^Take from it: 6.kg/ }).click();
    const form = page.getByRole('form', { name: /^Take from it/ });
    await form.getByLabel('How much, in kg').fill('5');
    await page.keyboard.press('Enter');
    await waits(page, 1);
    // Meanwhile somebody else takes most of it.
    const change = { take: { how: 'used', kg: 4 } };
    expect((await patched(`/api/lots/${lot.id}`, change)).status).toBe(200);
    await away(context, false);
    await page.getByText('The hub refused 1 entry.').waitFor({ timeout: SLOW });
    await page.getByText(/The hub says: Expected at most 2 kg in take\.kg, got 5/).waitFor();
    expect(await shutsOut(page)).toEqual([]);
    await page.getByRole('button', { name: /^Change: Taken from/ }).click();
    expect(await shutsOut(page)).toEqual([]);
    await fitsItsWidth(page);
    await page.locator('#waiting').getByLabel('weight', { exact: true }).fill('2');
    await page.getByRole('button', { name: 'Send it changed' }).click();
    await nothingWaits(page);
    const taken = one
      .entered('lot')
      .filter(({ body }) => body.event === 'taken')
      .map(({ body }) => body.kg);
    expect(taken).toEqual([4, 2]);
    await close();
  });
  const patched = async (path: string, body: object) => {
    const { hub } = one;
    const signed = await fetch(new URL('/api/sign-in', hub().page), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ name: 'Una', password: PASSWORD }),
    });
    const cookie = signed.headers.getSetCookie()[0]?.split(';')[0] ?? '';
    return fetch(new URL(path, hub().page), {
      method: 'PATCH',
      headers: { cookie, 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  };

  test('without a sign-in it waits for the person who said it, and nobody else sends or sees it', {
    timeout: 120_000,
  }, async () => {
    const { code } = await one
      .hub()
      .post<{ code: string }>('/api/people/codes', { role: 'helper' });
    const joined = { code, name: 'Hal', password: 'dew on leaves' };
    expect((await one.hub().ask('/api/join', joined)).status).toBe(200);
    const { page, context, close } = await phone(['/pickings']);
    await away(context, true);
    await lost(page);
    await pick(page, '7.5');
    await waits(page, 1);
    await context.clearCookies(); // her sign-in ended meanwhile
    await away(context, false);
    await page.getByLabel('Your name').waitFor({ timeout: SLOW });
    await page.getByText('1 entry of Una waits on this device').waitFor();
    await signIn(page, 'Hal', 'dew on leaves');
    await page.getByText('1 entry of Una waits on this device').waitFor();
    expect(await page.locator('#waiting').isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByLabel('Your name').waitFor();
    expect(kilos()).not.toContain(7.5);
    await signIn(page);
    await until(() => kilos().includes(7.5), 'her picking, entered', SLOW);
    await nothingWaits(page);
    expect(one.entered('pick').at(-1)).toMatchObject({ who: 'Una' });
    expect(kilos().filter((kg) => kg === 7.5)).toHaveLength(1);
    await close();
  });
});
