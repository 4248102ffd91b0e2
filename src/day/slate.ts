import type { Slate, TakeKind, TakeSlate } from '../facts/kinds/take-logged.ts';
import { type Open, unknownText } from '../shared/open-word.ts';
import { fail, ok, type Result } from '../shared/result.ts';

/** Setup letters leave out I and O, which read as 1 and 0 (common practice, no source). */
const ALPHABET = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** Letters of the nth setup after the master: 0 is `''`, 1 `'A'`, 9 `'J'`, 24 `'Z'`, 25 `'AA'`. */
export function setupLetters(setup: number): string {
  let letters = '';
  for (let left = setup; left > 0; left = Math.floor((left - 1) / ALPHABET.length)) {
    letters = ALPHABET[(left - 1) % ALPHABET.length] + letters;
  }
  return letters;
}

/** The inverse of `setupLetters`; undefined for letters that are never used. */
export function setupOf(letters: string): number | undefined {
  let setup = 0;
  for (const letter of letters.toUpperCase()) {
    const at = ALPHABET.indexOf(letter);
    if (at < 0) return undefined;
    setup = setup * ALPHABET.length + at + 1;
  }
  return setup;
}

/** As written on the board, `'24B'` or the running number `'118'`; see `sameSlate` for comparing. */
export function slateText(slate: TakeSlate): string {
  switch (slate.style) {
    case 'lettered':
      return `${slate.scene}${setupLetters(slate.setup)}`;
    case 'numbered':
      return String(slate.number);
    case 'unread':
      return unknownText(slate.said);
  }
}

export const sceneText = (slate: TakeSlate): string => (slate.style === 'unread' ? '' : slate.scene);

export const isRead = (slate: TakeSlate): slate is Slate => slate.style !== 'unread';

/** The next camera position: the next letter, or the next running number in the same scene. */
export const nextSetup = (slate: Slate): Slate =>
  slate.style === 'lettered' ? { ...slate, setup: slate.setup + 1 } : { ...slate, number: slate.number + 1 };

/**
 * Whether two slates are the same. What is read on the board counts, however it was entered: setup A of scene
 * 24 equals scene 24A, and so does running number 7 in two scenes, because editors and file names cannot tell
 * them apart.
 */
export function sameSlate(a: TakeSlate, b: TakeSlate): boolean {
  // Two unreadable boards are never known to be the same.
  if (!isRead(a) || !isRead(b)) return false;
  if (a.style === 'lettered' && b.style === 'lettered' && a.scene.length === b.scene.length)
    // Only between scenes of different length can setup letters stand for scene letters.
    return a.scene === b.scene && a.setup === b.setup;
  return slateText(a) === slateText(b);
}

/**
 * Parses a typed slate. Lettered: `'24b'` is scene 24, setup B; letters before the number belong to the scene
 * (`'A24C'`). Numbered: `'118'`, with the scene given separately.
 */
export function parseSlate(typed: string, style: Slate['style'], scene = ''): Result<Slate> {
  const tidy = typed.trim().toUpperCase().replaceAll(/\s+/g, '');
  if (style === 'numbered') {
    if (!/^\d{1,6}$/.test(tidy)) return fail({ code: 'slate-not-a-number', typed });
    return ok({ style, number: Number(tidy), scene: scene.trim() });
  }
  const parts = /^(.*\d)([A-Z]*)$/.exec(tidy);
  if (!parts) return fail({ code: 'slate-without-number', typed });
  const setup = setupOf(parts[2]!);
  if (setup === undefined) return fail({ code: 'slate-letter-unused', typed });
  if (setup > 20_000 || parts[1]!.length > 200) return fail({ code: 'slate-too-long', typed });
  return ok({ style, scene: parts[1]!, setup });
}

/** How a take is read out: `'24B/3'`, `'24B/3 PU'`, `'24B/1 MOS'`, `'WT2'`, `'RT1'`. */
export function takeText(take: { kind: Open<TakeKind>; slate: TakeSlate; number: number }): string {
  switch (take.kind) {
    case 'wild':
      return `WT${take.number}`;
    case 'tone':
      return `RT${take.number}`;
    case 'pickup':
      return `${slateText(take.slate)}/${take.number} PU`;
    case 'mos':
      return `${slateText(take.slate)}/${take.number} MOS`;
    case 'take':
      return `${slateText(take.slate)}/${take.number}`;
    default:
      return `${slateText(take.slate)}/${take.number} ${unknownText(take.kind)}`;
  }
}
