import { bareWord } from '../../../trade/languages/spelling';

/** What values of a name stand for, by the bare value: as its explanation `says` of numbers, and as sentences `explaining` values say it. */
export function toldValues(
  own: readonly string[],
  says: string,
  explaining: string,
): ReadonlyMap<string, string> {
  return new Map([...numbersIn(says), ...valuesOf(own, explaining)]);
}

const between = String.raw`\s*(?:[,:=]|->|→|–|\b(?:is|are|means?|says|ist|hei(?:ß|ss)t|bedeutet|est|signifie|veut dire|es|significa|quiere decir|vuol dire|è|betekent|betyder|oznacza)(?!\p{L}))*\s*`;

/** What is said of values of a name, as of `lift="yes"` in `lift="yes" means that it sounds when the key is let go`. */
function valuesOf(own: readonly string[], explaining: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  if (explaining === '') return found;
  const name = own.map((word) => word.replace(/[^\p{L}\p{N}]/gu, '')).join(String.raw`[\s_.-]?`);
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
