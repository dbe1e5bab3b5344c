import { bareWord } from '../../../trade/languages/spelling';

/** What values of a name stand for, by the bare value: as its explanation `says` of numbers, and as sentences `explaining` values say it. */
export function toldValues(
  own: readonly string[],
  says: string,
  explaining: string,
  values: readonly string[] = [],
): ReadonlyMap<string, string> {
  return new Map([...numbersIn(says), ...listedOf(own, values, explaining), ...valuesOf(own, explaining)]);
}

const mostListed = 12;

/** What a text lists of the words that a place holds, behind its name: `play: whole = to its end; held = while the key is down`. */
function listedOf(
  own: readonly string[],
  values: readonly string[],
  explaining: string,
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const words = values.filter((value) => /^\p{L}[\p{L}\p{N}_-]{0,23}$/u.test(value));
  if (explaining === '' || words.length === 0 || words.length > mostListed) return found;
  const name = new RegExp(String.raw`(?<![\p{L}\p{N}])${nameOf(own)}(?![\p{L}\p{N}])`, 'iu').exec(explaining);
  if (!name) return found;
  const behind = explaining.slice(name.index + name[0].length);
  const listed = new RegExp(
    String.raw`(?<![\p{L}\p{N}])["'\u201c\u201d\u201e\u00ab]?(${words.join('|')})["'\u201c\u201d\u00bb]?\s?(?:=|:|->|\u2192|\u2013|\b(?:means|is|hei(?:\u00df|ss)t|bedeutet|signifie|significa|betekent)\b)\s?([^=:;.\n\r]{3,160})`,
    'giu',
  );
  for (const [, value = '', says = ''] of behind.matchAll(listed))
    if (!found.has(bareWord(value))) found.set(bareWord(value), says.trim());
  return found;
}

function nameOf(own: readonly string[]): string {
  return own.map((word) => word.replace(/[^\p{L}\p{N}]/gu, '')).join(String.raw`[\s_.-]?`);
}

const between = String.raw`\s*(?:[,:=]|->|→|–|\b(?:is|are|means?|says|ist|hei(?:ß|ss)t|bedeutet|est|signifie|veut dire|es|significa|quiere decir|vuol dire|è|betekent|betyder|oznacza)(?!\p{L}))*\s*`;

/** What is said of values of a name, as of `lift="yes"` in `lift="yes" means that it sounds when the key is let go`. */
function valuesOf(own: readonly string[], explaining: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  if (explaining === '') return found;
  const name = nameOf(own);
  const pattern = new RegExp(
    String.raw`(?<![\p{L}\p{N}])${name}\s*=\s*["'“”„«]?([\p{L}\p{N}_-]{1,24})["'”“»]?${between}([^.;\n\r]{3,160})`,
    'giu',
  );
  for (const [, value = '', says = ''] of explaining.matchAll(pattern))
    if (!found.has(bareWord(value))) found.set(bareWord(value), says.trim());
  return found;
}

/** What an explanation lists of numbers: `0 = none, 1 = while the key is held, 2 = forever`. */
function numbersIn(says: string): Map<string, string> {
  const listed = /(?:^|[,(/]\s?|\s)(\d{1,2})\s?(?:=|:|->|\u2192)\s?([^\d\s,=][^\d,=/]{1,80})/gu;
  const found = Array.from(says.matchAll(listed), ([, value = '', is = '']) => [value, is.trim()] as const);
  return new Map(found.length > 1 ? found : []);
}
