import { CAUTIONS, type CautionPlace } from '../../../upkeep/due/cautions.ts';
import './prep.css';

/** What to say beside figures, at the place where they stand. */
export function Cautions({ of }: { of: readonly CautionPlace[] }) {
  return (
    <div class="cautions" role="note">
      {of.map((place) => (
        <p key={place}>{CAUTIONS[place]}</p>
      ))}
    </div>
  );
}
