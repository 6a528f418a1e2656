import type { Page } from 'playwright-core';

const FOCUSED = `(() => {
  const e = document.activeElement;
  if (e === null || e === document.body) return 'nothing';
  const labels = [...(e.labels ?? [])].map(label => label.textContent).join(' ');
  return [e.tagName, e.getAttribute('aria-label') ?? '', labels, e.textContent ?? '', e.className?.baseVal ?? e.className ?? ''].join(' ');
})()`;

/** What holds the focus: element, its label and words, its class. */
export const focused = async (page: Page): Promise<string> => (await page.evaluate(FOCUSED)) as string;

/** Tabs on until what holds the focus matches; fails after a whole round. */
export async function tabTo(page: Page, wanted: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let i = 0; i < 200; i++) {
    await page.keyboard.press(key);
    if (wanted.test(await focused(page))) return;
  }
  throw new Error(`${key} never reaches ${wanted}`);
}
