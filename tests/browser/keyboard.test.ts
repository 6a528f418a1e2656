import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned } from './open-page.ts';
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

const FOCUSED = `(() => {
  const e = document.activeElement;
  return [e.tagName, e.getAttribute('aria-label') ?? '', e.textContent ?? '', e.className?.baseVal ?? e.className ?? ''].join(' ');
})()`;

/** Tabs on until what holds the focus matches; fails after a whole round. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press('Tab');
    if (wanted.test((await page.evaluate(FOCUSED)) as string)) return;
  }
  throw new Error(`Tab never reaches ${wanted}`);
}

describe('without a mouse', () => {
  it('wind, hole, aim, alternative, pin, undo and the other views are within reach', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);

    await tabTo(page, /hole-row/);
    await page.keyboard.press('ArrowDown');
    await eventually(() => page.locator('.hole-number').textContent()).toBe('2');
    await page.keyboard.press('Alt+PageUp');
    await eventually(() => page.locator('.hole-number').textContent()).toBe('1');

    await tabTo(page, /Aim 1° further left/);
    const aimed = await page.locator('.try-aim').textContent();
    await page.keyboard.press('Enter');
    await page.locator('.shot-card[data-standing="tried"]').waitFor();
    await eventually(() => page.locator('.try-aim').textContent()).not.toBe(aimed);
    await tabTo(page, /Pin this throw/);
    await page.keyboard.press('Enter');
    await page.locator('.shot-card[data-standing="pinned"]').waitFor();

    await tabTo(page, /dial-knob/);
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowRight');
    await eventually(() => page.locator('.wind-fields input').first().inputValue()).toBe('6.0 m/s');
    await tabTo(page, /INPUT/);
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('12mph');
    await page.keyboard.press('Enter');
    await eventually(() => page.locator('.wind-fields input').first().inputValue()).toBe('5.4 m/s');
    await page.keyboard.press('Tab');
    await page.keyboard.type('nowhere');
    await page.keyboard.press('Enter');
    await page.getByText(/write degrees from north/).waitFor();
    await page.keyboard.press('Escape');
    await planned(page);

    await tabTo(page, /Why/);
    await page.keyboard.press('ArrowRight');
    await page.locator('.alternative').first().waitFor();

    await page.locator('.brand').evaluate('() => document.activeElement.blur()');
    await page.keyboard.press('ControlOrMeta+Z');
    await eventually(() => page.locator('.wind-fields input').first().inputValue()).toBe('6.0 m/s');
    await page.keyboard.press('ControlOrMeta+Shift+Z');
    await eventually(() => page.locator('.wind-fields input').first().inputValue()).toBe('5.4 m/s');

    await tabTo(page, /^A .*Bag/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Players' }).waitFor();
    expect(complaints).toEqual([]);
  }, 300_000);
});
