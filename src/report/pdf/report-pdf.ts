import { cleanNote } from '../clean-text.ts';
import { SECOND_FORM } from '../form.ts';
import { isolated } from '../isolated.ts';
import { issueName, issueTitle } from '../list/issue-words.ts';
import type { ReportModel } from '../model.ts';
import { reportSubject } from '../printed/report-name.ts';
import type { Extras } from '../revision/revision.ts';
import { revisionLines, revisionTitle } from '../revision/revision.ts';
import { earlierContent } from './earlier-content.ts';
import { fittedLines } from './fitted-text.ts';
import { Flow } from './flow.ts';
import { handOverSection } from './hand-over-section.ts';
import { headSection, openSection, strokedLines } from './head-section.ts';
import { fitsBeforeTakes, lanesSection } from './lanes-section.ts';
import type { SystemLetters } from './letters.ts';
import { MARGIN, PAPERS, type PaperId, STYLES } from './paper.ts';
import { type Fonts, Pen } from './pen.ts';
import { pictureSection } from './picture-section.ts';
import { takeListSection } from './take-list-section.ts';
import { takesSection } from './takes-section.ts';
import { tracksSection } from './tracks-section.ts';

export interface PdfOptions extends Extras {
  readonly fonts: Fonts;
  /** What draws the scripts that the fonts lack, where there is something. */
  readonly letters?: SystemLetters | undefined;
  readonly paper?: PaperId;
}

export interface ReportPdf {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly pages: number;
  /** Characters that nothing can draw here; the pages show `?` for them and say so. */
  readonly missing: readonly string[];
}

/** The report as portrait pages. The same model, fonts and letters give the same bytes. */
export function reportPdf(
  model: ReportModel,
  { fonts, letters, paper = 'a4', ...extras }: PdfOptions,
): ReportPdf {
  const { revision, signature, letter, issued } = extras;
  const pen = new Pen(PAPERS[paper], fonts, model.form > SECOND_FORM ? letters : undefined);
  const flow = new Flow(pen);
  // Found before layout, because the first page lists them.
  const isList = model.form > SECOND_FORM;
  const content = JSON.stringify(
    isList
      ? [paper, model, revision, signature, letter, issued]
      : [paper, earlierContent(model), revision, signature ?? ''],
  );
  pen.findMissing(content);
  headSection(flow, model, isList ? issueTitle(extras) : issueName({ revision }));
  strokedLines(flow, 'Not in this font', missingLines(pen, model));
  if (revision) strokedLines(flow, revisionTitle(revision), revisionLines(revision));
  if (isList) listPages(flow, model, extras);
  else secondFormPages(flow, model, signature);
  footers(flow, model, isList ? `${issueTitle(extras)} · ` : '');
  const bytes = pen.bytes(`${reportSubject(model)} sound report`.trim(), hexDigest(content), model.head.date);
  return { bytes, pages: pen.pages, missing: [...pen.missing] };
}

/** The day at a glance, the takes, and what else is to be said. */
function listPages(flow: Flow, model: ReportModel, extras: Extras): void {
  const isGlance = fitsBeforeTakes(flow, model);
  if (isGlance) lanesSection(flow, model);
  takeListSection(flow, model, extras);
  if (model.takes.length === 0) tracksSection(flow, model);
  openSection(flow, model);
  handOverSection(flow, model);
  signatureLines(flow, cleanNote(extras.signature ?? ''));
  if (!isGlance) lanesSection(flow, model);
}

/** The pages as the first two forms had them, with the picture of the day at the end. */
function secondFormPages(flow: Flow, model: ReportModel, signature = ''): void {
  openSection(flow, model);
  tracksSection(flow, model);
  takesSection(flow, model);
  signatureLines(flow, cleanNote(signature));
  pictureSection(flow, model);
}

function signatureLines(flow: Flow, signature: string): void {
  if (signature === '') return;
  flow.y += 12;
  for (const line of fittedLines(flow.pen, signature, STYLES.value, flow.width)) {
    flow.need(12);
    flow.y += 12;
    flow.pen.text(line, flow.left, flow.y, STYLES.value);
  }
}

const NAMED = 40;
const LONGEST_FOOT = 80;

function missingLines({ missing }: Pen, { form }: ReportModel): string[] {
  if (missing.size === 0) return [];
  const codes = [...missing].map(
    (character) => `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`,
  );
  const more = codes.length > NAMED ? ` and ${codes.length - NAMED} more` : '';
  return [
    `These pages show ? for ${codes.slice(0, NAMED).join(' ')}${more}. ${form > SECOND_FORM ? 'The web page has them' : 'The text has them'}.`,
  ];
}

/** The foot of every page: production, day and date, cut if too long. */
export const footText = (model: ReportModel): string =>
  [...[reportSubject(model), model.head.date].filter(Boolean).join(' · ')].slice(0, LONGEST_FOOT).join('');

function footers(flow: Flow, model: ReportModel, issue: string): void {
  const { pen } = flow;
  const count = pen.pages;
  const subject = [...reportSubject(model)].slice(0, LONGEST_FOOT).join('');
  const title = isolated(subject) + footText(model).slice(subject.length);
  const y = pen.paper.height - MARGIN.bottom + 26;
  for (let page = 1; page <= count; page += 1) {
    pen.turnTo(page);
    pen.text(title, flow.left, y, STYLES.foot);
    pen.text(`${issue}page ${page} of ${count}`, flow.right, y, STYLES.foot, 'right');
  }
}

/** Four rounds of FNV-1a (32 bit): not for security, just stable for the same content. */
function hexDigest(text: string): string {
  return [0, 1, 2, 3]
    .map((round) => {
      let hash = (0x811c9dc5 ^ (round * 0x9e3779b1)) >>> 0;
      for (let at = 0; at < text.length; at += 1)
        hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
      return hash.toString(16).padStart(8, '0');
    })
    .join('');
}
