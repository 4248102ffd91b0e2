/** `'45A'` and `'2'` of `'45A/2'`; a wild track has no slate. */
export function takeNameParts(text: string): { readonly slate: string; readonly number: string } {
  const at = text.lastIndexOf('/');
  return { slate: text.slice(0, Math.max(0, at)), number: text.slice(at + 1) };
}
