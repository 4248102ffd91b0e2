import { look, toggleDim } from '../looks.ts';

/** One tap to the look for a dark set, one tap back to the look before. */
export function DimToggle() {
  return (
    <button type="button" class="dim-toggle" aria-pressed={look.value === 'dim'} onClick={toggleDim}>
      dim
    </button>
  );
}
