/** The report as text. It scrolls, so a keyboard must reach it (WCAG 2.2, 2.1.1). */
export function ReportText({ text }: { text: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by a keyboard
    <pre class="report-text" tabIndex={0}>
      {text}
    </pre>
  );
}
