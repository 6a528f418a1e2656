import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { openBrowser } from '../backend/sheet/open-browser.ts';
import { ICNS_SIDES, icnsFile } from './icns-file.ts';
import { icoFile, type Picture } from './ico-file.ts';

/* `npm run icons`: draws the app's mark (renderer/look/mark.svg, our own) in every size the systems ask for. */
const ROOT = resolve(import.meta.dirname, '..');
const OUT = join(ROOT, 'packaging', 'icons');
const ICO_SIDES = [16, 24, 32, 48, 64, 128, 256];
const SIDES = [...new Set([...ICO_SIDES, ...ICNS_SIDES])].sort((a, b) => a - b);

const mark = readFileSync(join(ROOT, 'renderer', 'look', 'mark.svg'), 'utf8');
const opened = await openBrowser();
if (!opened.ok) throw new Error(opened.problems[0]!.message);
const browser = opened.value;
const pictures: Picture[] = [];
try {
  for (const side of SIDES) {
    const page = await browser.newPage({ viewport: { width: side, height: side } });
    await page.setContent(
      `<style>html,body{margin:0;background:transparent}svg{display:block;width:${side}px;height:${side}px}</style>${mark}`,
    );
    pictures.push({ side, png: await page.screenshot({ omitBackground: true }) });
    await page.close();
  }
} finally {
  await browser.close();
}
mkdirSync(OUT, { recursive: true });
for (const { side, png } of pictures) writeFileSync(join(OUT, `${side}x${side}.png`), png);
writeFileSync(join(OUT, 'icon.ico'), icoFile(pictures.filter(({ side }) => ICO_SIDES.includes(side))));
writeFileSync(join(OUT, 'icon.icns'), icnsFile(pictures));
console.log(`${pictures.length} sizes, icon.ico and icon.icns in packaging/icons`);
