import { extname } from 'node:path';
import type { Browser } from 'playwright-core';
import type { Problem, Result } from '../../core/units/result.ts';
import { checkCanWrite, writeFileWhole } from '../files/write-file-whole.ts';
import { openBrowser } from '../sheet/open-browser.ts';
import { sheetPdf } from '../sheet/sheet-pdf.ts';

/** A sheet's file, found to be writable before anything is worked out for it. */
export type SheetFile = Readonly<{ write(html: string): Promise<Result<true>>; close(): Promise<void> }>;

export const SHEET_FILE = /\.(?:html?|pdf)$/i;

/** @param out - its name ends in .html, .htm or .pdf. @returns problems with path `file` */
export async function openSheetFile(out: string): Promise<Result<SheetFile>> {
  const place = await checkCanWrite(out);
  if (!place.ok) return place;
  const browser = extname(out).toLowerCase() === '.pdf' ? await openBrowser() : null;
  if (browser?.ok === false) return { ok: false, problems: browser.problems.map(withHtmlOffer) };
  return {
    ok: true,
    value: {
      write: async html => {
        const content = await contentOf(html, browser?.value ?? null);
        if (!content.ok) return { ok: false, problems: content.problems.map(withHtmlOffer) };
        const written = await writeFileWhole(out, content.value);
        return written.ok ? { ok: true, value: true } : written;
      },
      close: async () => {
        await browser?.value.close();
      },
    },
  };
}

async function contentOf(html: string, browser: Browser | null): Promise<Result<string | Uint8Array>> {
  return browser === null ? { ok: true, value: html } : sheetPdf(browser, html);
}

function withHtmlOffer({ message }: Problem): Problem {
  return { path: 'file', message: `${message}; or write it as .html and print that from any browser` };
}
