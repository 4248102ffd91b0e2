/** A node of the syntax tree (ESTree); which fields it has depends on its type. */
export interface Node {
  readonly type: string;
  // biome-ignore lint/suspicious/noExplicitAny: the tree is walked by the names of its fields.
  readonly [field: string]: any;
}

export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';
