import { signal } from '@preact/signals';
import {
  type CsvColumn,
  type CsvLines,
  csvColumnsFor,
  DEFAULT_CSV_COLUMNS,
} from '../../../report/formats/csv-columns.ts';
import { REPORT_FORMATS, type ReportFormat } from '../../../report/printed/report-name.ts';

/** How this mixer sends reports: remembered on this phone from day to day. */
export interface WrapSettings {
  readonly formats: readonly ReportFormat[];
  readonly paper: 'a4' | 'letter';
  readonly lines: CsvLines;
  readonly columns: Readonly<Record<CsvLines, readonly CsvColumn[]>>;
  readonly signature: string;
  readonly to: string;
}

const KEY = 'rollbook-wrap';

const FIRST: WrapSettings = {
  formats: ['pdf', 'csv', 'txt'],
  paper: 'a4',
  lines: 'take',
  columns: DEFAULT_CSV_COLUMNS,
  signature: '',
  to: '',
};

/** Stored settings are checked field by field; invalid ones fall back to their defaults. */
function remembered(): WrapSettings {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return typeof stored === 'object' && stored !== null ? checked(stored as Record<string, unknown>) : FIRST;
  } catch {
    return FIRST;
  }
}

function checked(stored: Record<string, unknown>): WrapSettings {
  const among = <T extends string>(all: readonly T[], value: unknown): T[] =>
    Array.isArray(value) ? all.filter((one) => value.includes(one)) : [];
  const text = (value: unknown): string => (typeof value === 'string' ? value.slice(0, 4000) : '');
  const formats = among(REPORT_FORMATS, stored.formats);
  const columns = (stored.columns ?? {}) as Record<string, unknown>;
  const columnsOf = (lines: CsvLines): readonly CsvColumn[] => {
    const kept = columns[lines];
    const known = csvColumnsFor(lines);
    const wanted = Array.isArray(kept)
      ? kept.filter((id): id is CsvColumn => known.includes(id as CsvColumn))
      : [];
    return wanted.length > 0 ? [...new Set(wanted)] : DEFAULT_CSV_COLUMNS[lines];
  };
  return {
    formats: formats.length > 0 ? formats : FIRST.formats,
    paper: stored.paper === 'letter' ? 'letter' : 'a4',
    lines: stored.lines === 'track' ? 'track' : 'take',
    columns: { take: columnsOf('take'), track: columnsOf('track') },
    signature: text(stored.signature),
    to: text(stored.to),
  };
}

export const wrapSettings = signal<WrapSettings>(remembered());

export function setWrap(change: Partial<WrapSettings>): void {
  wrapSettings.value = { ...wrapSettings.peek(), ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(wrapSettings.peek()));
  } catch {
    // Storage refused: it holds for this window only.
  }
}

/** Addresses as typed, separated by commas, semicolons or spaces. */
export const recipients = (to: string): string[] => to.split(/[\s,;]+/).filter(Boolean);
