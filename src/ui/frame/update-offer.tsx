import { useContext } from 'preact/hooks';
import { Button } from '../kit/button.tsx';
import { RestartContext } from './context.ts';
import { complain } from './messages.ts';
import { version } from './version.ts';

/** A new version is offered at a pause, never forced; it also starts with the next start of the app. */
export function UpdateOffer() {
  const restart = useContext(RestartContext);
  if (version.value.update === 'current') return null;
  const run = async (): Promise<void> => {
    const result = await restart();
    if (!result.ok) complain(result.problem);
  };
  return (
    <p class="section">
      A new version is ready. It starts when the app is next opened.{' '}
      <Button onClick={() => void run()}>Restart now</Button>
    </p>
  );
}
