import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { openBrowser } from './open-browser.ts';
import { eventually, openPage } from './open-page.ts';
import { type RunningApp, startApp } from './start-app.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

describe('about', () => {
  it('names the version and every part with its terms, by keyboard', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    const summary = page.locator('summary', { hasText: 'Units, light' });
    await summary.focus();
    await page.keyboard.press('Enter');
    const open = page.getByRole('button', { name: 'About Roundwright' });
    await open.focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'About Roundwright' });
    await eventually(() => dialog.textContent()).toContain(`Version ${packageFile.version}`);
    // Packages the app runs with, whatever their versions.
    for (const name of ['react ', 'leaflet ', 'better-sqlite3 ', 'geotiff ', 'proj4 '])
      await eventually(() => dialog.textContent()).toContain(name);
    await page.evaluate(axe.source);
    const found = (await page.evaluate(
      'axe.run(document.querySelector("dialog")).then(r => r.violations.map(v => v.id))',
    )) as string[];
    expect(found).toEqual([]);
    await page.keyboard.press('Escape');
    await eventually(() => dialog.count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 120_000);
});
