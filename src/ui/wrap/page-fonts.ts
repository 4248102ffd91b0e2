import boldUrl from '../../report/pdf/fonts/report-bold.ttf?url';
import regularUrl from '../../report/pdf/fonts/report-regular.ttf?url';

export interface PageFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** The fonts of printed pages, fetched from the app itself, which keeps them for no signal. */
export async function pageFonts(): Promise<PageFonts> {
  const [regular, bold] = await Promise.all([load(regularUrl), load(boldUrl)]);
  return { regular, bold };
}

async function load(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error('A font is not on this phone');
  return new Uint8Array(await response.arrayBuffer());
}
