import type { Stretch } from '../../../day/answers/gang-reach.ts';
import type { Take } from '../../../day/model.ts';
import { takeText } from '../../../day/slate.ts';
import { countOf, listOf } from '../../words/chain.ts';

const NAMED = 3;

/** `44/1`, `44/1 and 44/2`; of many, the first three and how many more. */
export function takesWords(takes: readonly Take[]): string {
  const names = takes.map(takeText);
  return names.length <= NAMED + 1
    ? listOf(names)
    : listOf([...names.slice(0, NAMED), `${names.length - NAMED} more`]);
}

/** Consecutive takes: `44/1 only`, `44/1 to 44/3`. */
const runWords = (takes: readonly Take[]): string =>
  takes.length === 1 ? `${takeText(takes[0]!)} only` : `${takeText(takes[0]!)} to ${takeText(takes.at(-1)!)}`;

export interface GangChoice {
  readonly ask: string;
  readonly done: string;
  readonly onwards: boolean;
}

const gangChoice = (reach: string, onwards: boolean): GangChoice => ({
  ask: `Gang: on purpose${reach}`,
  done: `Ganged on purpose${reach}`,
  onwards,
});

/**
 * How long a gang declared before a take can last: while this clash lasts, or from there on. If the clash
 * lasts to the end of the day, or is not on the line, the two are the same.
 */
export function gangChoices(stretch: Stretch | undefined): GangChoice[] {
  if (!stretch || stretch.until === null) return [gangChoice('', false)];
  const { takes } = stretch;
  return [gangChoice(`, ${runWords(takes)}`, false), gangChoice(`, from ${takeText(takes[0]!)} on`, true)];
}

/** What each choice does to the day's takes. */
export function gangEffects({ takes, until, alike }: Stretch): string {
  const from = takeText(takes[0]!);
  if (until === null) {
    const count = takes.length === 1 ? from : `${countOf(takes.length, 'take')}, ${runWords(takes)}`;
    return `Settles ${count}, and goes on from here.`;
  }
  return alike.length > 0
    ? `From ${from} on, it also settles ${takesWords(alike)}. No other take changes.`
    : `From ${from} on, it covers takes to come as well. No other take changes.`;
}

/** What ending a track's gangs before a take does. */
export function endEffects(from: Take, clashing: readonly Take[]): string {
  const ends = `Ends it from ${takeText(from)} on`;
  if (clashing.length === 0) return `${ends}. No take would clash.`;
  const would = clashing.length === 1 ? 'take would clash' : 'takes would clash';
  return `${ends}. ${clashing.length} ${would}: ${takesWords(clashing)}.`;
}
