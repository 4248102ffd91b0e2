import encodeQR from 'qr';

/** A code as one path of unit squares, drawn dark on light. */
export interface CodeDrawing {
  /** Modules along one side, the quiet border included. */
  readonly size: number;
  readonly path: string;
}

/** ISO/IEC 18004: four modules of quiet all around. */
const BORDER = 4;

/** The alphanumeric characters of ISO/IEC 18004: text of these alone packs closest. */
const ALPHANUMERIC = /^[0-9A-Z $%*+\-./:]*$/;

export function drawCode(text: string): CodeDrawing {
  const encoding = ALPHANUMERIC.test(text) ? 'alphanumeric' : 'byte';
  const modules = encodeQR(text, 'raw', { ecc: 'low', encoding, border: BORDER });
  return { size: modules.length, path: modules.map(rowPath).join('') };
}

/** The dark runs of one row. */
function rowPath(row: readonly boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x += 1) {
    if (!row[x]) continue;
    const from = x;
    while (row[x + 1]) x += 1;
    path += `M${from} ${y}h${x + 1 - from}v1h${from - x - 1}z`;
  }
  return path;
}
