import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

/** Whatever a browser can make heard or felt, or shows over other screens: HTML, Web Audio, Vibration, Notifications. */
const LOUD = [
  /\bnew Audio\b/,
  /\bHTMLAudioElement\b/,
  /<audio\b|<video\b(?![^>]*\bmuted\b)/,
  /\.vibrate\b/,
  /\bspeechSynthesis\b/,
  /\bNotification\b|showNotification/,
  /\.(mp3|ogg|wav|m4a)\?url/,
];

/** One file listens to timecode, and has no way to play anything: it joins nothing to an output. */
const HEARS = join('src', 'app', 'ear', 'ear.ts');
const HEARING = /\b(webkit)?AudioContext\b/;
const PLAYS =
  /\.destination\b|createBufferSource|createOscillator|createMediaStreamDestination|outputChannelCount/;

test('what listens has no output', () => {
  const text = readFileSync(join(ROOT, HEARS), 'utf8');
  expect(text).toMatch(HEARING);
  expect(text).toMatch(/numberOfOutputs: 0/);
  expect(text).not.toMatch(PLAYS);
});

test('nothing in the app makes a sound, vibrates or notifies: it is a film set', () => {
  const files = ['src', 'icons'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(tsx?|js|html)$/.test(name))
      .map((name) => join(folder, name)),
  );
  const loud = [...files, 'index.html'].flatMap((name) => {
    const text = readFileSync(join(ROOT, name), 'utf8');
    const allowed = name === HEARS ? [] : [HEARING];
    return [...LOUD, ...allowed]
      .filter((pattern) => pattern.test(text))
      .map((pattern) => `${name}: ${pattern}`);
  });
  expect(files.length).toBeGreaterThan(100);
  expect(loud).toEqual([]);
});
