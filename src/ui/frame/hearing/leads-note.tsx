import './hearing.css';
import { Cautions } from '../prep/caution-notes.tsx';

/** How timecode gets to the phone, and what to mind. */
export function LeadsNote() {
  return (
    <>
      <div class="section hearing-note">
        <h3>How to get it here</h3>
        <p>
          By lead: from the timecode output of the recorder, box, slate or camera, through a pad, to the
          microphone contact of a headset adapter.
        </p>
        <p>By ear: play it in headphones and hold one earpiece to the phone’s microphone.</p>
        <p class="soft">
          Common practice, no source. Many cameras and slates give timecode at one connector only, and only
          while it is set to output.
        </p>
      </div>
      <Cautions of={['timecode-level', 'headphones']} />
    </>
  );
}
