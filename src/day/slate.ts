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

/** What is written on the board, `'24B'` or the running number `'118'`: what slates are told apart by, see `sameSlate`. */
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
 * Whether two slates are one. A slate is what is read on its board, whatever it was called: setup A of scene 24 and scene
 * 24A are one, and so are running number 7 of two scenes, because editors and file names cannot tell them apart.
 */
export function sameSlate(a: TakeSlate, b: TakeSlate): boolean {
  // Of two boards that cannot be read nobody knows that they are one.
  if (!isRead(a) || !isRead(b)) return false;
  if (a.style === 'lettered' && b.style === 'lettered' && a.scene.length === b.scene.length)
    // Only beside a longer or shorter scene can letters of a setup stand for letters of a scene.
    return a.scene === b.scene && a.setup === b.setup;
  return slateText(a) === slateText(b);
}

/**
 * Reads what somebody types for a slate. Lettered: `'24b'` is scene 24, setup B; letters before the number belong
 * to the scene (`'A24C'`). Numbered: `'118'`, the scene given separately.
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

/** How a take is called aloud: `'24B/3'`, `'24B/3 PU'`, `'24B/1 MOS'`, `'WT2'`, `'RT1'`. */
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
