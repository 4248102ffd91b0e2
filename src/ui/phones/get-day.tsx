import { useState } from 'preact/hooks';
import { GetSheet } from './get-sheet.tsx';
import { ScanSheet } from './scan-sheet.tsx';

/** Gets a day that this phone may not have yet. */
export function GetDay() {
  const [isJoining, setJoining] = useState(false);
  const leave = (): void => {
    // A code may have led on to its day.
    if (location.hash === '#/get') location.replace('#/');
  };
  return (
    <main class="page">
      {isJoining ? (
        <ScanSheet day={null} onClose={leave} />
      ) : (
        <GetSheet day={null} onClose={leave} onJoin={() => setJoining(true)} />
      )}
    </main>
  );
}
