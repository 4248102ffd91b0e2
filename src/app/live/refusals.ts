import { type ReadonlySignal, signal } from '@preact/signals';
import type { SealedProblem } from '../../exchange/sealed/refusals.ts';

export type { SealedProblem } from '../../exchange/sealed/refusals.ts';

/** What was refused since the day was put live or opened, and why the last of it. */
export interface Refused {
  readonly count: number;
  readonly last: SealedProblem['code'];
}

const refused = signal<Refused | null>(null);

export const refusedHere: ReadonlySignal<Refused | null> = refused;

export const forgetRefusals = (): void => {
  refused.value = null;
};

/** What is known already is nothing to speak of: a log gives it again at every start. */
export function noteRefusal({ code }: SealedProblem): void {
  if (code !== 'sealed-replayed') refused.value = { count: (refused.peek()?.count ?? 0) + 1, last: code };
}
