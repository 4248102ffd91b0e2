import { useEffect, useState } from 'preact/hooks';
import { Sheet } from '../kit/sheet.tsx';

/** The licences of everything that ships, gathered by the build and available offline. */
export function LicenceSheet({ onClose }: { onClose: () => void }) {
  const [text, setText] = useState('');
  useEffect(() => {
    fetch('/licences.txt')
      .then(async (answer) => setText(answer.ok ? await answer.text() : 'The list is not on this phone yet.'))
      .catch(() => setText('The list is not on this phone yet. Open the app once with a signal.'));
  }, []);
  return (
    <Sheet title="Licences" under="Other people's work in this app, and its licences." onClose={onClose}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: nothing in it takes the focus, and keys must be able to scroll it (WCAG 2.1.1). */}
      <pre class="section licences" tabIndex={0}>
        {text}
      </pre>
    </Sheet>
  );
}
