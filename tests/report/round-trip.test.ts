import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { noteSent } from '../../src/commands/day/send-report.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day, TakeId } from '../../src/day/model.ts';
import { knownOf } from '../../src/day/wrap/sent-reports.ts';
import type { Draft } from '../../src/facts/fact.ts';
import type { ReportMade } from '../../src/facts/kinds/report-sent.ts';
import { changesCsv, reportCsv } from '../../src/report/formats/csv.ts';
import { type CsvColumn, csvColumnsFor } from '../../src/report/formats/csv-columns.ts';
import { unguard } from '../../src/report/formats/csv-field.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { type ReportModel, reportOf } from '../../src/report/model.ts';
import { footText, reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { printedTake } from '../../src/report/printed/printed-take.ts';
import { reportAgain, reportToSend } from '../../src/report/revision/report-to-send.ts';
import { type Revision, revisionLines } from '../../src/report/revision/revision.ts';
import type { TakeLine } from '../../src/report/take-lines.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { type AnySaid, anySaid, CHANGES } from './any-change.ts';
import { type AnyDay, anyPhone } from './any-day.ts';
import { reportFonts } from './report-fonts.ts';

const modelOf = (day: Day): ReportModel => reportOf(day);
const made: ReportMade = { paper: 'a4', lines: 'take', columns: ['file'], signature: '', matters: [] };

/** A report that went out as A, what was said afterwards, and the report that goes out then. */
interface Sent {
  readonly was: ReportModel;
  readonly is: ReportModel;
  readonly day: Day;
  readonly letter: string;
  readonly revision: Revision | undefined;
}

function sentAround({ phone }: AnyDay, drafts: readonly Draft[]): Sent {
  const before = phone.day();
  const was = modelOf(before);
  const said = noteSent({ letter: 'A', route: 'share', files: [], to: [], made, from: knownOf(before) });
  if (!said.ok) throw new Error('refused');
  phone.say(...said.value);
  for (const draft of drafts) phone.say(draft);
  const day = phone.day();
  const { letter, revision, model } = reportToSend(day, [], modelOf);
  return { was, is: model, day, letter, revision };
}

const csvOf = (model: ReportModel, lines: 'take' | 'track'): string =>
  reportCsv(model, { lines, columns: csvColumnsFor(lines) });

/** Everything that goes out but the pages, which print the same words. */
const outputs = (model: ReportModel): string[] => [
  reportText(model),
  reportHtml(model),
  csvOf(model, 'take'),
  csvOf(model, 'track'),
];

const HEAD: ReadonlySet<CsvColumn> = new Set<CsvColumn>([
  'production',
  'day',
  'date',
  'unit',
  'mixer',
  'recorder',
  'sample-rate',
  'bit-depth',
  'timecode-rate',
  'file-layout',
]);

/** What a take prints by itself: not its place, not the head's columns, not that a roll was named after it. */
function linesOf(model: ReportModel): Map<TakeId, string> {
  const columns = csvColumnsFor('track').filter((id) => !HEAD.has(id) && id !== 'roll');
  return new Map(
    model.takes.map((take) => {
      const one = { ...model, takes: [take] };
      return [
        take.takeId,
        JSON.stringify([printedTake(take), take.roll, reportCsv(one, { lines: 'track', columns })]),
      ];
    }),
  );
}

/** The takes that differ by what they say, to the last frame and by the ids of voices; added and gone ones too. What the recorder was set to all day, the rate of times too, is the head's. */
function differing({ was, is }: Sent): Set<TakeId> {
  const said = ({
    rollWord: _word,
    rollHeading: _heading,
    set: _set,
    exact: _exact,
    ...take
  }: TakeLine): string => JSON.stringify(take);
  const before = new Map(was.takes.map((take) => [take.takeId, said(take)]));
  const after = new Map(is.takes.map((take) => [take.takeId, said(take)]));
  const ids = [...new Set([...before.keys(), ...after.keys()])];
  return new Set(ids.filter((id) => before.get(id) !== after.get(id)));
}

const namedIn = ({ revision }: Sent): Set<TakeId> =>
  new Set((revision?.changes ?? []).filter(({ field }) => field !== 'place').flatMap(({ takes }) => takes));

/** Isolates around names from right to left are an element on the page, and not in the table. */
const said = (text: string): string => text.replaceAll(/[\s\u2068\u2069]+/g, '');

/** What each output says has changed, in its own order. */
function changesIn(model: ReportModel, revision: Revision): Record<'text' | 'page' | 'table', string[]> {
  const text = reportText(model, { revision });
  const section = text.slice(text.indexOf(`CHANGED SINCE REVISION ${revision.since}`)).split('\n\n')[0]!;
  const html = reportHtml(model, { revision });
  const list = /<ul class="open">(.*?)<\/ul>/s.exec(html.slice(html.indexOf('Changed since')))![1]!;
  const records: string[][] = parse(changesCsv(revision), { record_delimiter: '\r\n' });
  return {
    text: section.split('\n- ').slice(1).map(said),
    page: [...list.matchAll(/<li><bdi>(.*?)<\/bdi><\/li>/gs)].map(([, line]) =>
      said(
        line!
          .replaceAll(/<\/?bdi>/g, '')
          .replaceAll('<br/>', '\n')
          .replaceAll('&lt;', '<')
          .replaceAll('&gt;', '>')
          .replaceAll('&quot;', '"')
          .replaceAll('&#39;', "'")
          .replaceAll('&amp;', '&'),
      ),
    ),
    table: records.slice(1).map(([, , line]) => said(unguard(line!))),
  };
}

const eachChange = (name: string, check: (sent: Sent, said: AnySaid) => void, numRuns: number): number => {
  let changed = 0;
  fc.assert(
    fc.property(anyPhone, anySaid, (dayAnew, what) => {
      const day = dayAnew();
      const sent = sentAround(day, CHANGES[name]!(day, what));
      if (sent.letter === 'B') changed += 1;
      check(sent, what);
    }),
    { seed: 81, numRuns },
  );
  return changed;
};

describe.each(Object.keys(CHANGES))('after report A, a change of %s', (name) => {
  test('is seen by the revision, which names exactly the takes it touches, in every output alike (seed 81)', () => {
    const changed = eachChange(
      name,
      (sent) => {
        const { was, is, letter, revision } = sent;
        const before = outputs(was);
        const after = outputs(is);
        // Whatever prints otherwise is a revision; what is none prints the same to the byte.
        if (letter === 'A') expect(after).toEqual(before);
        else expect(revision!.changes.length).toBeGreaterThan(0);
        expect(namedIn(sent)).toEqual(differing(sent));
        const lines = linesOf(was);
        for (const [take, line] of linesOf(is)) {
          if (lines.get(take) !== line) expect(namedIn(sent)).toContain(take);
        }
        if (letter === 'A') return;
        const told = revisionLines(revision!).map(said);
        expect(changesIn(is, revision!)).toEqual({ text: told, page: told, table: told });
      },
      15,
    );
    expect(changed).toBeGreaterThan(0);
  }, 60_000);
});

describe('the pages of a revision', () => {
  beforeAll(needPoppler, 300_000);

  test('say the same as the other outputs, change by change (seed 82)', () => {
    const drawn = (text: string, missing: readonly string[]): string =>
      said([...text.normalize('NFC')].map((one) => (missing.includes(one) ? '?' : one)).join('')).replaceAll(
        /\p{Cf}/gu,
        '',
      );
    let revised = 0;
    fc.assert(
      fc.property(anyPhone, anySaid, fc.constantFrom(...Object.values(CHANGES)), (dayAnew, what, say) => {
        const day = dayAnew();
        const { is, revision } = sentAround(day, say(day, what));
        if (!revision) return;
        revised += 1;
        const pdf = reportPdf(is, { fonts: reportFonts, revision });
        // A list may go on over the foot of a page.
        const foot = drawn(footText(is), pdf.missing);
        const text = pageTexts(pdf.bytes)
          .map((page, at) => {
            const end = `${foot}Soundreport,revision${revision.letter}·page${at + 1}of${pdf.pages}`;
            const all = said(page.normalize('NFC'));
            return all.endsWith(end) ? all.slice(0, -end.length) : all;
          })
          .join('');
        let at = 0;
        for (const line of revisionLines(revision)) {
          const wanted = drawn(line, pdf.missing);
          at = text.indexOf(wanted, at);
          expect(at, wanted).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 82, numRuns: 25 },
    );
    expect(revised).toBeGreaterThan(10);
  }, 120_000);
});

describe('a report that went out', () => {
  test('is the same again in every output, whatever was changed since (seed 83)', () => {
    fc.assert(
      fc.property(anyPhone, anySaid, fc.constantFrom(...Object.values(CHANGES)), (dayAnew, what, say) => {
        const day = dayAnew();
        const { was, day: after } = sentAround(day, say(day, what));
        const folded = foldDay(after.id, after.facts);
        const report = folded.facts.find((fact) => fact.kind === 'report-sent');
        if (report?.kind !== 'report-sent') throw new Error('Not sent');
        expect(outputs(reportAgain(folded, report, modelOf).model)).toEqual(outputs(was));
      }),
      { seed: 83, numRuns: 100 },
    );
  }, 60_000);
});
