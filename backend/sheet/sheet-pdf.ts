import type { Browser } from 'playwright-core';
import type { Result } from '../../core/units/result.ts';

const LONGEST_MS = 60_000;

/**
 * Prints a sheet to PDF, pages of the size it asks for; no script of it runs, no network is reached.
 * @returns the bytes of the PDF, or one problem with path `browser`
 */
export async function sheetPdf(browser: Browser, html: string): Promise<Result<Uint8Array>> {
  try {
    const context = await browser.newContext({ javaScriptEnabled: false, offline: true });
    try {
      const page = await context.newPage();
      await page.setContent(html, { timeout: LONGEST_MS, waitUntil: 'load' });
      return { ok: true, value: await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true }) };
    } finally {
      await context.close();
    }
  } catch (error) {
    const why = (error instanceof Error ? error.message : String(error)).split('\n')[0]!;
    return { ok: false, problems: [{ path: 'browser', message: `could not make the PDF: ${why}` }] };
  }
}
