import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { openBrowser } from '../browser/open-browser.ts';
import { startApp } from '../browser/start-app.ts';
import { startTinyApp } from '../browser/start-tiny-app.ts';

// How long until the app is of use, how smoothly the wind is dragged, how much is loaded.
// Run it on an idle machine: node tests/bench/renderer.ts

const ROOT = resolve(import.meta.dirname, '../../dist/renderer');
const LOADS = 7;
const DRAG_MS = 8000;
const SOFTWARE_NOTE = 'Chromium from npm, headless, drawing in software (no graphics card)';

type Drag = Readonly<{ frames: number; seconds: number; slowest_ms: number }>;

/** Counts frames between now and the call of `window.stopFrames`. */
const COUNT_FRAMES = `(() => {
  let frames = 0, slowest = 0, last = performance.now();
  const begun = last;
  let running = true;
  const tick = now => { if (!running) return; frames++; slowest = Math.max(slowest, now - last); last = now; requestAnimationFrame(tick); };
  requestAnimationFrame(tick);
  window.stopFrames = () => { running = false; return { frames, seconds: (performance.now() - begun) / 1000, slowest_ms: slowest }; };
})()`;
/** Milliseconds from navigation until the holes and a throw stood on the page. */
const FIRST_USE =
  "new Promise(done => { const look = () => document.querySelector('.shot-disc') && document.querySelector('.hole-row') ? requestAnimationFrame(() => done(performance.now())) : requestAnimationFrame(look); look(); })";

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const SIZE = { viewport: { width: 1280, height: 800 } };

/** A round of two holes planned before: what a player sees on every start but the first. */
async function measureLoads(browser: Browser): Promise<number[]> {
  const app = await startTinyApp();
  try {
    const page = await (await browser.newContext(SIZE)).newPage();
    await page.goto(app.url);
    await page.locator('.shot-disc').waitFor({ timeout: 240_000 });
    await page.locator('.round-progress').waitFor({ state: 'detached', timeout: 240_000 });
    const loads: number[] = [];
    for (let i = 0; i <= LOADS; i++) {
      await page.reload({ waitUntil: 'commit' });
      const taken_ms = (await page.evaluate(FIRST_USE)) as number;
      if (i > 0) loads.push(taken_ms);
    }
    return loads;
  } finally {
    await app.close();
  }
}

/** The wind turned round and round on the first hole of the sample course, while plans are made for it. */
async function measureDrag(browser: Browser): Promise<Drag & Readonly<{ moves: number; answers: number }>> {
  const app = await startApp();
  try {
    const page = await (await browser.newContext(SIZE)).newPage();
    await page.goto(app.url);
    await page.locator('.shot-disc').waitFor({ timeout: 240_000 });
    let answers = 0;
    const counting = app.subscribe(event => {
      if (event.kind === 'holePlanned') answers++;
    });
    const box = (await page.locator('.wind-dial').boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x + 40, y);
    await page.mouse.down();
    await page.evaluate(COUNT_FRAMES);
    const end = performance.now() + DRAG_MS;
    let moves = 0;
    while (performance.now() < end) {
      const turn = moves++ / 12;
      await page.mouse.move(x + 45 * Math.cos(turn), y + 45 * Math.sin(turn));
    }
    const drag = (await page.evaluate('window.stopFrames()')) as Drag;
    counting();
    await page.mouse.up();
    return { ...drag, moves, answers };
  } finally {
    await app.close();
  }
}

const browser = await openBrowser();
try {
  const loads = await measureLoads(browser);
  const drag = await measureDrag(browser);
  const sizes = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
    .filter(name => /\.(js|css|html|svg)$/.test(name))
    .map(name => gzipSync(readFileSync(join(ROOT, name))).length);
  console.log(SOFTWARE_NOTE);
  console.log(
    `first useful paint  min ${Math.min(...loads).toFixed(0)} ms, mean ${mean(loads).toFixed(0)} ms, max ${Math.max(...loads).toFixed(0)} ms of ${LOADS} loads, a round planned before`,
  );
  console.log(
    `dragging the wind   ${(drag.frames / drag.seconds).toFixed(0)} frames a second, slowest frame ${drag.slowest_ms.toFixed(0)} ms; ${drag.moves} moves and ${drag.answers} plans of the hole in ${drag.seconds.toFixed(1)} s`,
  );
  console.log(`renderer            ${(sizes.reduce((sum, size) => sum + size, 0) / 1024).toFixed(0)} KiB gzipped`);
} finally {
  await browser.close();
}
