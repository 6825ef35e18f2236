import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AlarmsNow, ShownAlarmSettings } from '../../hub/contract/index.ts';
import { certificate, type MailListener, openMailServer } from '../hub/alarms/mailServer.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// The page about alarms, in a real browser, on a farm where the power of the cool room is gone.

const PATIENCE = 120_000; // ms for a test: machines are noisy

describe.skipIf(!hasChromium)(`alarms in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  let mail: MailListener;
  beforeAll(async () => {
    season = await startSeasonHub();
    mail = await openMailServer({
      authOptional: false,
      onAuth: ({ password }, _session, callback) =>
        password === 'right password'
          ? callback(null, { user: 'hub' })
          : callback(new Error('Wrong password')),
    });
  }, 120_000);
  afterAll(async () => {
    await season?.kill();
    await mail?.close();
  });
  const now = () => season.hub().get<AlarmsNow>('/api/alarms');

  test('the page says that its sound is off, and sounds after one tap until somebody saw', {
    timeout: PATIENCE,
  }, async () => {
    const opened = await openBrowser();
    const { page } = opened;
    await page.goto(season.page);
    await page.getByText('Sound is off on this page.').waitFor();
    await page.getByRole('button', { name: 'Turn the sound on' }).click();
    await page.getByText('Sound is off on this page.').waitFor({ state: 'detached' });
    await page.goto(`${season.page}/alarms`);
    // A new page of the same browser: it was asked for, and waits for any tap.
    await page.getByRole('heading', { level: 1, name: 'Alarms' }).click();
    await page.getByText('Sound is on: this page sounds until somebody says “seen”.').waitFor();
    expect(await page.locator('[data-sound]').getAttribute('data-sound')).toBe('on');
    const calls = () => page.locator('body').getAttribute('data-sounded').then(Number);
    await expect.poll(calls, { timeout: 20_000 }).toBeGreaterThan(1);
    const card = page.locator('article.task-alarm').first();
    await card.getByRole('button', { name: /^Seen: / }).click();
    await page
      .getByText(/^Seen by grower at/)
      .first()
      .waitFor();
    const after = await calls();
    await page.waitForTimeout(7000); // more than two calls apart
    expect(await calls()).toBe(after);
    expect((await now()).alarms.every(({ sounds }) => !sounds)).toBe(true);
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test('people and the mail server are set on the page, and a test shows what the server said', {
    timeout: PATIENCE,
  }, async () => {
    const opened = await openBrowser();
    const { page } = opened;
    await page.goto(`${season.page}/alarms`);
    await page.getByRole('button', { name: 'Add somebody' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Ann');
    await page.getByLabel('E-mail address').fill('ann@example.org');
    await page.getByText('Save first, then test.').waitFor();
    await page.locator('form.people').getByRole('button', { name: 'Save' }).click();
    const button = page.getByRole('button', { name: 'Test e-mail to Ann' });
    await button.click();
    await page.getByText('Did not get through: no mail server is set').first().waitFor();

    await page.getByText('Mail server, webhooks, links and the “I am alive” message').click();
    await page.getByLabel('Send e-mail').check();
    await page.getByLabel('Server', { exact: true }).fill('localhost');
    await page.getByLabel('Port', { exact: true }).fill(String(mail.port));
    await page.getByLabel('From address').fill('hub@garden.example.org');
    await page.getByLabel('User (empty when it needs none)').fill('hub');
    await page.getByLabel('Password', { exact: true }).fill('right password');
    await page.getByLabel(/^Certificate to trust/).fill(certificate);
    await page.locator('form.alarm-form', { hasText: 'Mail server' }).getByRole('button').click();
    await page.getByText('The hub has stored it.').first().waitFor();
    // "Stored" stands there for the people already: wait until this form has let go of the password.
    const password = page.getByLabel('Password (kept; leave empty to keep it)');
    await expect.poll(() => password.inputValue(), { timeout: 20_000 }).toBe('');
    await button.click();
    await page.getByText('Taken by the other side: 250 queued as 7F3A').waitFor();
    expect(mail.received).toHaveLength(1);
    const set = await season.hub().get<ShownAlarmSettings>('/api/alarms/settings');
    expect(set).toMatchObject({ people: [{ name: 'Ann' }], mail: { hasPassword: true } });
    expect(JSON.stringify(set)).not.toContain('right password');
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test('a silence is told on the front page, and ended by hand', {
    timeout: PATIENCE,
  }, async () => {
    const opened = await openBrowser({ width: 1280 });
    const { page } = opened;
    await page.goto(`${season.page}/alarms`);
    await page.getByText('Nothing is silent.').waitFor();
    await page.getByLabel('Where').selectOption({ label: 'Cool room' });
    await page.getByLabel('Reason').fill('defrosting the unit');
    await page.getByRole('button', { name: 'Make it silent' }).click();
    await page.getByText(/^Alarms are silent: Cool room, until/).waitFor();
    await page.goto(season.page);
    await page.getByText(/^Alarms are silent: Cool room, defrosting the unit, until/).waitFor();
    await page.goto(`${season.page}/alarms`);
    await page.getByRole('button', { name: 'End it now' }).click();
    await page.getByText('Nothing is silent.').waitFor();
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test.for([
    { width: 320, scheme: 'light' },
    { width: 360, scheme: 'dark' },
    { width: 1280, scheme: 'light' },
  ] as const)(
    'at $width px, $scheme, the page shuts nobody out',
    {
      timeout: PATIENCE,
    },
    async (look) => {
      const opened = await openBrowser(look);
      const { page } = opened;
      await page.goto(`${season.page}/alarms`);
      await page.getByText('Log of the last 30 days').waitFor();
      await page.evaluate(
        "document.querySelectorAll('details').forEach((one) => (one.open = true))",
      );
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      if (look.width === 1280) {
        const paper = await page.pdf({ format: 'A4' });
        expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
        await page.emulateMedia({ media: 'print' });
        for (const hidden of ['nav', 'button', 'input', 'select'])
          expect(await page.locator(`${hidden}:visible`).count(), hidden).toBe(0);
      }
      expect(opened.complaints).toEqual([]);
      await opened.close();
    },
  );

  test('what there was is a table for a spreadsheet', { timeout: PATIENCE }, async () => {
    const reply = await season.hub().ask('/api/alarms/log.csv');
    expect(await reply.text()).toMatch(/^raised,cleared,.*\r\n.*Cool room,power,urgent,/);
  });
});
