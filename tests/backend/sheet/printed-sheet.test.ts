import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../../../backend/sheet/open-browser.ts';
import { sheetPdf } from '../../../backend/sheet/sheet-pdf.ts';
import { sheetHtml } from '../../../core/sheet/sheet-html.ts';
import { sampleSheet } from '../../core/sheet/sheet-sample.ts';
import { crowdedHoles, crowdedSummary } from './crowded-holes.ts';

const opened = await openBrowser();
const MM_PER_PX = 25.4 / 96; // CSS Values and Units Level 4, §6.2: 1in = 96px = 2.54cm
const PT_PER_MM = 72 / 25.4; // PDF user space: 1/72 inch (ISO 32000-1, 8.3.2.3)

// text, since these run in the page and the tests have no types of a page
const MEASURE = `({
  panels: [...document.querySelectorAll('.panel')].map(panel => panel.scrollHeight - panel.clientHeight),
  pages: [...document.querySelectorAll('.page')].map(page => page.getBoundingClientRect().height),
  widths: [...document.querySelectorAll('.page, .card')].map(box => box.scrollWidth - box.clientWidth),
  cards: document.querySelectorAll('.card').length,
})`;
const FAULT_AS_XML = `html => {
  const fault = new DOMParser().parseFromString(html, 'application/xhtml+xml').querySelector('parsererror');
  return fault === null ? null : fault.textContent;
}`;

const FORMS = [
  { format: 'pocket', paper: 'a4', size_mm: [74, 105], source: 'A7, ISO 216' },
  { format: 'folded', paper: 'a4', size_mm: [297, 210], source: 'A4 lying, ISO 216' },
  { format: 'folded', paper: 'letter', size_mm: [279.4, 215.9], source: '11 × 8.5 in' },
  { format: 'fourAPage', paper: 'a4', size_mm: [210, 297], source: 'A4, ISO 216' },
  { format: 'fourAPage', paper: 'letter', size_mm: [215.9, 279.4], source: '8.5 × 11 in' },
] as const;

// on machines for which npm brings no Chromium and none is installed there is nothing to print with
describe.runIf(opened.ok)('the sheet as Chromium prints it', () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = opened.ok ? opened.value : await Promise.reject(new Error('no browser'));
    page = await browser.newPage({ offline: true });
    await page.emulateMedia({ media: 'print' });
  });
  afterAll(() => browser.close());

  const holes = crowdedHoles();

  it.each(FORMS)(
    '$format on $paper: crowded or not, every card keeps to its place',
    async ({ format, paper, size_mm }) => {
      expect(holes.length).toBe(90);
      await page.setContent(sheetHtml(sampleSheet({ format, paper, holes, plan: crowdedSummary() })));
      const found: { pages: number[]; panels: number[]; widths: number[]; cards: number } =
        await page.evaluate(MEASURE);
      expect(found.cards).toBe(90);
      for (const [i, height] of found.pages.entries())
        expect(height * MM_PER_PX, `page ${i}`).toBeLessThanOrEqual(size_mm[1] + 0.05);
      expect(Math.max(0, ...found.panels)).toBeLessThanOrEqual(1);
      expect(Math.max(...found.widths)).toBeLessThanOrEqual(1);
    },
  );

  it.each(FORMS)(
    '$format on $paper: a PDF of as many pages, of $size_mm mm ($source)',
    async ({ format, paper, size_mm }) => {
      const html = sheetHtml(
        sampleSheet({ format, paper, holes: holes.slice(0, 9), units: { length: 'ft', speed: 'mph' } }),
      );
      const pdf = await sheetPdf(browser, html);
      if (!pdf.ok) throw new Error(JSON.stringify(pdf.problems));
      const text = Buffer.from(pdf.value).toString('latin1');
      expect(text.startsWith('%PDF-')).toBe(true);
      expect(text.match(/\/Type\s*\/Page\b/g)?.length).toBe(html.match(/<section class="page">/g)?.length);
      for (const [, width, height] of text.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)) {
        expect(Math.abs(Number(width) - size_mm[0] * PT_PER_MM)).toBeLessThanOrEqual(1);
        expect(Math.abs(Number(height) - size_mm[1] * PT_PER_MM)).toBeLessThanOrEqual(1);
      }
    },
  );

  it('is well-formed XML, tells nobody that it is read, and runs nothing', async () => {
    const asked: string[] = [];
    page.on('request', request => asked.push(request.url()));
    for (const { format } of FORMS) {
      const html = sheetHtml(sampleSheet({ format, holes: holes.slice(0, 30) }));
      await page.setContent(html);
      expect(await page.evaluate(`(${FAULT_AS_XML})(${JSON.stringify(html)})`)).toBeNull();
    }
    expect(asked.filter(url => url !== 'about:blank')).toEqual([]);
  });

  it('says so when it cannot print', async () => {
    const other = await openBrowser();
    if (!other.ok) throw new Error('no browser');
    await other.value.close();
    expect(await sheetPdf(other.value, '<p>x</p>')).toMatchObject({
      ok: false,
      problems: [{ path: 'browser', message: expect.stringContaining('could not make the PDF') }],
    });
  });
});
