import { Button } from '../kit/button.tsx';
import { MessagePlace } from '../kit/live.tsx';

/** In place of a screen that could not be loaded. The message below says why, and what helps. */
export function ScreenMissing() {
  return (
    <main class="section empty screen-missing">
      <h1>This screen could not be loaded</h1>
      <p>What was saved is on this phone.</p>
      <Button look="solid" onClick={() => history.back()}>
        Back
      </Button>
      <a class="button as-button" href="#/">
        All days
      </a>
      <MessagePlace />
    </main>
  );
}
