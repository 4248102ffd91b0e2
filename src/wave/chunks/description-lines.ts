import { nearestRate, type RateId } from '../../time/rate.ts';

/** key=value lines in the bext description, from before iXML (common practice, no standard). */
export interface DescriptionLines {
  readonly scene: string | undefined;
  readonly take: string | undefined;
  readonly tape: string | undefined;
  readonly note: string | undefined;
  readonly project: string | undefined;
  readonly circled: boolean | undefined;
  /** What a speed such as '023.976-ND' stands for. */
  readonly rate: RateId | undefined;
  /** Names of TRK1, TRK2 ... by number. */
  readonly tracks: readonly { readonly number: number; readonly name: string }[];
}

const LINE = /^\s*[a-z]?([A-Z][A-Z0-9_]*)=(.*)$/;

/**
 * Reads lines such as `sSCENE=21A` or `iTAKE=3`, whatever the prefix letter; undefined if there are none. The
 * first of two lines with one key counts.
 */
export function readDescriptionLines(description: string): DescriptionLines | undefined {
  const all = description
    .split(/[\r\n]+/)
    .map((line) => LINE.exec(line))
    .filter((match) => match !== null)
    .map(([, key, value]) => ({ key: key!, value: value!.trim() }));
  if (all.length === 0) return undefined;
  const first = (key: string): string | undefined =>
    all.find((line) => line.key === key && line.value !== '')?.value;
  const speed = first('SPEED');
  return {
    scene: first('SCENE'),
    take: first('TAKE'),
    tape: first('TAPE'),
    note: first('NOTE'),
    project: first('PROJECT'),
    circled: flagOf(first('CIRCLED')),
    rate: speed === undefined ? undefined : nearestRate(speed),
    tracks: tracksIn(all),
  };
}

function tracksIn(
  lines: readonly { readonly key: string; readonly value: string }[],
): DescriptionLines['tracks'] {
  const tracks = new Map<number, string>();
  for (const { key, value } of lines) {
    const [, digits] = /^TRK(\d{1,3})$/.exec(key) ?? [];
    if (digits && value !== '' && !tracks.has(Number(digits))) tracks.set(Number(digits), value);
  }
  return [...tracks].map(([number, name]) => ({ number, name })).sort((a, b) => a.number - b.number);
}

function flagOf(text: string | undefined): boolean | undefined {
  if (text === undefined) return undefined;
  return /^(true|1|yes)$/i.test(text) ? true : /^(false|0|no)$/i.test(text) ? false : undefined;
}
