import { randomUUID } from 'node:crypto';
import { BrowserWindow, session, type WebContents } from 'electron';
import type { Result } from '../core/units/result.ts';
import { servePages } from './app-protocol.ts';
import { lockSession, PAGE_ORIGIN, pagePreferences, SCHEME } from './security.ts';

/** Chromium's word for a closed print dialog; every other reason is a failure. */
const CLOSED = /cancell?ed/i;

export type PagePrinter = Readonly<{
  print(html: string): Promise<Result<{ printed: boolean }>>;
  pdf(html: string): Promise<Result<Uint8Array>>;
}>;

/** Prints self-contained pages from a hidden window with no script, no preload and a session of its own. */
export function makePagePrinter(): PagePrinter {
  const waiting = new Map<string, string>();
  const pages = session.fromPartition('pages'); // without "persist:" it lives in memory only
  lockSession(pages, PAGE_ORIGIN);
  pages.protocol.handle(SCHEME, servePages(waiting));

  async function withPage<T>(html: string, use: (contents: WebContents) => Promise<Result<T>>): Promise<Result<T>> {
    const id = randomUUID();
    waiting.set(id, html);
    const window = new BrowserWindow({ show: false, webPreferences: pagePreferences(pages) });
    try {
      await window.loadURL(`${PAGE_ORIGIN}/${id}`);
      return await use(window.webContents);
    } catch (error) {
      return failed(error instanceof Error ? error.message : String(error));
    } finally {
      waiting.delete(id);
      window.destroy();
    }
  }

  return {
    print: html => withPage(html, printWithDialog),
    pdf: html =>
      withPage(html, async contents => ({
        ok: true,
        value: await contents.printToPDF({ preferCSSPageSize: true, printBackground: true, generateTaggedPDF: true }),
      })),
  };
}

function printWithDialog(contents: WebContents): Promise<Result<{ printed: boolean }>> {
  return new Promise(resolve => {
    contents.print({ silent: false, printBackground: true }, (success, reason) => {
      if (success) resolve({ ok: true, value: { printed: true } });
      else if (CLOSED.test(reason)) resolve({ ok: true, value: { printed: false } });
      else resolve(failed(reason));
    });
  });
}

function failed(reason: string): Result<never> {
  return { ok: false, problems: [{ path: 'printer', message: `the page could not be printed: ${reason}` }] };
}
