import type { EarState } from '../../../app/ear/ear.ts';
import {
  framesRead,
  type HeardBeside,
  heardRateWords,
  heardTroubles,
  labelWords,
  levelWords,
  spacedBits,
} from '../../words/hearing.ts';
import './hearing.css';

interface HeardReadingProps {
  readonly state: EarState | undefined;
  readonly beside: HeardBeside;
}

const NOTHING = '--:--:--:--';

/** What the microphone hears: the time in large digits, what is wrong with it, and the level as a bar. */
export function HeardTime({ state, beside }: HeardReadingProps) {
  const heard = state?.heard;
  const troubles = heard ? heardTroubles(heard, beside) : [];
  return (
    <div class="section hearing">
      <p class="hearing-time mono" aria-hidden="true">
        {heard && state.isReading ? labelWords(heard.last.label, heard.last.dropFlag) : NOTHING}
      </p>
      <p class="soft" role="status">
        {readingWords(state)}
      </p>
      <div role="alert">
        {troubles.length > 0 && (
          <ul class="hearing-troubles">
            {troubles.map((text) => (
              <li key={text} class="warn">
                {text}
              </li>
            ))}
          </ul>
        )}
      </div>
      <LevelDrawing peakDb={state?.peakDb} />
    </div>
  );
}

/** Level, frames, rate and user bits in figures. */
export function HeardFigures({ state }: Pick<HeardReadingProps, 'state'>) {
  const heard = state?.heard;
  return (
    <dl class="section figures hearing-figures">
      <dt>Level</dt>
      <dd>{levelWords(state?.peakDb ?? Number.NEGATIVE_INFINITY)}</dd>
      <dt>Frames</dt>
      <dd>{framesRead(state ?? { good: 0, bad: 0 })}</dd>
      <dt>Rate</dt>
      <dd>{heardRateWords(heard?.rate)}</dd>
      <dt>User bits</dt>
      <dd class="mono">{heard?.last.userBits ? spacedBits(heard.last.userBits) : '--'}</dd>
    </dl>
  );
}

function readingWords(state: EarState | undefined): string {
  if (!state) return 'Listening';
  if (state.isReading) return 'Timecode is heard';
  return levelWords(state.peakDb) === 'silent' ? 'Nothing is heard' : 'Sound is heard, but no timecode in it';
}

const LOWEST_DB = -60;

/** The words beside it say the same. */
function LevelDrawing({ peakDb = LOWEST_DB }: { readonly peakDb: number | undefined }) {
  const length = Math.max(0, Math.min(1, 1 - peakDb / LOWEST_DB));
  return (
    <svg class="hearing-level" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
      <rect class="hearing-level-all" width="100" height="4" />
      <rect class="hearing-level-now" width={100 * (Number.isNaN(length) ? 0 : length)} height="4" />
    </svg>
  );
}
