import type { ComponentChildren } from 'preact';
import { Button } from '../kit/button.tsx';

const AGO = [
  { minutes: 0, name: 'just now' },
  { minutes: 15, name: '15 min ago' },
  { minutes: 30, name: '30 min ago' },
  { minutes: 60, name: '1 h ago' },
  { minutes: 120, name: '2 h ago' },
  { minutes: 240, name: '4 h ago' },
] as const;

interface DoneAgoProps {
  readonly title: string;
  readonly onDone: (minutesAgo: number) => void;
  readonly children?: ComponentChildren;
}

/** Records that something was done now, or some time ago: a late entry is still right. */
export function DoneAgo({ title, onDone, children }: DoneAgoProps) {
  return (
    <div class="section">
      <h3 class="done-title">{title}</h3>
      {children}
      <div class="buttons">
        {AGO.map(({ minutes, name }) => (
          <Button key={minutes} onClick={() => onDone(minutes)}>
            {name}
          </Button>
        ))}
      </div>
    </div>
  );
}
