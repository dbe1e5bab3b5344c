import type { HeadingReading } from '../../trade/headings/headings';
import { readHeading } from '../../trade/headings/headings';
import { panWord } from '../../trade/languages/cellWords';
import { givesMeasuredUnit } from '../../trade/languages/measuredWords';
import { bareWord, usualSigns, wordsOf } from '../../trade/languages/spelling';
import type { ColumnMeaning, Unit } from '../../trade/meaning';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';

/** What the text around says of a heading. */
export interface Explained extends HeadingReading {
  text: string;
  /** Whether what the words of the heading say by themselves does not count. */
  isSettled?: boolean;
}

const mostTexts = 100;
const longest = 400;
const longestHeading = 30;
const quoted =
  /["'\u2018\u201c\u201e\u00ab\u00bb](.{1,30}?)["'\u2019\u201d\u201c\u00bb\u00ab]\s*(?:(?:column|spalte|colonne|columna|colonna|coluna|kolom)\s*)?(?:=|:|\b(?:is|are|means|gives|says|holds|tells|stands for|ist|sind|bedeutet|gibt|est|sont|signifie|donne|es|son|significa|indica|d[ai]|\u00e8|sono|geeft|betekent)(?=\s))\s*(.{3,120})/iu;
const short = /(?:^|[\s,;(])(\p{L}[\p{L}\p{N}_.#]{0,11})\s*(?:=|:)\s*([^,;=:()]{3,60})/gu;
const sampleOff =
  /\b(?:sharp|flat|out of tune|off pitch|too (?:high|low)|detuned|zu (?:hoch|tief)|verstimmt|trop (?:haute?|basse?)|faux|fausse|desafinad[ao]s?|stonat[oaie]|te (?:hoog|laag)|vals)\b/iu;
const correction =
  /\b(?:correct(?:ion|s)|apply|tuning to|korrektur|corrige|correcci\u00f3n|correzione)\b.{0,20}\b(?:to|for)\b/iu;

/** A number of cents, and what it means of the recording: `+8 means the recording is 8 cents sharp`. */
const deviating =
  /(?<![\d.,])[+-]?(\d{1,2}(?:[.,]\d+)?)\s*(?:=|:|means?|says?|is|hei\u00dft|bedeutet|signifie|significa|betekent|betyder|oznacza|znamen\u00e1)[:,]?\s([^.!?\r\n]{0,30}(?:recording|sample|file|aufnahme|datei|enregistrement|\u00e9chantillon|fichier|grabaci\u00f3n|muestra|registrazione|campione|opname|bestand|inspelning|nagranie|nahr\u00e1vka|grava\u00e7\u00e3o)[^.!?\r\n]{0,20}\s(\d{1,2}(?:[.,]\d+)?)\s*(?:cents?|centy?|ct|c)(?!\p{L})[^.!?,\r\n]{0,20})/iu;

/** Finds what the text around a table says of its headings: `"off" is how many cents the recording is sharp`, `VL = lowest velocity`. */
export class Glossary {
  /** The texts around the tables. */
  readonly texts: readonly string[];
  /** Those of them that may explain a pan. */
  readonly #onSides: readonly { text: string; whole: string }[];
  readonly #explained = new Map<string, { text: string; says: string }>();
  readonly #settled = new Map<string, Explained>();

  constructor(cells: TableCells, tables: readonly TableRows[]) {
    const texts = cells.around.map(usualSigns);
    this.texts = texts;
    for (const { others, data } of tables) {
      const rows = [...others.map(({ row }) => row), ...linesOf(cells, data)].sort((a, b) => a - b);
      for (const row of rows) {
        const { start, end } = cells.rowSpan(row);
        if (end - start <= longest) texts.push(usualSigns(cells.text.slice(start, end)));
        if (texts.length > mostTexts) break;
      }
    }
    this.#onSides = texts
      .map((text) => ({ text, whole: bareWord(text) }))
      .filter(({ whole }) => namesBothSides(whole));
    for (const text of texts) this.#read(text);
  }

  /** Settles what a heading means, by what a text says of the words below it. */
  settle(heading: string, meaning: ColumnMeaning, text: string, unit?: Unit): void {
    if (heading !== '') this.#settled.set(heading, { meaning, unit, text, isSettled: true });
  }

  /** The clause, if any, that says of a heading that its levels are in a unit which is only measured: `the level is in LUFS`. */
  measured(heading: string): string | undefined {
    const name = wordsOf(heading).join(' ');
    if (name.length < 2) return undefined;
    for (const text of this.texts) {
      if (!givesMeasuredUnit(text)) continue;
      const clauses = text.split(/[.;!?\n](?=\s|$)|,\s/u);
      const found = clauses.find(
        (one) => givesMeasuredUnit(one) && !/\d/.test(one) && namesHeading(wordsOf(one).join(' '), name),
      );
      if (found !== undefined) return found.trim();
    }
    return undefined;
  }

  #read(text: string): void {
    const [, heading = '', says = ''] = quoted.exec(text) ?? [];
    if (heading !== '') this.#add(heading, says, text);
    for (const [, word = '', meaning = ''] of text.matchAll(short)) this.#add(word, meaning, text);
  }

  #add(heading: string, says: string, text: string): void {
    const key = bareWord(heading);
    if (!this.#explained.has(key)) this.#explained.set(key, { text, says: says.trim() });
  }

  /** A tuning whose numbers say how far the recordings are off, as a text says by an example. */
  #deviation(heading: string): Explained | undefined {
    const reading = readHeading(heading);
    if (reading?.meaning !== 'tune') return undefined;
    for (const text of this.texts) {
      const [, number, says = '', again] = deviating.exec(text) ?? [];
      if (number !== undefined && number === again && sampleOff.test(says))
        return { meaning: 'deviation', unit: 'cents', text };
    }
    return undefined;
  }

  /** What is said of a heading; `undefined` where nothing is, or it is not understood. */
  explain(heading: string): Explained | undefined {
    const settled = this.#settled.get(heading);
    if (settled) return settled;
    if (heading === '' || heading.length > longestHeading) return undefined;
    const pan = this.#onSides.find(({ whole }) => givesSides(whole, heading));
    if (pan) return { meaning: 'pan', unit: undefined, text: pan.text };
    const found = this.#explained.get(bareWord(heading));
    if (!found) return this.#deviation(heading);
    const { says, text } = found;
    if (sampleOff.test(says) && !correction.test(says)) {
      const unit = /semitone|halbt|demi|semitono|halve/iu.test(says) ? 'semitones' : 'cents';
      return { meaning: 'deviation', unit, text };
    }
    const words = says.replace(/[.!].*$/u, '').split(/\s+/);
    for (let count = Math.min(5, words.length); count > 0; count--) {
      const reading = readHeading(words.slice(0, count).join(' '));
      if (reading && !reading.likeness) return { ...reading, text };
    }
    return undefined;
  }
}

/** Whether a heading, or its plural, stands among some words. */
function namesHeading(words: string, name: string): boolean {
  const padded = ` ${words} `;
  return [name, `${name}s`, `${name}e`].some((one) => padded.includes(` ${one} `));
}

/** The rows at the start and the end of a table that may be lines of text. */
function linesOf(cells: TableCells, data: readonly number[]): number[] {
  const isLine = (row: number) => cells.filled(row) === 1;
  return [
    ...new Set([
      ...data.slice(0, 5),
      ...data.slice(0, 40).filter(isLine),
      ...data.slice(-40).filter(isLine),
      ...data.slice(-10),
    ]),
  ];
}

/** Whether a text has numbers and words for the left and the right. */
function namesBothSides(text: string): boolean {
  if (!/\d/.test(text)) return false;
  const sides = new Set(Array.from(text.matchAll(/\p{L}{2,}/gu), ([one]) => panWord(one)));
  return sides.has('left') && sides.has('right');
}

/** Whether a text explains a heading by numbers for the left and the right: `pos: 0 = left, 127 = right`. */
function givesSides(whole: string, heading: string): boolean {
  const word = bareWord(heading);
  if (word.length < 2) return false;
  for (let at = whole.indexOf(word); at >= 0; at = whole.indexOf(word, at + 1)) {
    const before = whole[at - 1] ?? ' ';
    const behind = whole.slice(at + word.length).split(/[.;\n](?=\s|$)/u)[0] ?? '';
    if (/[\p{L}\p{N}]/u.test(before) || !/^["'\u201d\u00bb)*]*\s*(?::|=|\p{L}|[-\d(])/u.test(behind))
      continue;
    if (namesBothSides(behind)) return true;
  }
  return false;
}
