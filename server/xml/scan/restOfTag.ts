/**
 * What stands behind the name of a tag that is being typed: nothing; the bracket alone that an editor puts there by itself,
 * with how long it is; or more, such as attributes or an end tag further down, so that the tag is there already.
 */
export function restOfTag(
  rest: string,
  name: string,
): { kind: 'nothing' | 'more' } | { kind: 'bracket'; length: number } {
  const line = /^[^\r\n]*/.exec(rest)?.[0] ?? '';
  if (line.trim() === '') return { kind: 'nothing' };
  if (line.trim() !== '>') return { kind: 'more' };
  const end = rest.indexOf(`</${name}`);
  const next = rest.indexOf(`<${name}`);
  return end >= 0 && (next < 0 || end < next) ? { kind: 'more' } : { kind: 'bracket', length: line.length };
}
