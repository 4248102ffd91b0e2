import { describe, expect, test } from 'vitest';
import { ltcDecoder } from '../../src/ltc/decoder.ts';
import { labelOfFrame } from '../../src/time/label.ts';
import { framesPerDay } from '../../src/time/rate.ts';
import { LONG, noteFault, seededNumbers } from '../browser/faults-table.ts';
import { decoded } from './decoded.ts';
import { encodeRun, render } from './encode.ts';
import { spoiltSound, type Truth, truthOf, wrongFrames } from './spoil.ts';

const SPOILT = LONG ? 10_000 : 1000;
const NOISY_FRAMES = LONG ? 1_000_000 : 6000;

describe('nothing is invented', () => {
  test(`${SPOILT} spoilt sounds: every frame given is there, where it is said to be`, {
    timeout: 1_800_000,
  }, () => {
    const met = { given: 0, there: 0, unharmed: 0, cut: 0 };
    const wrong: unknown[] = [];
    for (let seed = 1; seed <= SPOILT; seed += 1) {
      const spoilt = spoiltSound(seededNumbers(seed));
      const given = decoded(spoilt, 4096);
      met.given += given.length;
      met.there += spoilt.truth.length;
      met.cut += given.filter((frame) => truthOf(frame, spoilt.truth)?.isCut).length;
      if (given.length === spoilt.truth.length) met.unharmed += 1;
      for (const frame of wrongFrames(given, spoilt.truth)) wrong.push({ seed, how: spoilt.how, frame });
    }
    noteFault(
      'timecode by ear: spoilt sounds',
      `${SPOILT} sounds, ${met.given} of ${met.there} frames read, ${met.cut} of them cut off in their sync word`,
      wrong.length,
    );
    expect(wrong).toEqual([]);
    // Neither all is read nor nothing: the spoiling is worth its name.
    expect(met.given / met.there).toBeGreaterThan(0.3);
    expect(met.given / met.there).toBeLessThan(0.9);
    // That a cut one is ended by what follows is chance.
    expect(met.cut).toBeLessThan(met.given / 1000);
  });

  test(`${NOISY_FRAMES} frames in noise: those given are true`, { timeout: 3_600_000 }, () => {
    const next = seededNumbers(27);
    const decoder = ltcDecoder(48_000);
    const A_RUN = 250;
    const met = { given: 0, wrong: 0 };
    let at = 0;
    let truth: Truth[] = [];
    for (let done = 0; done < NOISY_FRAMES; done += A_RUN) {
      const first = Math.floor(next() * framesPerDay('25'));
      const samples = render(encodeRun(first, A_RUN, '25', { userBits: '20261128' }), {
        fps: 25,
        level: 0.3,
      });
      // From hardly any noise to nearly three times as loud as the code.
      const loud = (1.6 * ((done / A_RUN) % 16)) / 15;
      for (let i = 0; i < samples.length; i += 1) samples[i]! += loud * (next() + next() - 1);
      const fresh = Array.from({ length: A_RUN }, (_, i) => ({
        label: labelOfFrame(first + i, '25'),
        ...{ start: at + i * 1920, end: at + (i + 1) * 1920, isCut: false },
        userBits: '20261128',
        drop: false,
      }));
      truth = [...truth.slice(-4), ...fresh];
      const given = decoder.push(samples);
      met.given += given.length;
      met.wrong += wrongFrames(given, truth).length;
      at += samples.length;
    }
    const tried = `${NOISY_FRAMES} frames of which ${met.given} were given`;
    if (LONG) console.log(`Timecode in noise: ${tried}, ${met.wrong} wrong.`);
    noteFault('timecode by ear: frames in noise', tried, met.wrong);
    expect(met.wrong).toBe(0);
    expect(met.given).toBeGreaterThan(NOISY_FRAMES * 0.2);
    expect(met.given).toBeLessThan(NOISY_FRAMES * 0.95);
  });

  test('sound without timecode gives no frame', { timeout: 1_800_000 }, () => {
    const next = seededNumbers(3);
    const decoder = ltcDecoder(48_000);
    const seconds = LONG ? 3600 : 20;
    let given = 0;
    let smooth = 0;
    for (let second = 0; second < seconds; second += 1) {
      const part = [0.9, 0.3, 0.1, 0.03][second % 4]!;
      const noise = Float32Array.from({ length: 48_000 }, () => {
        smooth += part * (2 * next() - 1 - smooth);
        return smooth;
      });
      given += decoder.push(noise).length;
    }
    expect(given).toBe(0);
  });
});
