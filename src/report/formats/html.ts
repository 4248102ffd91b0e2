import { STROKES_HIGH, STROKES_WIDE, strokesOf, strokesPath } from '../../shared/strokes.ts';
import { cleanNote } from '../clean-text.ts';
import { escapeHtml } from '../escaped.ts';
import { SECOND_FORM } from '../form.ts';
import type { HandOverLine } from '../hand-over-lines.ts';
import { issueName, issueTitle } from '../list/issue-words.ts';
import { nobodyOn } from '../list/take-list.ts';
import type { ReportModel } from '../model.ts';
import { dayPictures, pictureTitle } from '../printed/day-picture.ts';
import { counted } from '../printed/figures.ts';
import { handOverText } from '../printed/hand-over-words.ts';
import { tracksTitle } from '../printed/layout-words.ts';
import { matterText } from '../printed/matter-words.ts';
import { legendDrawn, pictureDrawings } from '../printed/picture-svg.ts';
import { cautionLines } from '../printed/recorder-words.ts';
import { reportSubject } from '../printed/report-name.ts';
import { headLines, totalsLines } from '../printed/words.ts';
import { type Extras, revisionLines, revisionTitle } from '../revision/revision.ts';
import { element, layoutTable, list, pairs, section } from './html-parts.ts';
import { secondFormHtml } from './html-second-form.ts';
import { pageStyle } from './html-style.ts';
import { takesTable } from './html-takes.ts';

/**
 * The report as one self-contained HTML file: no script, no other file, its own style, and a policy that
 * forbids the rest. Well-formed as XML too.
 */
export const reportHtml = (model: ReportModel, extras: Extras = {}): string =>
  model.form > SECOND_FORM ? listHtml(model, extras) : secondFormHtml(model, extras);

/** What a report is opened for comes first, and all that is read once comes after the takes. */
function listHtml(model: ReportModel, extras: Extras): string {
  const { revision, signature = '' } = extras;
  const subject = reportSubject(model);
  const signed = cleanNote(signature);
  const body = [
    `<header>${element('h1', subject || issueName(extras))}${element('p', issueTitle(extras))}`,
    `${list(briefLines(model), ' class="brief"')}</header>\n`,
    section('Caution', list(cautionLines(model.head), ' class="open"')),
    revision ? section(revisionTitle(revision), list(revisionLines(revision), ' class="open"')) : '',
    section('Takes', takesTable(model, extras)),
    ...pictures(model),
    section('Not settled', list(model.open.map(matterText), ' class="open"')),
    ...(model.takes.length === 0 ? model.lists : []).map((list) =>
      section(tracksTitle(list), layoutTable(list)),
    ),
    section('Handed over', model.handOvers.map(handOverSlip).join('')),
    section('The day', pairs(headLines(model.head)) + pairs([...totalsLines(model), ...unused(model)])),
    signed ? element('p', signed) : '',
  ].join('');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<title>${escapeHtml([subject, issueTitle(extras)].filter(Boolean).join(' · '))}</title>
<style>${pageStyle([subject, issueTitle(extras)].filter(Boolean).join(' · '))}</style>
</head>
<body>
${body}</body>
</html>
`;
}

/** With the signature, which takes the colour of the text. */
const handOverSlip = (line: HandOverLine): string =>
  element('p', handOverText(line)) +
  (line.strokes
    ? `<svg viewBox="0 0 ${STROKES_WIDE} ${STROKES_HIGH}" width="200" height="80" role="img" aria-label="Signature" fill="none" stroke="currentColor" stroke-width="7" stroke-linecap="round" stroke-linejoin="round"><path d="${strokesPath(strokesOf(line.strokes))}"/></svg>`
    : '');

const BRIEF = ['Rolls', 'Roll', 'Timecode', 'Sample rate', 'Bit depth', 'Files'];

/** What an editor needs before the first take, in two lines. */
function briefLines({ head, totals, open }: ReportModel): string[] {
  const said = headLines(head).filter(([label]) => BRIEF.includes(label));
  const matters = open.length > 0 ? [`${counted(open.length, 'matter')} not settled, after the takes`] : [];
  return [
    said.map(([label, text]) => (label.startsWith('Roll') ? `${label} ${text}` : text)).join(' · '),
    [`${counted(totals.takes, 'take')}, ${totals.circled} circled`, ...matters].join(' · '),
  ];
}

const unused = ({ takes, lists }: ReportModel) => (takes.length > 0 ? nobodyOn(lists) : []);

/** As wide as the narrowest phone shows; a wider screen has several beside each other. */
const PICTURE_WIDTH = 328;

/** One for each recorder with its own tracks. */
const pictures = (model: ReportModel): string[] =>
  dayPictures(model).map((picture) => {
    const drawn = pictureDrawings(picture, PICTURE_WIDTH).map(({ markup }) => markup);
    const content = drawn.length > 0 ? `<div class="pictures">${drawn.join('\n')}</div>${legendDrawn()}` : '';
    return section(pictureTitle(picture), content);
  });
