// How strokes are stored; apart from `strokes.ts`, which only what draws them needs.

/** More than a signature; what goes on beyond it is not kept. */
export const LONGEST_STROKES = 8000;

/** `'10,20 3,-4;500,200'`: the first point of a stroke, then how far each next one is from the one before. */
export const STROKES_TEXT = /^(-?\d{1,4},-?\d{1,4}( -?\d{1,4},-?\d{1,4})*(;|$))*$/;
