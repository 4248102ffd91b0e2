import { useEffect, useState } from 'preact/hooks';
import { Sheet } from '../parts/sheet.tsx';

/** The licences of everything that ships, as the build gathered them; on the phone like the rest of the app. */
export function LicenceSheet({ onClose }: { onClose: () => void }) {
  const [text, setText] = useState('');
  useEffect(() => {
    fetch('/licences.txt')
      .then(async (answer) => setText(answer.ok ? await answer.text() : 'The list is not on this phone yet.'))
      .catch(() => setText('The list is not on this phone yet. Open the app once with a signal.'));
  }, []);
  return (
    <Sheet title="Licences" under="Whose work this app is built with." onClose={onClose}>
      <pre class="section licences">{text}</pre>
    </Sheet>
  );
}
