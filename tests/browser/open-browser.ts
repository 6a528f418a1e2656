import { type Browser, chromium } from 'playwright-core';
import { npmChromium } from '../../backend/sheet/npm-chromium.ts';

/**
 * A real Chromium from npm; no display and no system browser is needed. Its package's own arguments switch off web
 * security, which the host must be tested with, so none of them is taken.
 */
export async function openBrowser(): Promise<Browser> {
  const executablePath = await npmChromium();
  // The package holds a build for Linux on x64 only; elsewhere an installed Chrome serves.
  if (executablePath === null) return chromium.launch({ channel: 'chrome' });
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--no-zygote'] });
}
