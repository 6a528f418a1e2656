import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readSharePage } from '../../backend/share/share-file.ts';
import { taken } from '../backend/taken.ts';
import { openBrowser } from './open-browser.ts';
import { openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

it('a course is handed on with the sheet of its plan, and the page shows nothing but that', async () => {
  const { page, complaints } = await openPage(browser, app);
  await planned(page);
  await page.goto(`${app.home}#course`);
  const button = page.getByRole('button', { name: 'Share with sheet' });
  await button.focus();
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(download.suggestedFilename()).toBe('tiny-links-course.html');
  const text = readFileSync((await download.path())!, 'utf8');
  expect(taken(readSharePage(text)).name).toBe('Tiny Links');
  const shown = await page.context().newPage();
  await shown.setContent(text);
  // biome-ignore lint/performance/useDomNodeTextContent: what is seen is asked, and data in the page is not
  const words = await shown.locator('body').innerText();
  expect(words).toContain('Tiny Links');
  expect(words).not.toContain('course-share@1');
  expect(complaints).toEqual([]);
  await page.context().close();
}, 240_000);
