import { Button } from '../kit/button.tsx';
import { Mark } from '../kit/mark.tsx';
import { MARK_MEANS } from '../words/means.ts';
import { StripDrawing, TrackDrawing } from './track-drawing.tsx';
import { FIRST_STEPS, STARTING_WHEN, WORD_MEANS } from './words.ts';
import './help.css';

type Drawn = keyof typeof MARK_MEANS;

/** How a day works, and what the marks and words mean, a sentence each. Works offline. */
export function Help() {
  return (
    <div class="page">
      <header class="section help-head">
        <h1>Help</h1>
        <Button onClick={() => history.back()}>Back</Button>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: nothing in it takes the focus, and keys must be able to scroll it (WCAG 2.1.1). */}
      <main class="body help" tabIndex={0}>
        <section aria-labelledby="help-way">
          <h2 id="help-way">A day, in order</h2>
          <ol>
            {FIRST_STEPS.map(([where, what]) => (
              <li key={where}>
                <strong>{where}:</strong> {what}
              </li>
            ))}
          </ol>
        </section>
        <section aria-labelledby="help-marks">
          <h2 id="help-marks">What marks mean</h2>
          <dl class="help-marks">
            {Object.entries(MARK_MEANS).map(([state, { word, means }]) => (
              <div key={state}>
                <dt>
                  <Mark state={state as Drawn} /> {word}
                </dt>
                <dd>
                  <TrackDrawing state={state as Drawn} />
                  {means}
                </dd>
              </div>
            ))}
          </dl>
        </section>
        <section aria-labelledby="help-when">
          <h2 id="help-when">Starting when?</h2>
          <StripDrawing />
          <p>{STARTING_WHEN}</p>
        </section>
        <section aria-labelledby="help-words">
          <h2 id="help-words">What words mean</h2>
          <dl>
            {WORD_MEANS.map(([word, means]) => (
              <div key={word}>
                <dt>{word}</dt>
                <dd>{means}</dd>
              </div>
            ))}
          </dl>
        </section>
      </main>
      <footer class="foot help-foot">
        <a class="button as-button" href="#/">
          All days
        </a>
      </footer>
    </div>
  );
}
