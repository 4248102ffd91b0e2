import { GetSheet } from './get-sheet.tsx';

/** Gets a day that this phone may not have yet. */
export function GetDay() {
  return (
    <main class="page">
      <GetSheet day={null} onClose={() => location.replace('#/')} />
    </main>
  );
}
