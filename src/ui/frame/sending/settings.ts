import { signal } from '@preact/signals';
import {
  type CsvColumn,
  type CsvLines,
  csvColumnsFor,
  DEFAULT_CSV_COLUMNS,
} from '../../../report/formats/csv-columns.ts';
import { REPORT_FORMATS, type ReportFormat } from '../../../report/printed/report-name.ts';

/** How the reports of a day are made and to whom they go: remembered on this phone from day to day. */
export interface WrapSettings {
  readonly formats: readonly ReportFormat[];
  readonly paper: 'a4' | 'letter';
  readonly lines: CsvLines;
  readonly columns: Readonly<Record<CsvLines, readonly CsvColumn[]>>;
  /** These two belong to the production: nobody else's are proposed or printed. */
  readonly signature: string;
  readonly to: string;
}

/** Whose settings: `header` of the day. What is tried on a sample day is kept apart from real ones. */
export interface Whose {
  readonly production: string;
  readonly sample: boolean;
}

type Own = Pick<WrapSettings, 'signature' | 'to'>;
type Shared = Omit<WrapSettings, keyof Own>;

interface Stored extends Shared {
  /** By production, the one changed last at the end. */
  readonly own: Readonly<Record<string, Own>>;
}

const PRODUCTIONS_KEPT = 20;

const FIRST: Stored = {
  formats: ['pdf', 'plain', 'txt'],
  paper: 'a4',
  lines: 'take',
  columns: DEFAULT_CSV_COLUMNS,
  own: {},
};

/** Stored settings are checked field by field; invalid ones fall back to their defaults. */
function remembered(key: string): Stored {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return isRecord(stored) ? checked(stored) : FIRST;
  } catch {
    return FIRST;
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

const textOf = (value: unknown): string => (typeof value === 'string' ? value.slice(0, 4000) : '');

function checked(stored: Record<string, unknown>): Stored {
  const among = <T extends string>(all: readonly T[], value: unknown): T[] =>
    Array.isArray(value) ? all.filter((one) => value.includes(one)) : [];
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
    own: isRecord(stored.own) ? ownOf(stored.own) : {},
  };
}

const ownOf = (own: Record<string, unknown>): Record<string, Own> =>
  Object.fromEntries(
    Object.entries(own).flatMap(([production, value]) =>
      isRecord(value)
        ? [[production, { signature: textOf(value.signature), to: textOf(value.to) }] as const]
        : [],
    ),
  );

const kept = (key: string) => ({ key, stored: signal(remembered(key)) });

const REAL = kept('rollbook-wrap');
const SAMPLE = kept('rollbook-wrap-sample');

const keptFor = ({ sample }: Whose) => (sample ? SAMPLE : REAL);
/** Whether two days share a signature and recipients. */
export const isSameWhose = (a: Whose, b: Whose): boolean => a.sample === b.sample && nameOf(a) === nameOf(b);

// With a mark before it, no name of a production is one that objects have by birth.
const nameOf = ({ production }: Whose): string => `=${production.trim().toLowerCase()}`;

/** The settings for a day; whoever draws with them is drawn again when they change. */
export function wrapSettings(day: Whose): WrapSettings {
  const { own, ...shared } = keptFor(day).stored.value;
  return { ...shared, ...(own[nameOf(day)] ?? { signature: '', to: '' }) };
}

export function setWrap(day: Whose, change: Partial<WrapSettings>): void {
  const { own } = keptFor(day).stored.peek();
  const { signature, to, ...shared } = { ...wrapSettings(day), ...change };
  const { [nameOf(day)]: _before, ...others } = own;
  const last = Object.entries(others).slice(1 - PRODUCTIONS_KEPT);
  keep(day, { ...shared, own: { ...Object.fromEntries(last), [nameOf(day)]: { signature, to } } });
}

function keep(day: Whose, next: Stored): void {
  const { key, stored } = keptFor(day);
  stored.value = next;
  try {
    localStorage.setItem(key, JSON.stringify(next));
  } catch {
    // Storage refused: it holds for this window only.
  }
}

/** Forgets what belongs to a production, or all that was set on sample days. */
export function forgetWrap(day: Whose): void {
  const { stored } = keptFor(day);
  const { [nameOf(day)]: _gone, ...own } = stored.peek().own;
  keep(day, day.sample ? FIRST : { ...stored.peek(), own });
}

/** Addresses as typed, separated by commas, semicolons or spaces. */
export const recipients = (to: string): string[] => to.split(/[\s,;]+/).filter(Boolean);
