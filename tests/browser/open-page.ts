import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { RunningApp } from './start-app.ts';

export type WatchedPage = Readonly<{
  page: Page /** What the page complained of: must stay empty. */;
  complaints: string[];
}>;

/** A page with the app open; refused content, errors and warnings of the page are kept. */
export async function openPage(
  browser: Browser,
  app: RunningApp,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', message => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', error => complaints.push(error.message));
  await page.goto(app.url);
  return { page, complaints };
}

/** Looks again and again until it holds: the machine may be busy, and the page has no other way to say it is done. */
export const eventually = <T>(look: () => T | Promise<T>) => expect.poll(look, { timeout: 120_000, interval: 100 });

/** The throw on the card: disc, then title. */
export async function shownThrow(page: Page): Promise<string> {
  return `${await page.locator('.shot-disc').textContent()} | ${await page.locator('.shot-title').textContent()}`;
}

/** Waits until nothing on the screen is from an earlier setting. */
export async function planned(page: Page): Promise<void> {
  await page.locator('.shot-disc').waitFor({ timeout: 240_000 });
  await eventually(() => page.locator('.round-progress, .shot-card[data-stale]').count()).toBe(0);
}
