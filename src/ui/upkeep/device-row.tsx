import { Button } from '../kit/button.tsx';

interface DeviceRowProps {
  readonly name: string;
  readonly under: string;
  readonly onAbout: () => void;
  /** What one tap does for it; `label` names the device as well. */
  readonly action?: { readonly word: string; readonly label: string; readonly onTap: () => void };
}

/** A device in a list: tapping its name opens its sheet. */
export function DeviceRow({ name, under, onAbout, action }: DeviceRowProps) {
  return (
    <li class="device-row">
      <Button look="bare" class="device-about" onClick={onAbout}>
        <strong>{name}</strong>
        <span class="soft">{under}</span>
      </Button>
      {action && (
        <Button label={action.label} onClick={action.onTap}>
          {action.word}
        </Button>
      )}
    </li>
  );
}
