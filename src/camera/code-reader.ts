import decodeQR from 'qr/decode.js';

/** Finds the code in a picture. */
export type ReadCode = (picture: HTMLVideoElement) => Promise<string | null>;

interface Detector {
  detect(picture: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorClass {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<readonly string[]>;
}

/** The platform's own reader where there is one (Shape Detection API), otherwise the package's. */
export async function codeReader(): Promise<ReadCode> {
  const { BarcodeDetector } = globalThis as { BarcodeDetector?: DetectorClass };
  const formats = (await BarcodeDetector?.getSupportedFormats().catch(() => [])) ?? [];
  if (!BarcodeDetector || !formats.includes('qr_code')) return withPackage();
  const detector = new BarcodeDetector({ formats: ['qr_code'] });
  return async (picture) => (await detector.detect(picture).catch(() => []))[0]?.rawValue ?? null;
}

/** Enough for seven pixels a module of the largest code shown here. */
const SIDE = 720;

function withPackage(): ReadCode {
  const canvas = document.createElement('canvas');
  const drawing = canvas.getContext('2d', { willReadFrequently: true });
  return async (picture) => {
    const { videoWidth, videoHeight } = picture;
    // The square in the middle, which is what the screen shows of it.
    const from = Math.min(videoWidth, videoHeight);
    if (!drawing || from === 0) return null;
    const side = Math.min(from, SIDE);
    if (canvas.width !== side) canvas.width = canvas.height = side;
    drawing.drawImage(
      picture,
      (videoWidth - from) / 2,
      (videoHeight - from) / 2,
      from,
      from,
      0,
      0,
      side,
      side,
    );
    return codeIn(drawing.getImageData(0, 0, side, side));
  };
}

/** Null where there is none that can be read. */
export function codeIn(picture: { width: number; height: number; data: Uint8ClampedArray }): string | null {
  try {
    return decodeQR(picture);
  } catch {
    return null;
  }
}
