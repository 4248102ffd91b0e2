import { RigChoices } from '../frame/rigs/rig-choices.tsx';

/** No rig yet: take one from the shelf, copy another day's, or describe one in a line. */
export function EmptyRig() {
  return (
    <>
      <div class="section">
        <h1>Set up the rig</h1>
        <p class="soft">Start with what is closest; every part can be changed later.</p>
      </div>
      <RigChoices />
    </>
  );
}
