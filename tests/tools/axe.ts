/** axe-core 4 (MPL-2.0), another's judgement of whether everybody can use a page, in a page of a real Chromium. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const require = createRequire(import.meta.url);
const source = readFile(require.resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

const RULES = {
  all: {
    type: 'tag',
    values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  },
  /** A scheme changes nothing but colours. */
  colours: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] },
} as const;

/** Puts axe into a page. It is given by the debugger, which the page's own policy does not bind. */
export async function wakeAxe(page: Page): Promise<void> {
  await page.evaluate(await source);
}

/** What axe finds in a page it was put into, a line each. */
export async function axeFinds(page: Page, rules: keyof typeof RULES = 'all'): Promise<string[]> {
  // It would fetch the style sheet once more by script, which the pages' policy forbids.
  // What passes is told by one element a rule, not by each with a selector and its own words.
  const run = { preload: false, resultTypes: ['violations'], runOnly: RULES[rules] };
  const violations = await page.evaluate<readonly Violation[]>(
    `axe.run(document, ${JSON.stringify(run)}).then(({ violations }) => violations)`,
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary}`),
  );
}
