import { CAUTIONS, type CautionPlace } from '../../../upkeep/due/cautions.ts';
import './prep.css';

/** Warnings shown beside the figures they concern. */
export function Cautions({ of }: { of: readonly CautionPlace[] }) {
  return (
    <div class="cautions" role="note">
      {of.map((place) => (
        <p key={place}>{CAUTIONS[place]}</p>
      ))}
    </div>
  );
}
