import { Choice } from '../kit/field.tsx';
import { chooseHand, hand } from '../kit/hand.ts';
import { chooseLook, LOOKS, type Look, look } from '../kit/looks.ts';

const NAMES: Record<Look, string> = {
  system: 'Same as phone',
  light: 'Light',
  sunlight: 'Sunlight',
  dark: 'Dark',
  dim: 'Night',
};

export function Looks() {
  return (
    <>
      <Choice
        label="Look"
        value={look.value}
        options={LOOKS.map((value) => ({ value, name: NAMES[value] }))}
        onChoose={chooseLook}
      />
      <Choice
        label="Buttons for"
        value={hand.value}
        options={[
          { value: 'right', name: 'Right hand' },
          { value: 'left', name: 'Left hand' },
        ]}
        onChoose={chooseHand}
      />
    </>
  );
}
