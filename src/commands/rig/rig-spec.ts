import { INPUT_KINDS, INPUTS, type InputKind } from '../../facts/kinds/rig-kinds.ts';
import { fail, ok, type Result } from '../../shared/result.ts';

/** A recorder in short: how many tracks (the first is the mix), and inputs by kind in reading order. */
export interface RigSpec {
  readonly tracks: number;
  readonly inputs: readonly { readonly kind: InputKind; readonly count: number }[];
}

const TRACK = /^(tracks?|trk?s?)$/;

/** What a word counts, by common names of inputs and tracks. */
const kindCalled = (word: string): InputKind | 'track' | undefined =>
  TRACK.test(word) ? 'track' : INPUT_KINDS.find((kind) => INPUTS[kind].typed.test(word));

const MOST_TRACKS = 64;
const MOST_INPUTS = 128;

/** Pieces end at a comma, an `and`, or before the next count. */
const BETWEEN = /,|\band\b| (?=\d+ ?(?:x )?[a-z])/;

function piecesOf(typed: string): string[] {
  // Collapses spaces first: searching for a count after each of many spaces would take forever.
  const tidy = typed
    .toLowerCase()
    .replace(/[;\n+]/g, ',')
    .replace(/\s+/g, ' ');
  return tidy
    .split(BETWEEN)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
}

/**
 * Parses a recorder as people describe it: `'16 tracks, 4 mic/line, 4 AES3, 2 return, 8 slots'`. Repeated
 * kinds are added up. Fails on what it could not read: `rig-unread`, `rig-too-many`, `rig-without-tracks`,
 * `rig-without-inputs`.
 */
export function readRigSpec(typed: string): Result<RigSpec> {
  const counts = new Map<InputKind | 'track', number>();
  for (const piece of piecesOf(typed)) {
    const [, count = '', word = ''] = /^(\d{1,4}) ?(?:x )?([a-z].*)$/.exec(piece) ?? [];
    const kind = kindCalled(word);
    if (!kind) return fail({ code: 'rig-unread', piece });
    counts.set(kind, (counts.get(kind) ?? 0) + Number(count));
    if ((counts.get('track') ?? 0) > MOST_TRACKS)
      return fail({ code: 'rig-too-many', piece, most: MOST_TRACKS });
    if (inputsIn(counts) > MOST_INPUTS) return fail({ code: 'rig-too-many', piece, most: MOST_INPUTS });
  }
  const tracks = counts.get('track') ?? 0;
  if (tracks < 1) return fail({ code: 'rig-without-tracks' });
  if (inputsIn(counts) === 0) return fail({ code: 'rig-without-inputs' });
  const inputs = [...counts].flatMap(([kind, count]) =>
    kind === 'track' || count === 0 ? [] : [{ kind, count }],
  );
  return ok({ tracks, inputs });
}

const inputsIn = (counts: ReadonlyMap<InputKind | 'track', number>): number =>
  [...counts].reduce((sum, [kind, count]) => (kind === 'track' ? sum : sum + count), 0);

/** How many inputs a recorder has, and how many of the last must share its last iso track. */
export function shapeOf({ tracks, inputs }: RigSpec): {
  readonly inputs: number;
  readonly isos: number;
  readonly sharing: number;
} {
  const count = inputs.reduce((sum, one) => sum + one.count, 0);
  const isos = tracks - 1;
  return { inputs: count, isos, sharing: isos > 0 && count > isos ? count - isos + 1 : 0 };
}
