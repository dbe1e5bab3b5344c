const looked = 1 << 16;
const mostNames = 100;
const given =
  /(?<![\p{L}\p{N}_.])(\$?[\p{L}_][\p{L}\p{N}_]{0,40})\s{0,8}(?::\s{0,4}[\p{L}&' ]{1,30})?(?::?=|=>)\s{0,8}[frb]?(["'`])([^"'`\n]{0,200})\2/gu;
/** A sign that joins texts, before a text in quotation marks or a name. */
const joining = /^\s{0,20}(\.\.|[.+&~/])\s{0,20}(?=["'`]|\$?[\p{L}_])/u;
const joinedName = /^(\$?[\p{L}_][\p{L}\p{N}_]*)(\.\.|[.+&~/])$/u;

/** The texts that names of a script stand for: `dir = "bells/"`. A name that is given several texts stands for none. */
export function namedTexts(text: string): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const open = new Set<string>();
  for (const [, name = '', , value = ''] of text.slice(0, looked).matchAll(given)) {
    if (names.has(name) && names.get(name) !== value) open.add(name);
    names.set(name, value);
    if (names.size > mostNames) break;
  }
  for (const name of open) names.delete(name);
  return names;
}

/** The sign that joins a text to what stands behind it at a place, and how long it is with the blanks around it. */
export function joiningAt(text: string, at: number): { sign: string; length: number } | undefined {
  const found = joining.exec(text.slice(at, at + 48));
  return found ? { sign: found[1] ?? '', length: found[0].length } : undefined;
}

/** A name that stands right before the sign that joins it: `dir..`, `dir+`. */
export function joinedNameIn(word: string): { name: string; sign: string } | undefined {
  const found = joinedName.exec(word);
  return found ? { name: found[1] ?? '', sign: found[2] ?? '' } : undefined;
}

/** Two texts as a sign joins them: `/` parts folders. */
export function joinedBy(sign: string, one: string, other: string): string {
  return sign === '/' && one !== '' && !/[\\/]$/.test(one) ? `${one}/${other}` : `${one}${other}`;
}

/** A text with the names in braces replaced by what they stand for: `${dir}/a.wav`. */
export function withNamed(text: string, names: ReadonlyMap<string, string>): string {
  if (names.size === 0 || !text.includes('{')) return text;
  return text.replace(
    /\$?\{\s*(\$?[\p{L}_][\p{L}\p{N}_]*)\s*\}/gu,
    (all, name: string) => names.get(name) ?? all,
  );
}
