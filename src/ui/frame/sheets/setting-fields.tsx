import { TIMECODE_RATES } from '../../../day/model.ts';
import type { Settings } from '../../../day/settings/settings.ts';
import { Choice, TextField } from '../../kit/field.tsx';
import { sampleRateWords } from '../../words/recording.ts';

interface SettingFieldsProps {
  readonly shown: Settings;
  readonly onSet: (fields: Partial<Settings>) => void;
}

export const PATTERN_LABEL = 'File names, e.g. {slate} {take} {take:2} {roll} {scene} {track}';

export const TimecodeRate = ({ shown, onSet }: SettingFieldsProps) => (
  <Choice
    label="Timecode rate"
    value={shown.timecodeRate}
    options={TIMECODE_RATES.map((value) => ({ value, name: value.replace('DF', ' DF') }))}
    onChoose={(timecodeRate) => onSet({ timecodeRate })}
  />
);

/** What a recorder is set to, besides its timecode and the names of its files. */
export function SoundSettings({ shown, onSet }: SettingFieldsProps) {
  return (
    <>
      <Choice
        label="Sample rate"
        value={String(shown.sampleRate)}
        options={['44100', '48000', '48048', '96000'].map((value) => ({
          value,
          name: sampleRateWords(Number(value)),
        }))}
        onChoose={(value) => onSet({ sampleRate: Number(value) })}
      />
      <Choice
        label="Bit depth"
        value={shown.bitDepth}
        options={(['16', '24', '32', '32f'] as const).map((value) => ({
          value,
          name: value.replace('f', ' float'),
        }))}
        onChoose={(bitDepth) => onSet({ bitDepth })}
      />
      <Choice
        label="Files"
        value={shown.fileLayout}
        options={[
          { value: 'poly', name: 'Poly: one file for all tracks' },
          { value: 'mono', name: 'Mono: one file per track' },
        ]}
        onChoose={(fileLayout) => onSet({ fileLayout })}
      />
    </>
  );
}

export const FilePattern = ({ shown, onSet }: SettingFieldsProps) => (
  <TextField
    label={PATTERN_LABEL}
    value={shown.filePattern}
    onInput={(filePattern) => onSet({ filePattern })}
  />
);
