import axe from 'axe-core';
import type { Page } from 'playwright-core';

type Violation = Readonly<{ id: string; help: string; nodes: readonly Readonly<{ html: string }>[] }>;

/** What axe finds wrong with the page as it stands, WCAG 2.2 AA and its best practices. */
export async function violationsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate(
    'axe.run({ exclude: [["iframe"]] }, { iframes: false }).then(result => result.violations)',
  )) as Violation[];
  return found.flatMap(({ id, help, nodes }) => nodes.map(node => `${id} (${help}): ${node.html.slice(0, 200)}`));
}
