import { type Fact, KINDS } from '../../src/facts/fact.ts';

/** Where a body says a word of an enumeration: `{ kind: 'take-logged', path: ['fields', 'kind'] }`; `*` is any item of a list. */
export interface Enumeration {
  readonly kind: Fact['kind'];
  readonly path: readonly string[];
  /** Those this version knows. */
  readonly words: readonly string[];
}

interface Def {
  readonly type: string;
  readonly shape?: Readonly<Record<string, unknown>>;
  readonly innerType?: unknown;
  readonly element?: unknown;
  readonly items?: readonly unknown[];
  readonly valueType?: unknown;
  readonly options?: readonly unknown[];
  readonly discriminator?: string;
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly string[];
}

const defOf = (shape: unknown): Def => (shape as { _zod: { def: Def } })._zod.def;

type Found = Pick<Enumeration, 'path' | 'words'>;

function enumerationsIn(shape: unknown, path: readonly string[]): Found[] {
  const def = defOf(shape);
  const below = (part: unknown, ...steps: string[]) => enumerationsIn(part, [...path, ...steps]);
  if (def.type === 'enum') return [{ path, words: Object.values(def.entries!) }];
  const { discriminator } = def;
  if (discriminator) {
    const words = def.options!.flatMap((option) => defOf(defOf(option).shape![discriminator]).values!);
    return [{ path: [...path, discriminator], words }];
  }
  if (def.shape) return Object.entries(def.shape).flatMap(([name, field]) => below(field, name));
  return [
    ...(def.innerType ? below(def.innerType) : []),
    ...(def.element ? below(def.element, '*') : []),
    ...(def.valueType ? below(def.valueType, '*') : []),
    ...(def.items ?? []).flatMap((item, at) => below(item, `${at}`)),
    ...(def.options ?? []).flatMap((option) => below(option)),
  ];
}

/** Every enumeration in the shapes of facts, found by walking them. */
export const ENUMERATIONS: readonly Enumeration[] = KINDS.flatMap(({ name: kind, body }) =>
  enumerationsIn(body, []).map((found) => ({ kind, ...found })),
);

type Held = Record<string, unknown>;

/** Puts a word where a body has the enumeration, or has what holds it; how often it found a place. */
export function putWord(body: unknown, [step, ...rest]: readonly string[], word: string): number {
  if (typeof body !== 'object' || body === null || step === undefined) return 0;
  const held = body as Held;
  const names = step === '*' ? Object.keys(held) : [step];
  if (rest.length > 0) return names.reduce((sum, name) => sum + putWord(held[name], rest, word), 0);
  for (const name of names) held[name] = word;
  return names.length;
}
