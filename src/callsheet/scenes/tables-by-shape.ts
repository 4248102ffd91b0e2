import { cellsAt, DELIMITERS, type Delimiter } from '../cells/sheet-cells.ts';
import { columnsByShape, isSceneRow } from './columns-by-shape.ts';
import type { SceneColumns } from './scene-columns.ts';

/**
 * The columns of rows of scenes that no heading names, by line. Rows set apart by spaces have no empty cells, so
 * only those of one width are one table.
 */
export function tablesByShape(
  lines: readonly { readonly line: number; readonly text: string }[],
): ReadonlyMap<number, SceneColumns> {
  const tables = new Map<string, { delimiter: Delimiter; rows: string[][]; lines: number[] }>();
  for (const { line, text } of lines) {
    for (const delimiter of DELIMITERS) {
      const cells = cellsAt(text, delimiter);
      if (!isSceneRow(cells)) continue;
      const name = delimiter === 'spaces' ? `spaces ${cells.length}` : delimiter;
      const table = tables.get(name) ?? { delimiter, rows: [], lines: [] };
      tables.set(name, table);
      table.rows.push(cells);
      table.lines.push(line);
      break;
    }
  }
  const columns = new Map<number, SceneColumns>();
  for (const table of tables.values()) {
    const found = columnsByShape(table.rows, table.delimiter);
    if (found) for (const line of table.lines) columns.set(line, found);
  }
  return columns;
}
