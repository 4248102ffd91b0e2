import { useMemo } from 'preact/hooks';

/** How far what goes on below stands in from where its line began. */
const STEP = 2;

/**
 * The report as text; on a narrow screen long lines go on below, in from where they began. It scrolls, so a
 * keyboard must reach it (WCAG 2.2, 2.1.1).
 */
export function ReportText({ text }: { text: string }) {
  const lines = useMemo(
    () =>
      (text.match(/[^\n]*\n|[^\n]+/g) ?? []).map((line, at) => (
        <span key={at} style={{ '--from': line.search(/\S|$/) + STEP }}>
          {line}
        </span>
      )),
    [text],
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by a keyboard
    <pre class="report-text" tabIndex={0}>
      {lines}
    </pre>
  );
}
