import { describe, expect, test } from 'vitest';
import { asPlainScript } from '../.ci/first-script.mjs';

const AT = 'https://phone.example/assets/first-0a1b2c3d.js';

/** Runs the script as a page would, and then the module that gives its exports. */
async function exportsOf(code: string): Promise<Record<string, unknown>> {
  const { script, module } = asPlainScript(code);
  new Function('document', script)({ currentScript: { src: AT } });
  return import(/* @vite-ignore */ `data:text/javascript,${encodeURIComponent(module)}`);
}

describe('the first script of the build as a plain one', () => {
  test('gives what the module gave, also under names that no variable may have', async () => {
    const given = await exportsOf(
      'const one=1;class Two{}function three(){return one+2}export{one,Two as do,three as "of three"};',
    );
    expect(Object.keys(given).sort()).toEqual(['do', 'of three', 'one']);
    expect(given.one).toBe(1);
    expect(new (given.do as new () => object)().constructor.name).toBe('Two');
    expect((given['of three'] as () => number)()).toBe(3);
  });

  test('knows where it is from, and leaves the word alone where it is only said', async () => {
    const given = await exportsOf(
      'const at=()=>import.meta.url,other=import.meta.resolve,said="import.meta";export{at,other,said};',
    );
    expect((given.at as () => string)()).toBe(AT);
    expect(given.other).toBeUndefined();
    expect(given.said).toBe('import.meta');
  });

  test('is strict, and keeps its names to itself', async () => {
    const given = await exportsOf('const own=function(){return this}();var kept=1;export{own,kept};');
    expect(given.own).toBeUndefined();
    expect('kept' in globalThis).toBe(false);
  });

  test.each([
    'import{x}from"./other.js";export{x};',
    'export const x=1;',
    'export*from"./other.js";',
    'export{x}from"./other.js";',
    'const x=1;export{x};export default x;',
    'const x=1;',
  ])('refuses what it could not carry over: %s', (code) => {
    expect(() => asPlainScript(code)).toThrow('must import nothing');
  });
});
