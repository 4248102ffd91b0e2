import { crc32 } from '../facts/day-file/crc32.ts';
import { fail, ok, type ProblemCode, type Result } from '../shared/result.ts';

/** A file to send: made before the tap, because the permission that a tap grants does not last. */
export interface OutgoingFile {
  readonly name: string;
  readonly type: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
}

export const bytesOf = ({ content }: Pick<OutgoingFile, 'content'>): Uint8Array =>
  typeof content === 'string' ? new TextEncoder().encode(content) : content;

/** A checksum over the bytes of a file. */
export const checkOf = (file: OutgoingFile): number => crc32(bytesOf(file));

export interface SendingDevice {
  canShare(files: readonly OutgoingFile[]): boolean;
  share(files: readonly OutgoingFile[], title: string): Promise<void>;
  /** False where a download would leave the app with no way back: an app on an iPhone's home screen. */
  readonly canDownload: boolean;
  download(file: OutgoingFile): void;
  copy(text: string): Promise<void>;
}

/** How files leave the phone, best first. */
export type Route = 'share' | 'download' | 'copy';

/** Those of the files that the share sheet takes: browsers refuse kinds they do not know, and then all of them. */
export const sharable = <File extends OutgoingFile>(
  device: SendingDevice,
  files: readonly File[],
): readonly File[] => (device.canShare(files) ? files : files.filter((file) => device.canShare([file])));

/** The best route for these files on this device. */
export function routeFor(device: SendingDevice, files: readonly OutgoingFile[]): Route {
  if (device.canShare(files) || sharable(device, files).length > 0) return 'share';
  return device.canDownload ? 'download' : 'copy';
}

/** Share errors, by their names in the Web Share standard. */
const SHARE_TROUBLE: Readonly<Record<string, ProblemCode & `share-${string}`>> = {
  NotAllowedError: 'share-not-allowed',
  InvalidStateError: 'share-open-already',
  DataError: 'share-target-failed',
  TypeError: 'share-refused',
};

/**
 * Sends files by one route; call it directly in the tap handler. `sent` is false if the user closed the
 * sheet, which is no error. A successful share means the files were handed over, not that they arrived.
 */
export async function sendFiles(
  device: SendingDevice,
  route: Route,
  files: readonly OutgoingFile[],
  title: string,
): Promise<Result<{ readonly sent: boolean }>> {
  try {
    if (route === 'share') await device.share(files, title);
    else if (route === 'download') for (const file of files) device.download(file);
    else await device.copy(files.map(({ content }) => String(content)).join('\n'));
    return ok({ sent: true });
  } catch (error) {
    const name = error instanceof Error ? error.name : 'Error';
    if (name === 'AbortError') return ok({ sent: false });
    if (route === 'download') return fail({ code: 'download-failed' });
    if (route === 'copy') return fail({ code: 'copy-failed' });
    return fail({ code: SHARE_TROUBLE[name] ?? 'share-failed', name });
  }
}
