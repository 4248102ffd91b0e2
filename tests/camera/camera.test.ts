import { describe, expect, test } from 'vitest';
import { cameraProblem } from '../../src/camera/camera.ts';
import { drawCode } from '../../src/camera/code-drawing.ts';
import { codeIn } from '../../src/camera/code-reader.ts';
import { seriesOf } from '../../src/exchange/codes/series.ts';

const code = seriesOf(Uint8Array.from({ length: 640 }, (_, at) => (at * 37) & 0xff)).code(0);

type Colour = readonly [red: number, green: number, blue: number];

/** The drawing as a picture, so many pixels a module. */
function picture(text: string, scale: number, light: Colour, dark: Colour) {
  const { size, path } = drawCode(text);
  const side = size * scale;
  const data = new Uint8ClampedArray(side * side * 4);
  const paint = (fromX: number, toX: number, fromY: number, toY: number, colour: Colour): void => {
    for (let y = fromY; y < toY; y += 1)
      for (let x = fromX; x < toX; x += 1) data.set([...colour, 255], (y * side + x) * 4);
  };
  paint(0, side, 0, side, light);
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    const [left, top] = [Number(x) * scale, Number(y) * scale];
    paint(left, left + Number(run) * scale, top, top + scale, dark);
  }
  return { width: side, height: side, data };
}

describe('a code on a screen', () => {
  // ISO/IEC 18004: version 18 is 89 modules wide, and four stay free on each side.
  test('has a size that is read at arm’s length', () => {
    expect(drawCode(code).size).toBe(89 + 8);
  });

  test.each<[string, Colour]>([
    ['black on white', [255, 255, 255]],
    ['in the dark look', [216, 214, 208]],
    ['in the night look', [138, 94, 49]],
  ])('is read %s', (_, light) => {
    expect(codeIn(picture(code, 4, light, [0, 0, 0]))).toBe(code);
  });

  test('is not read where there is none', () => {
    expect(codeIn({ width: 64, height: 64, data: new Uint8ClampedArray(64 * 64 * 4) })).toBeNull();
  });
});

/** Relative luminance, and contrast against black (WCAG 2.2). */
function contrastWithBlack(colour: Colour): number {
  const [red, green, blue] = colour.map((value) => {
    const part = value / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05) / 0.05;
}

test('the night look keeps 3:1, which graphics need, with a sixth of the light of white', () => {
  const night = contrastWithBlack([138, 94, 49]);
  expect(night).toBeGreaterThanOrEqual(3);
  expect(night).toBeLessThan(21 / 4);
});

// The names of the Media Capture and Streams standard.
test.each([
  ['NotAllowedError', 'camera-refused'],
  ['SecurityError', 'camera-refused'],
  ['NotReadableError', 'camera-busy'],
  ['NotFoundError', 'camera-missing'],
  ['OverconstrainedError', 'camera-missing'],
])('%s is %s', (name, problem) => {
  expect(cameraProblem(new DOMException('no', name))).toEqual({ code: problem });
});

test('a browser without cameras has none', () => {
  expect(cameraProblem(new TypeError('undefined'))).toEqual({ code: 'camera-missing' });
});
