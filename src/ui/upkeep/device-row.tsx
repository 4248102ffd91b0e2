import type { ComponentChildren } from 'preact';
import { Button } from '../kit/button.tsx';

interface DeviceRowProps {
  readonly name: string;
  readonly under: string;
  /** What is wrong with it, beside its name. */
  readonly warn?: string | undefined;
  /** A drawing under its words. */
  readonly drawing?: ComponentChildren;
  /** Missing where its sheet is not to be opened from here. */
  readonly onAbout?: () => void;
  /** What one tap does for it; `label` names the device as well. */
  readonly action?: { readonly word: string; readonly label: string; readonly onTap: () => void };
}

/** A device in a list: tapping its name opens its sheet. */
export function DeviceRow({ name, under, warn, drawing, onAbout, action }: DeviceRowProps) {
  const words = (
    <>
      <strong>
        {name}
        {warn && <span class="warn"> · {warn}</span>}
      </strong>
      <span class="soft">{under}</span>
    </>
  );
  return (
    <li class="device-row">
      {onAbout ? (
        <Button look="bare" class="device-about" onClick={onAbout}>
          {words}
        </Button>
      ) : (
        <div class="device-about">{words}</div>
      )}
      {action && (
        <Button label={action.label} onClick={action.onTap}>
          {action.word}
        </Button>
      )}
      {drawing}
    </li>
  );
}
