import type { OutgoingFile } from '../../app/sharing.ts';

/** Pixels a unit: sharp on a phone and in print. */
const SCALE = 2;
/** Some phones draw no larger surface (from memory). */
const MOST_PIXELS = 16_000_000;

/** A drawing as a picture file that any phone opens; as the drawing itself where this browser cannot paint it. */
export async function pictureImage(svg: string, name: string): Promise<OutgoingFile> {
  const painted = await paint(svg).catch(() => null);
  return painted
    ? { name: `${name}.png`, type: 'image/png', content: painted }
    : { name: `${name}.svg`, type: 'image/svg+xml', content: svg };
}

async function paint(svg: string): Promise<Uint8Array<ArrayBuffer> | null> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const { width, height } = image;
  const scale = Math.min(SCALE, Math.sqrt(MOST_PIXELS / Math.max(1, width * height)));
  const canvas = document.createElement('canvas');
  canvas.width = Math.floor(width * scale);
  canvas.height = Math.floor(height * scale);
  const context = canvas.getContext('2d');
  if (!context) return null;
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  return blob && new Uint8Array(await blob.arrayBuffer());
}
