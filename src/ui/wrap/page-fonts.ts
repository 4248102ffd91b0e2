import boldUrl from '../../report/pdf/fonts/report-bold.ttf?url';
import regularUrl from '../../report/pdf/fonts/report-regular.ttf?url';

export interface PageFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

let fonts: Promise<PageFonts> | undefined;

/** The fonts of printed pages: fetched from the app itself when they are first wanted, and kept for no signal. */
export function pageFonts(): Promise<PageFonts> {
  fonts ??= Promise.all([load(regularUrl), load(boldUrl)]).then(([regular, bold]) => ({ regular, bold }));
  // Asked for again the next time: they may be on the phone by then.
  fonts.catch(() => {
    fonts = undefined;
  });
  return fonts;
}

async function load(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error('A font is not on this phone');
  return new Uint8Array(await response.arrayBuffer());
}
