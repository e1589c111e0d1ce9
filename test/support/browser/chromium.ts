import axe from 'axe-core';
import { existsSync } from 'node:fs';
import { chromium, type Browser, type Page } from 'playwright-core';

const path = process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium';

/**
 * `describe`, or where no Chromium is installed the same reported as skipped, with a notice. Set CHROMIUM_PATH when it lies
 * elsewhere than in /usr/bin.
 */
export const describeInBrowser = existsSync(path) ? describe : skipped();

function skipped(): typeof describe.skip {
  console.warn(`No Chromium at ${path}: browser tests are skipped. Install it, or set CHROMIUM_PATH.`);
  return describe.skip;
}

export function startChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: path,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** What is wrong with a page as it stands: rules of WCAG 2.2 AA that axe finds broken, and a page wider than its window. */
export async function faultsOfPage(page: Page): Promise<string[]> {
  // Evaluated by the debugger, which the page's content security policy does not bind.
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { axe: checker } = window as unknown as { axe: typeof import('axe-core') };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await checker.run(document, { runOnly: { type: 'tag', values: tags } });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  });
  const overhang = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  return [...found, ...(overhang > 0 ? [`${overhang} pixels wider than the window`] : [])];
}
