import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResults {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary: string }[];
  }[];
}

/**
 * What axe-core finds against WCAG 2.2 A and AA and its own good practice, or against some of its rules, a line a finding; empty
 * when nothing.
 */
export async function axeFindings(page: Page, rules?: readonly string[]): Promise<string[]> {
  // Evaluated through the debugger, so the page's policy, which forbids any other script, stays as it is.
  await page.evaluate(source);
  const results = (await page.evaluate(
    `axe.run(document, ${JSON.stringify({ resultTypes: ['violations'], runOnly: rules })})`,
  )) as AxeResults;
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')}: ${node.failureSummary.replace(/\s+/g, ' ')}`),
  );
}
