import { Button } from '../../kit/button.tsx';
import { look, toggleDim } from '../../kit/looks.ts';

/** One tap to the dark-set look, one tap back. */
export function DimToggle() {
  return (
    <Button look="bare" class="dim-toggle" pressed={look.value === 'dim'} onClick={toggleDim}>
      Night
    </Button>
  );
}
