import type { Stage } from './harness.ts';

/** Hands on the screen: what a mixer taps, by the words on it. */
export function hands(stage: Stage) {
  const page = () => stage.page;
  const tap = (name: string | RegExp) => page().getByRole('button', { name }).first().tap();
  const inSheet = (name: string | RegExp) =>
    page().getByRole('dialog').getByRole('button', { name }).first().tap();
  const tab = (name: string) => page().getByRole('link', { name, exact: true }).tap();
  const fill = (label: string | RegExp, value: string) =>
    page()
      .locator('input, textarea')
      .and(page().getByLabel(label, { exact: true }))
      .first()
      .fill(value);
  const at = (time: string) => stage.setClock(`2026-10-07T${time}Z`);
  const closed = () => page().getByRole('dialog').waitFor({ state: 'detached' });
  /** Rolls at one time and cuts at another. */
  const take = async (from: string, to: string): Promise<void> => {
    await at(from);
    await tap(/^Roll$/);
    await at(to);
    await tap(/^Cut$/);
  };
  return { page, tap, inSheet, tab, fill, at, take, closed };
}

export type Hands = ReturnType<typeof hands>;
