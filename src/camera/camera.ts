import { fail, ok, type Problem, type ProblemCode, type Result } from '../shared/result.ts';
import { codeReader } from './code-reader.ts';

/** Refusals by their names in the Media Capture standard. */
const TROUBLE: Readonly<Record<string, ProblemCode & `camera-${string}`>> = {
  NotAllowedError: 'camera-refused',
  SecurityError: 'camera-refused',
  NotReadableError: 'camera-busy',
  AbortError: 'camera-busy',
};

/** Whatever else is wrong, there is no camera to be had. */
export function cameraProblem(error: unknown): Problem {
  const name = error instanceof Error ? error.name : '';
  return { code: TROUBLE[name] ?? 'camera-missing' };
}

/** The camera on the back, in a size at which a code fills enough pixels. */
const WANTED: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 960 } },
};

/**
 * Shows the camera in `video` and calls back with every code it reads, as often as it sees it. Resolves to what stops
 * it. Pictures that come while one is read are passed over.
 */
export async function watchCamera(
  video: HTMLVideoElement,
  onCode: (text: string) => void,
): Promise<Result<() => void>> {
  try {
    const [stream, read] = await Promise.all([navigator.mediaDevices.getUserMedia(WANTED), codeReader()]);
    video.srcObject = stream;
    await video.play();
    let isOver = false;
    const look = async (): Promise<void> => {
      while (!isOver) {
        const text = await read(video);
        if (text !== null && !isOver) onCode(text);
        await nextPicture(video);
      }
    };
    void look();
    return ok(() => {
      isOver = true;
      for (const track of stream.getTracks()) track.stop();
      video.srcObject = null;
    });
  } catch (error) {
    return fail(cameraProblem(error));
  }
}

const nextPicture = (video: HTMLVideoElement): Promise<unknown> =>
  new Promise((done) => {
    if ('requestVideoFrameCallback' in video) video.requestVideoFrameCallback(done);
    else requestAnimationFrame(done);
  });
