import { expect, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { everyAddress } from './everyAddress.ts';
import { settled, walkPage } from './walkPage.ts';
const only = process.env.ONLY?.split(',');
test('walk', { timeout: 900_000 }, async () => {
  const { page, complaints } = await openBrowser({ width: 320 });
  await page.goto(process.env.URL_ ?? '');
  await settled(page);
  const all: Record<string, string[]> = {};
  for (const path of everyAddress().filter((p) => !only || only.includes(p))) {
    const t = Date.now();
    const f = await walkPage(page, path);
    console.log(path, Date.now() - t, 'ms', f.length, '\n  ' + f.join('\n  '));
  }
  console.log(complaints);
});
