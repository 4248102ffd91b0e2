import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Finding {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string }[];
}

/**
 * What axe-core finds on the page as it stands, each with the first element it is about. Where a sheet is open it looks
 * at that: the page behind it is out of reach, and a place of its own.
 */
export async function axeFindings(page: Page, runOnly: readonly string[]): Promise<string[]> {
  // By the protocol, which the page's own policy on scripts does not forbid.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  const found = await page.evaluate(async (asked) => {
    const { axe } = window as unknown as {
      axe: { run(on: Element, options: object): Promise<{ violations: Finding[] }> };
    };
    const on = document.querySelector('dialog[open]') ?? document.documentElement;
    return (await axe.run(on, { runOnly: asked, resultTypes: ['violations'] })).violations;
  }, runOnly);
  return found.map(({ id, help, nodes }) => `${id}, ${help}: ${nodes[0]?.html.slice(0, 160)}`);
}
