/** In place of a screen that could not be loaded. Why, and what helps, is said beside it. */
export function ScreenMissing() {
  return (
    <main class="section">
      <h1>This screen could not be loaded</h1>
      <p>Every saved entry is in the journal.</p>
      <p>
        <button type="button" class="button" onClick={() => history.back()}>
          Back
        </button>{' '}
        <a href="#/">List of days</a>
      </p>
    </main>
  );
}
