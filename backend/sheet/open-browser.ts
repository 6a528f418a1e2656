import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium, type LaunchOptions } from 'playwright-core';
import type { Result } from '../../core/units/result.ts';
import { npmChromium } from './npm-chromium.ts';

/** Names a browser to use before all others. */
const OWN_CHOICE = 'ROUNDWRIGHT_BROWSER';
const ON_PATH = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'brave'];
const LAUNCH_MS = 30_000;

/**
 * Opens a Chromium without a window: the one the user names, the one npm brings, or one that is installed.
 * @returns the browser (close it), or one problem with path `browser`
 */
export async function openBrowser(): Promise<Result<Browser>> {
  const tried: string[] = [];
  for await (const options of waysToLaunch(tried)) {
    try {
      return { ok: true, value: await chromium.launch({ headless: true, timeout: LAUNCH_MS, ...options }) };
    } catch (error) {
      tried.push(`${options.executablePath ?? options.channel}: ${firstLine(error)}`);
    }
  }
  const message = `no Chromium could be started to make the PDF: install Chrome, Chromium or Edge, or name one in ${OWN_CHOICE}${tried.length === 0 ? '' : ` (tried ${tried.join('; ')})`}`;
  return { ok: false, problems: [{ path: 'browser', message }] };
}

async function* waysToLaunch(tried: string[]): AsyncGenerator<LaunchOptions> {
  const chosen = process.env[OWN_CHOICE];
  if (chosen) {
    yield { executablePath: chosen, chromiumSandbox: hasSandbox() };
    return;
  }
  try {
    const executablePath = await npmChromium();
    // built without a sandbox; what it shows has no scripts and no network
    if (executablePath !== null) yield { executablePath, args: ['--no-sandbox', '--no-zygote', '--disable-gpu'] };
  } catch (error) {
    tried.push(`the one from npm: ${firstLine(error)}`);
  }
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  for (const program of folders.flatMap(folder => ON_PATH.map(name => join(folder, name))).filter(existsSync))
    yield { executablePath: program, chromiumSandbox: hasSandbox() };
  for (const channel of ['chrome', 'msedge']) yield { channel, chromiumSandbox: hasSandbox() };
}

/** Chromium refuses to run as root with its sandbox. */
const hasSandbox = (): boolean => process.getuid?.() !== 0;

function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split('\n')[0]!.slice(0, 200);
}
