import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';
import { tabTo } from './tab-to.ts';
import { violationsOf } from './violations.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

describe('winds by tee time, without a mouse', () => {
  it('are listed, changed, pasted, undone, shown on every hole, printed, and found again', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    const press = (key: string) => page.keyboard.press(key);
    const type = async (text: string) => {
      await press('ControlOrMeta+A');
      await page.keyboard.type(text);
      await press('Enter');
    };
    const winds = () => page.locator('.hole-wind').allTextContents();
    const times = () =>
      page.evaluate("[...document.querySelectorAll('.wind-list tbody tr td:first-child input')].map(e => e.value)");
    const undo = async () => {
      await page.evaluate('document.activeElement.blur()');
      await press('ControlOrMeta+Z');
    };

    // one wind becomes the first of the list
    await tabTo(page, /One wind/);
    await press('ArrowRight');
    await eventually(winds).toEqual(['09:00 · WSW 4.0 m/s', '09:10 · WSW 4.0 m/s']);

    // a later time with another wind: the focus is in it at once
    await tabTo(page, /Add a time/);
    await press('Enter');
    await eventually(() => page.evaluate('document.activeElement.value')).toBe('10:00');
    await type('9:00');
    await page.getByText('09:00 has a wind already: write another time').waitFor();
    await type('9:20');
    await press('Tab');
    await type('8');
    await press('Tab');
    await type('W');
    await press('Tab');
    await type('6');
    await page.getByText('is below the wind of 8.0 m/s').waitFor();
    await planned(page);
    expect(await violationsOf(page)).toEqual([]);
    await type('12');
    await eventually(() => page.locator('.wind-list tbody tr').count()).toBe(2);
    await tabTo(page, /Min\. a hole/, 'Shift+Tab');
    await type('20');
    // by hand: hole 2 is thrown off at 09:20
    await eventually(winds).toEqual(['09:00 · WSW 4.0 m/s', '09:20 · W 8.0 m/s']);
    await planned(page);

    // shotgun start on hole 2: it is thrown off first
    await tabTo(page, /Start at/, 'Shift+Tab');
    await press('ArrowDown');
    await eventually(winds).toEqual(['09:20 · W 8.0 m/s', '09:00 · WSW 4.0 m/s']);
    await page.getByText('Hole 1 at 09:20: 8.0 m/s from the west').waitFor();
    await undo();
    await eventually(winds).toEqual(['09:00 · WSW 4.0 m/s', '09:20 · W 8.0 m/s']);

    // a row goes and comes back
    await tabTo(page, /Remove 09:20/);
    await press('Enter');
    await eventually(times).toEqual(['09:00']);
    await undo();
    await eventually(times).toEqual(['09:00', '09:20']);

    // a forecast is pasted: what cannot be read is said line by line
    await tabTo(page, /^SUMMARY .*Paste a forecast/);
    await press('Enter');
    await tabTo(page, /TEXTAREA/);
    await page.keyboard.insertText('Time\tWind\tFrom\tGusts\n09:00\t2\tnowhere\t5\n09:20\t6\tW\t9');
    await tabTo(page, /Use these winds/);
    await press('Enter');
    await page.getByText(/line 2/).waitFor();
    await tabTo(page, /TEXTAREA/, 'Shift+Tab');
    await press('ControlOrMeta+A');
    await page.keyboard.insertText('Time\tWind\tFrom\tGusts\n09:00\t2\tE\t5\n09:20\t6 m/s\t270°\t9');
    await tabTo(page, /Use these winds/);
    await press('Enter');
    await eventually(winds).toEqual(['09:00 · E 2.0 m/s', '09:20 · W 6.0 m/s']);
    await planned(page);
    expect(await violationsOf(page)).toEqual([]);

    // the sheet has each hole's own wind, and the other views say which one is theirs
    await tabTo(page, /^A .*Sheet/, 'Shift+Tab');
    await press('Enter');
    const sheet = page.frameLocator('iframe[title="The sheet as it prints"]');
    const facts = () => sheet.locator('.facts').allTextContents();
    await eventually(async () => (await facts()).join(' | ')).toMatch(
      /09:00: 2\sm\/s headwind \| .*09:20: 6\sm\/s tailwind/,
    );
    await tabTo(page, /^A .*Two winds/, 'Shift+Tab');
    await press('Enter');
    await page.getByText('By tee time: hole 1 at 09:00').waitFor();
    expect(await violationsOf(page)).toEqual([]);
    await tabTo(page, /^A .*Practice/);
    await press('Enter');
    await page.getByText('does not follow the winds by tee time').waitFor();

    // all of it is there after a reload, and the one wind too
    await page.goto(`${app.home}#round`);
    await page.reload();
    await eventually(winds).toEqual(['09:00 · E 2.0 m/s', '09:20 · W 6.0 m/s']);
    await planned(page);
    await tabTo(page, /By tee time/);
    await press('ArrowLeft');
    await eventually(() => page.locator('.wind-fields input').first().inputValue()).toBe('4.0 m/s');
    expect(await winds()).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 400_000);

  it.each([
    { width: 1280, height: 800 },
    { width: 900, height: 700 },
  ])(
    'stand in the window at $width × $height',
    async ({ width, height }) => {
      const list = [9, 10, 11, 12].map((hour, i) => ({
        at_min: hour * 60,
        speed_mps: 3 + 2 * i,
        from_deg: 250,
        gust_mps: 10.5 + i,
      }));
      const winds = { list, teeTime_min: 540, hole_min: 10 };
      await app.call('setSettings', { change: { winds, isByTeeTime: true } });
      const { page } = await openPage(browser, app, { viewport: { width, height } });
      await page.goto(app.home);
      await planned(page);
      // nothing is wider than the panel it stands in
      const over = await page.evaluate("(e => e.scrollWidth - e.clientWidth)(document.querySelector('.round-right'))");
      expect(over).toBeLessThanOrEqual(0);
      await page.context().close();
    },
    200_000,
  );
});
