import { useEffect, useRef, useState } from 'preact/hooks';
import { watchCamera } from '../../camera/camera.ts';
import type { Problem } from '../../shared/result.ts';
import { sentenceFor } from '../words/problems.ts';

/** What the camera sees, or why it sees nothing. Calls back with every code that it reads. */
export function CameraView({ onCode }: { onCode: (text: string) => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const hear = useRef(onCode);
  hear.current = onCode;
  useEffect(() => {
    let isOver = false;
    let stop: (() => void) | undefined;
    void watchCamera(video.current!, (text) => hear.current(text)).then((watching) => {
      if (!watching.ok) setProblem(watching.problem);
      else if (isOver) watching.value();
      else stop = watching.value;
    });
    return () => {
      isOver = true;
      stop?.();
    };
  }, []);
  if (problem)
    return (
      <p class="section warn" role="alert">
        {sentenceFor(problem)}
      </p>
    );
  return <video class="camera-view" ref={video} muted playsInline aria-label="What the camera sees" />;
}
