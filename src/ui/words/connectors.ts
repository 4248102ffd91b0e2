import type { InputKind, OutputKind } from '../../day/model.ts';

export const INPUT_KIND_WORD: Record<InputKind, string> = {
  mic: 'mic',
  line: 'line',
  aes3: 'AES3',
  return: 'return',
  slot: 'slot',
  network: 'network',
};

export const OUTPUT_KIND_WORD: Record<OutputKind, string> = {
  analogue: 'analogue',
  aes3: 'AES3',
  network: 'network',
  slot: 'slot',
};
