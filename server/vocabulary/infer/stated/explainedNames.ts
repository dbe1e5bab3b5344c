import { legendIn } from '../../../trade/statements/legend';
import type { Column } from '../values/column';

/** What a document says of a name that its places have. */
export interface ExplainedName {
  says: string;
  /** Where one explanation speaks of two names, as `bot/top = lowest and highest key`: which of them this is. */
  turn?: 'first' | 'second';
}

const mostNames = 500;
const mostFound = 200;
const name = String.raw`[\p{L}_][\p{L}\p{N}_.-]{0,30}`;
const is = String.raw`\s*(?:=+>?|:(?!\/\/)|\u2192|->|\u2013|(?<!\p{L})(?:is|are|means?|holds?|gives?|tells?|contains?|stores?|names?|stands? for|ist|sind|hei\u00dft|bedeute[nt]|enth\u00e4lt|enthalten|steht f\u00fcr|stehen f\u00fcr|nennt|est|sont|signifient?|contien(?:t|nent)|donnent?|indiquent?|es|son|significan?|contienen?|indican?|dan?|\u00e8|sono|contien(?:e|gono)|indicano|betekent|bevat(?:ten)?|geeft|geven|betyder|anger|oznacza\p{L}*|znamen\p{L}*)(?=\s))\s*`;
const joint = String.raw`\s*(?:\/|,|&|\+|\.{2,3}|\u2026|\u2013|-|(?<!\p{L})(?:and|to|und|bis|et|y|e|en|och|og|i|a)(?!\p{L}))\s*`;
const behind = String.raw`([^.;\n]{3,160})`;
const single = new RegExp(String.raw`(?<![\p{L}\p{N}_])(${name})${is}${behind}`, 'giu');
const pair = new RegExp(String.raw`(?<![\p{L}\p{N}_])(${name})${joint}(${name})${is}${behind}`, 'giu');
/** Where the explanation of another name starts. */
const next = new RegExp(String.raw`,\s*(?=${name}(?:${joint}${name})?\s*(?:=|:|\u2192|->))`, 'u');
/** Signs around names, as in `lev="…"` and `@lev`. */
const marks = /=""|[@<>"'\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019`]/gu;

/** A name in quotes with its explanation right behind it: `"ot" die oberste Taste`. */
const quoted = new RegExp(
  String.raw`["\u201c\u201e\u00ab\u2018'](${name})["\u201d\u201c\u00bb\u2019']\s+(?=(?:the|an?|der|die|das|la|le|el|il|lo|de|het|den|det)\s\p{L})`,
  'giu',
);

/** What texts explain of the names of places, by the words of each name with blanks between. */
export function explainedNames(
  texts: readonly string[],
  columns: readonly Column[],
): ReadonlyMap<string, ExplainedName> {
  const ids = new Map<string, string>();
  for (const { own } of columns) {
    const id = own.join(' ');
    if (id.length > 1 && ids.size < mostNames) ids.set(compact(id), id);
  }
  const idOf = (written: string | undefined) => ids.get(compact(written ?? ''));
  const found = new Map<string, ExplainedName>();
  const add = (id: string, one: ExplainedName): void => {
    if (!found.has(id)) found.set(id, one);
  };
  const plain = texts.map((text) => text.replace(quoted, '$1 = ').replace(marks, ''));
  for (const text of plain)
    for (const [, first, second, says = ''] of matchesOf(pair, text)) {
      const [one, other] = [idOf(first), idOf(second)];
      if (one === undefined || other === undefined || one === other) continue;
      const explained = upToNext(says);
      add(one, { says: explained, turn: 'first' });
      add(other, { says: explained, turn: 'second' });
    }
  for (const [word, { says }] of legendIn(plain)) {
    const id = idOf(word);
    if (id !== undefined) add(id, { says: upToNext(says) });
  }
  for (const text of plain)
    for (const [, written, says = ''] of matchesOf(single, text)) {
      const id = idOf(written);
      if (id !== undefined) add(id, { says: upToNext(says) });
    }
  return found;
}

/** All matches, each looked for from behind the name that the one before starts with. */
function* matchesOf(pattern: RegExp, text: string): Generator<RegExpExecArray> {
  pattern.lastIndex = 0;
  for (let count = 0; count < mostFound; count++) {
    const match = pattern.exec(text);
    if (!match) return;
    yield match;
    pattern.lastIndex = match.index + (match[1]?.length ?? 1);
  }
}

function upToNext(says: string): string {
  return says.split(next)[0]?.trim() ?? '';
}

function compact(written: string): string {
  return written.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}
