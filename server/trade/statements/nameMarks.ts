import { languages } from '../languages/languages';
import { bareWord, usualSigns } from '../languages/spelling';
import { startInTitle } from '../readings/startInTitle';
import { leavesOut } from './leavesOut';
import { legendIn } from './legend';
import type { StatedSettings } from './settings';
import { statedSettings } from './settings';

/** What a text says of the samples that have a mark, such as `*`, behind their names. */
export interface MarkLegend {
  says: string;
  /** The lines that it stands in. */
  text: string;
}

/** Signs that mark names, as a part of a pattern that goes by `u`. */
export const nameMark: string = String.raw`[*\u2020\u2021\u00a7\u00b6\u00b0^+!?~#\u00b9\u00b2\u00b3\u2070-\u2079]{1,3}`;

const longest = 600;
const mostTexts = 400;
const mark = new RegExp(
  String.raw`(?<![^\s"'(\[\u201e\u201c\u00ab,;])(${nameMark})(?=[\s"')\]\u201d\u00bb=:,]|\p{L})`,
  'gu',
);
/** Signs that mark rows in a column of their own, besides those of names. */
export const rowMark = String.raw`[-\u2013\u2014/\u2022\u00d7\u2713-\u2718]`;
/** What such a sign means: behind `=` or a colon, as the sign may only lead a line of a list. */
const rowMarkEntry = new RegExp(
  String.raw`(?:^|[\s,;])["'(\[\u201c\u201e\u00ab]?(${rowMark})["')\]\u201d\u00bb]?\s?[=:]\s?(\p{L}.*)$`,
  'u',
);
/** Before the next mark of a line that explains several. */
const nextEntry = /[,;.]\s+(?=["'(]?[^\s,;.]{1,3}["')]?\s?[=:])|\s+(?=["'(]?[^\s,;.]{1,2}["')]?\s=\s)/u;
/** A small raised number is read as a usual one, and so is one in brackets, as Markdown writes those of footnotes too. */
const numbered =
  /^(?:[([]\^?(\d{1,2})[)\]][\s:=]*(?=.*\p{L}{2})(.*)|(\d{1,2})[\s):=.]+(\p{L}.*|[-+\u2212]?\d{1,2}(?:[.,]\d{1,2})?\s?(?:dB|cents?|ct)(?!\p{L}).*))$/iu;
const nextNumber = /\s+(?=[([]\^?\d{1,2}[)\]])/u;
/** What is off, in words of heads of columns that tell of it. */
const offWords: ReadonlySet<string> = new Set(
  ['off', 'switched off', 'turned off', ...languages.flatMap(({ phrases }) => phrases.disabled ?? [])].map(
    bareWord,
  ),
);
const leadingSigns = /^[\s"')\]\u201d\u00bb=:>\u2013\u2014-]+/u;

/**
 * What texts say of marks: a mark with what it means behind it, as `* = release sample`, or a sentence that names one: `those with † are
 * 3 dB quieter`. Words in brackets, as `(r)`, are found by their legend too.
 */
export function nameMarksIn(texts: readonly string[]): ReadonlyMap<string, MarkLegend> {
  const found = new Map<string, MarkLegend>();
  const add = (key: string, says: string, text: string) => {
    const before = found.get(key);
    if (before?.text.includes(text)) return;
    const isMore = before === undefined || text.includes(before.text);
    found.set(
      key,
      isMore ? { says, text } : { says: `${before.says}; ${says}`, text: `${before.text} ${text}` },
    );
  };
  for (const whole of texts.slice(0, mostTexts)) {
    const text = whole.slice(0, longest).trim();
    // Lines that go on may be joined.
    for (const part of text.split(nextNumber)) {
      const [, inBrackets, ofIt = '', number = inBrackets, what = ofIt] = numbered.exec(part) ?? [];
      if (number !== undefined) add(number, beforeNumber(what, Number(number) + 1), part);
    }
    for (const entry of text.split(nextEntry)) {
      const [, sign = '', meaning = ''] = rowMarkEntry.exec(entry) ?? [];
      if (sign !== '') add(sign, meaning, text);
    }
    const places = [...text.matchAll(mark)];
    for (const [at, { index, 1: sign = '' }] of places.entries()) {
      const behind = text.slice(index + sign.length, places[at + 1]?.index ?? text.length);
      const isHead = index === 0 || leadingSigns.test(behind.replace(/^\s+(?=\p{L})/u, ''));
      const says = isHead
        ? (behind.replace(leadingSigns, '').split(nextEntry)[0] ?? '')
        : text.replaceAll(sign, ' ');
      if (/\p{L}{2}/u.test(says)) add(sign, says.trim(), text);
    }
  }
  for (const [word, { says, text }] of legendIn(texts)) if (!found.has(word)) found.set(word, { says, text });
  return found;
}

/** What stands before the next number of footnotes that go on in one line. */
function beforeNumber(what: string, next: number): string {
  const following = new RegExp(String.raw`\s\D?\D?${next}[\s):=.\]](?!\s?(?:dB|cents?|ct|%))`, 'iu');
  return what.split(following)[0] ?? what;
}

/** What is said of a sample with a mark, or with words in brackets, behind its name; `undefined` where nothing is. */
export function legendOf(remark: string, marks: ReadonlyMap<string, MarkLegend>): MarkLegend | undefined {
  return marks.get(usualSigns(remark).replace(/^\^(?=\d)/, '')) ?? marks.get(bareWord(remark));
}

/** The values that an explanation gives; `undefined` where it gives none. */
export function settingsIn(says: string): StatedSettings | undefined {
  const settings = statedSettings(says);
  const isReleased = startInTitle(says) === 'release' && !settings?.values.has('trigger');
  if (!isReleased) return settings;
  const values = new Map(settings?.values ?? []).set('trigger', 'release');
  return { values, name: settings?.name ?? '', hasMore: settings?.hasMore ?? /\d/.test(says) };
}

/** Whether an explanation says that samples are not used, or only that they are off; strings and horns are muted, too, and play. */
export function saysLeftOut(says: string): boolean {
  return leavesOut(says, false) || says.split(/[,;:.()]/u).some((clause) => isOff(clause.trim()));
}

function isOff(clause: string): boolean {
  const state = bareWord(clause).replace(/^(?:is|are|ist|sind|est|sont|esta|estan|e|sono) /, '');
  return state !== '' && !/^(?:muted?|stumm|d.?mpet|mykistetty)$/.test(state) && offWords.has(state);
}
