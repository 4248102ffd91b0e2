import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const TOKENS = readFileSync(resolve(import.meta.dirname, '../../../src/ui/kit/tokens.css'), 'utf8');

/** The colours of each rule of the tokens, by its selector. */
const rules = new Map(
  [...TOKENS.matchAll(/^\s*(:root[^{]*?)\s*\{([^}]*)\}/gm)].map(([, selector, body]) => [
    selector!,
    new Map(
      [...body!.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{3,6});/g)].map(([, name, value]) => [name!, value!]),
    ),
  ]),
);

/** Relative luminance, WCAG 2.2, definition "relative luminance". */
function luminance(hex: string): number {
  const long = hex.length === 4 ? hex.replace(/[0-9a-f]/g, '$&$&') : hex;
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(long.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** Contrast ratio, WCAG 2.2, definition "contrast ratio". */
function contrast(one: string, other: string): number {
  const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high! + 0.05) / (low! + 0.05);
}

const LOOKS = {
  light: ':root',
  sunlight: ':root[data-look="sunlight"]',
  dark: ':root[data-look="dark"]',
  dim: ':root[data-look="dim"]',
  'dark by the system': ':root:not([data-look])',
} as const;

test('the contrast formula gives the known ends: black on white 21, a colour on itself 1', () => {
  expect(contrast('#000', '#fff')).toBeCloseTo(21, 10);
  expect(contrast('#b27a40', '#b27a40')).toBe(1);
});

test('the tokens hold these looks and no other', () => {
  expect([...rules.keys()].sort()).toEqual(Object.values(LOOKS).sort());
});

describe.each(Object.entries(LOOKS))('the look %s', (_, selector) => {
  const colour = (name: string): string => rules.get(selector)?.get(name) ?? `no --${name}`;

  test.each([
    ['ink', 'paper'],
    ['ink', 'sheet'],
    ['soft', 'paper'],
    ['soft', 'sheet'],
    ['warn', 'paper'],
    ['warn', 'sheet'],
    ['on-solid', 'solid'],
  ])('has %s on %s at 4.5 or more: WCAG 2.2, 1.4.3', (text, ground) => {
    expect(contrast(colour(text), colour(ground))).toBeGreaterThanOrEqual(4.5);
  });

  test.each(['paper', 'sheet'])('has a mark on %s at 3 or more: WCAG 2.2, 1.4.11', (ground) => {
    expect(contrast(colour('mark'), colour(ground))).toBeGreaterThanOrEqual(3);
  });
});

test('text on a dark set is far dimmer than in the dark look, and its ground is black', () => {
  const [dark, dim] = [rules.get(LOOKS.dark)!, rules.get(LOOKS.dim)!];
  expect(luminance(dim.get('paper')!)).toBe(0);
  for (const [name, value] of dim) if (dark.has(name)) expect(luminance(value)).toBeLessThan(0.35);
  expect(luminance(dim.get('ink')!)).toBeLessThan(luminance(dark.get('ink')!) / 3);
});

/** Linear light of each primary, 0 to 1, by the transfer function of IEC 61966-2-1 (sRGB). */
const linear = (hex: string): number[] =>
  [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });

/**
 * What rods see of a colour, on the scale of its luminance: Larson, Rushmeier and Piatko, "A visibility matching tone
 * reproduction operator", IEEE TVCG 3 (1997), equation 15: V' = Y (1.33 (1 + (Y + Z) / X) - 1.68).
 */
function scotopic(hex: string): number {
  const [red, green, blue] = linear(hex) as [number, number, number];
  const x = 0.4124 * red + 0.3576 * green + 0.1805 * blue;
  const y = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  const z = 0.0193 * red + 0.1192 * green + 0.9505 * blue;
  return y * (1.33 * (1 + (y + z) / x) - 1.68);
}

test('the dim look disturbs dark-adapted eyes as little as readable text can', () => {
  const [dark, dim] = [rules.get(LOOKS.dark)!, rules.get(LOOKS.dim)!];
  for (const name of ['ink', 'soft', 'mark', 'warn', 'on-solid']) {
    const colour = dim.get(name)!;
    const perLuminance = scotopic(colour) / luminance(colour);
    expect(perLuminance, name).toBeLessThan((scotopic('#ffffff') / luminance('#ffffff')) * 0.6);
  }
  // Nothing but a warning is brighter than it must be to be read.
  for (const name of ['ink', 'soft', 'mark', 'on-solid'])
    expect(contrast(dim.get(name)!, dim.get('paper')!), name).toBeLessThan(6);
  expect(scotopic(dim.get('ink')!)).toBeLessThan(scotopic(dark.get('ink')!) / 5);
});

test('sunlight has ink on paper at the most there is', () => {
  const sun = rules.get(LOOKS.sunlight)!;
  expect(contrast(sun.get('ink')!, sun.get('paper')!)).toBeCloseTo(21, 10);
});
