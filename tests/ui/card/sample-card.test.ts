import { expect, test } from 'vitest';
import { loadSample } from '../../../sample-days/load.ts';
import type { Day } from '../../../src/day/model.ts';
import { takeText } from '../../../src/day/slate.ts';
import { openDifferences } from '../../../src/reconcile/differences/difference.ts';
import { differencesOf } from '../../../src/reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../../src/reconcile/pairing/match-recordings.ts';
import { cardAsLogged, sampleCard } from '../../../src/ui/card/sample-card.ts';
import { describeWave, type WaveDescription } from '../../../src/wave/file/describe-wave.ts';
import { writeWave } from '../../../src/wave/file/write-wave.ts';
import { joinRecordings } from '../../../src/wave/recording/recordings.ts';
import type { ByteSource } from '../../../src/wave/riff/header-reader.ts';

const day = loadSample('full');

async function read(files: readonly ByteSource[]): Promise<WaveDescription[]> {
  const all = await Promise.all(files.map(describeWave));
  return all.map((one) => {
    if (!one.ok) throw new Error(one.problem.code);
    return one.value;
  });
}

async function told(of: Day, files: readonly ByteSource[]): Promise<string[]> {
  const match = matchRecordings(of, joinRecordings(await read(files)));
  return openDifferences(differencesOf(of, match)).map(({ code, take, recording, was, is }) => {
    const which = take === undefined ? recording?.files[0]?.name : takeText(of.takes.get(take)!);
    return `${which}: ${code}, ${JSON.stringify(was)} / ${JSON.stringify(is)}`;
  });
}

test('headers written as the sample day was logged read without a warning and agree with the log in everything', async () => {
  const files = cardAsLogged(day).map(({ wave }) => writeWave(wave));
  // 75 takes, of which three are MOS; the backup has seven of them too.
  expect(files).toHaveLength(79);
  expect((await read(files)).flatMap(({ warnings }) => warnings)).toEqual([]);
  expect(await told(day, files)).toEqual([]);
});

test('the sample card differs from the log in four places, and its files cost only their headers', async () => {
  const files = sampleCard(day);
  expect(files).toHaveLength(79);
  expect((await told(day, files)).sort()).toEqual([
    '14C_WT02.wav: recording-not-logged, null / "14C_WT02.wav"',
    '45/2: circled-differs, true / false',
    '45A/1: track-name-differs, "Stoker" / "Emil"',
    '45A/2: take-not-recorded, "45A/2" / null',
  ]);
  const sizes = files.reduce((sum, { size }) => sum + size, 0);
  expect(sizes).toBeGreaterThan(5e9);
  const bytes = (await read(files)).reduce((sum, { bytesRead }) => sum + bytesRead, 0);
  expect(bytes).toBeLessThan(3e6);
});
