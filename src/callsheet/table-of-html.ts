/** Whether a text is a page or a piece of one with a table in it. */
export const hasTable = (text: string): boolean => /<t(?:able|r|d)\b[^>]*>/i.test(text.slice(0, 200_000));

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  ndash: '–',
  mdash: '—',
  frac12: '½',
  frac14: '¼',
  frac34: '¾',
};

function decoded(text: string): string {
  return text.replace(/&(?:#(\d{1,7})|#x([\da-f]{1,6})|(\w{2,8}));/gi, (all, dec, hex, name) => {
    if (name) return ENTITIES[String(name).toLowerCase()] ?? all;
    const code = dec ? Number(dec) : Number.parseInt(hex, 16);
    return code > 31 && code <= 0x10ffff && !(code >= 0xd800 && code < 0xe000)
      ? String.fromCodePoint(code)
      : ' ';
  });
}

const TAG = /<(\/?)([a-z][a-z0-9]*)((?:[^>"']|"[^"]*"|'[^']*')*)>/gi;
const MOST_SPANNED = 30;

/** What is being written: the cells of a row, or running text outside of tables. */
class Rows {
  readonly lines: string[] = [];
  cells: string[] | null = null;
  text = '';

  endCell(): void {
    this.cells?.push(decoded(this.text).replace(/\s+/g, ' ').trim());
    this.text = '';
  }

  endLine(): void {
    if (this.cells) {
      if (this.text.trim() !== '') this.endCell();
      this.lines.push(this.cells.join('\t'));
    } else this.lines.push(decoded(this.text).replace(/\s+/g, ' ').trim());
    this.cells = null;
    this.text = '';
  }
}

/** The lines of a page: every row of a table a line with its cells between tabs, every paragraph a line. */
export function linesOfHtml(html: string): string {
  const seen = html
    .replace(/<!--[\s\S]*?-->/g, ' ')
    .replace(/<(script|style|head|title)\b[\s\S]*?<\/\1\s*>/gi, ' ');
  const rows = new Rows();
  let at = 0;
  let span = 1;
  for (const tag of seen.matchAll(TAG)) {
    rows.text += seen.slice(at, tag.index);
    at = tag.index + tag[0].length;
    const [, closing, name] = tag as unknown as [string, string, string];
    const kind = name.toLowerCase();
    if (kind === 'tr' || kind === 'table') {
      rows.endLine();
      if (kind === 'tr' && !closing) rows.cells = [];
    } else if (kind === 'td' || kind === 'th') {
      if (closing) {
        rows.endCell();
        for (let more = 1; more < span; more += 1) rows.cells?.push('');
        span = 1;
      } else {
        rows.text = '';
        span = Math.min(MOST_SPANNED, Number(/colspan\s*=\s*["']?(\d+)/i.exec(tag[3] ?? '')?.[1] ?? 1));
      }
    } else if (/^(?:br|p|div|li)$/.test(kind)) {
      if (rows.cells) rows.text += ' ';
      else rows.endLine();
    }
  }
  rows.text += seen.slice(at);
  rows.endLine();
  return rows.lines.join('\n');
}
