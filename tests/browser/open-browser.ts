import sparticuz from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

/**
 * A real Chromium from npm; no display and no system browser is needed. Its package's own arguments switch off web
 * security, which the host must be tested with, so none of them is taken.
 */
export async function openBrowser(): Promise<Browser> {
  // The package holds a build for Linux only; elsewhere an installed Chrome serves.
  if (process.platform !== 'linux') return chromium.launch({ channel: 'chrome' });
  return chromium.launch({
    executablePath: await sparticuz.executablePath(),
    args: ['--no-sandbox', '--disable-gpu', '--no-zygote'],
  });
}
