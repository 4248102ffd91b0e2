import type { SystemLetters } from '../../src/report/pdf/letters.ts';

/** Stands for a phone with fonts for two scripts, whose letters are all black squares one em wide. */
export const squareLetters: SystemLetters = {
  has: (character) => /[ -~\p{Script=Han}\p{Script=Hebrew}]/u.test(character),
  advance: ({ text }) => [...text].length,
  picture: ({ text }) => {
    const width = [...text].length;
    const stencil = new Uint8Array(width * 8).fill(0xff);
    return { left: 0, bottom: 0, width, height: 1, columns: width * 8, rows: 8, dots: { stencil } };
  },
};
