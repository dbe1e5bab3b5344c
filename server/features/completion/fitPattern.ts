/** A pattern with as many of its numbers put in as a person has typed, and where it still has letters for numbers. */
export interface FittedPattern {
  name: string;
  blanks: { start: number; end: number }[];
}

/**
 * Puts the numbers of a half-typed name into a pattern: `eg1_l` into `egN_levelX` gives `eg1_levelX`. A pattern that
 * the typed text does not begin stays as it is. Letters that stand for numbers are the blanks.
 */
export function fitPattern(pattern: string, typed: string): FittedPattern {
  const parts = pattern.split(/(N+|[XYZ])/);
  const numbers: string[] = [];
  let rest = typed.toLowerCase();
  for (let part = 0; part < parts.length && rest !== ''; part++) {
    const text = parts[part];
    if (part % 2 === 1) {
      const digits = /^\d{1,3}/.exec(rest)?.[0];
      if (digits === undefined) break;
      numbers.push(digits);
      rest = rest.slice(digits.length);
    } else if (rest.startsWith(text)) rest = rest.slice(text.length);
    else break;
  }
  let name = '';
  const blanks: FittedPattern['blanks'] = [];
  for (let part = 0; part < parts.length; part++) {
    const isBlank = part % 2 === 1;
    const number = isBlank ? numbers.shift() : undefined;
    const start = name.length;
    name += number ?? parts[part];
    if (isBlank && number === undefined) blanks.push({ start, end: name.length });
  }
  return { name, blanks };
}
