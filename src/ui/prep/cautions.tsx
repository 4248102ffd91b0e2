import { CAUTIONS, type CautionPlace } from '../../upkeep/cautions.ts';
import '../styles/prep.css';

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
