/** One process the audio went through (EBU R 98); numbers as written, undefined where missing or unreadable. */
export interface CodingHistoryLine {
  /** A: ANALOGUE, PCM, MPEG1L2 ... */
  readonly algorithm: string | undefined;
  /** F: sampling frequency in hertz. */
  readonly sampleRate: number | undefined;
  /** B: kilobits a second and channel. */
  readonly bitRate: number | undefined;
  /** W: word length in bits. */
  readonly wordLength: number | undefined;
  /** M: mono, stereo, dual-mono, joint-stereo. */
  readonly mode: string | undefined;
  /** T: free text. */
  readonly text: string | undefined;
  /** Anything under a key the recommendation does not list. */
  readonly others: readonly string[];
}

const MOST_LINES = 1000;

/** Lines ended by CR LF or LF alone. `A=PCM,F=48000,W=24,M=mono,T=original` is one line of five items. */
export function readCodingHistory(text: string): CodingHistoryLine[] {
  return text
    .split(/\r\n|\n|\r/, MOST_LINES)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map(readLine);
}

function readLine(line: string): CodingHistoryLine {
  const items = line.split(',').map((item) => item.trim());
  const itemOf = (key: string): string | undefined =>
    items
      .find((item) => item.toUpperCase().startsWith(`${key}=`))
      ?.slice(2)
      .trim();
  return {
    algorithm: itemOf('A'),
    sampleRate: numberIn(itemOf('F')),
    bitRate: numberIn(itemOf('B')),
    wordLength: numberIn(itemOf('W')),
    mode: itemOf('M'),
    text: itemOf('T'),
    others: items.filter((item) => item !== '' && !/^[AFBWMT]=/i.test(item)),
  };
}

const numberIn = (text: string | undefined): number | undefined =>
  text && /^\d{1,9}$/.test(text) ? Number(text) : undefined;
