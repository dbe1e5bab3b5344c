import type { Stretch } from '../../../model/text/stretch';
import { textStart } from '../../../model/text/textLayout';
import { panWord } from '../../../trade/languages/cellWords';
import { bareWord } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { meaningNames } from '../../../trade/meaning';
import type { ToldValue } from '../../../trade/phrases/clause';
import { allButIn } from '../../../trade/statements/amounts/allBut';
import { legendIn } from '../../../trade/statements/legend';
import { TableCells } from '../cells';
import type { PlacedValue } from './clauseReader';
import { correct } from './correctedEntries';
import type { TextLine, ToldLine } from './toldLine';
import { givesKeys, namesAnyFile, namesOneFile, toldLineIn } from './toldLine';
import { toldPieces } from './toldPieces';

/** So many lines tell whether a text is told. */
const mostLooks = 300;
/** So many lines with files have to give keys, and so many clauses to be understood (our choice). */
const mostKeyed = 0.9;
const mostKnown = 0.6;
const mostNoted = 12;

/**
 * The cells of a text that tells of each file in words, one on a line: `a.wav plays from C2 to E2, root D2, 3 dB quieter`, also as a list
 * with a key or a number before each: `- 36: kick.wav (left 20, -3 dB)`. `undefined` for any other text.
 */
export function toldCells(text: string): TableCells | undefined {
  const written = ({ start, end }: Stretch) => text.slice(start, end);
  const tells = (of: readonly Stretch[]) => {
    const files = of.filter((line) => namesAnyFile(written(line)) && !allButIn(written(line)));
    return files.length >= 2 && files.every((line) => namesOneFile(written(line))) ? files : undefined;
  };
  const byLine = tells(linesOfText(text, mostLooks));
  const lines = byLine ? linesOfText(text) : (toldPieces(text) ?? []);
  const looked = byLine ?? tells(lines);
  if (!looked) return undefined;
  const prose = lines.filter((line) => !namesAnyFile(written(line))).map(written);
  const legend = sidesIn(prose);
  const read = (line: Stretch): TextLine => {
    const isListed = /^[ \t]*(?:[*\u2022-][ \t]+)?\S{1,4}[.):]/u.test(written(line));
    const isTold = (namesOneFile(written(line)) && !allButIn(written(line))) || isListed;
    return { ...line, told: isTold ? toldLineIn(text, line, legend, !byLine) : undefined };
  };
  const told = looked.map((line) => read(line).told).filter((told) => told !== undefined);
  const nameOf = ({ file }: ToldLine) => file && text.slice(file.start, file.end).toLowerCase();
  const names = told.map(nameOf);
  // What is said of a file once more is no entry of the list.
  const first = told.filter(
    (one, at) => givesKeys(one) || one.lead !== undefined || names.indexOf(nameOf(one)) === at,
  );
  const lead = leadOf(first);
  if (!areTold(first, lead)) return undefined;
  return new ToldTable(text, lead).cells(lines.map(read), legend);
}

/** Lines that were told elsewhere as rows under headings; `undefined` in place of what a line tells keeps it as text. */
export function toldTable(text: string, lines: readonly TextLine[]): TableCells {
  return new ToldTable(text, 'key').cells(lines, () => undefined);
}

/** As {@link toldTable}, of lines without keys before them, with what is assumed of them. */
export function toldRows(
  text: string,
  lines: readonly TextLine[],
  notes: readonly (Stretch & { text: string })[],
): TableCells {
  const cells = new ToldTable(text, undefined).cells(lines, () => undefined);
  cells.assumptions = [...notes, ...cells.assumptions];
  return cells;
}

/** What the numbers before lines are: the keys of their zones, or numbers of the lines. */
type Lead = 'key' | 'row_number' | undefined;

function leadOf(lines: readonly ToldLine[]): Lead {
  const leads = lines.map(({ lead }) => lead).filter((lead) => lead !== undefined);
  if (leads.length * 2 < lines.length) return undefined;
  const numbers = leads.map(({ text }) => Number(text));
  const counts = numbers.every((number, at) => number === numbers[0] + at) && numbers[0] <= 1;
  if (counts || leads.every(({ sign }) => /[.)\u3001\uff0e]/u.test(sign))) return 'row_number';
  return numbers.every((number) => Number.isNaN(number) || number <= 127) && !lines.some(givesKeys)
    ? 'key'
    : 'row_number';
}

/** Whether nearly all lines give keys, most clauses are understood, and words say what values are. */
function areTold(lines: readonly ToldLine[], lead: Lead): boolean {
  const keyed = lines.filter((line) => (lead === 'key' ? line.lead : givesKeys(line)));
  if (keyed.length < lines.length * mostKeyed || keyed.length < 2) return false;
  const known = lines.reduce((sum, { values }) => sum + values.filter(({ isNamed }) => isNamed).length, 0);
  const rest = lines.reduce((sum, one) => sum + one.rest.length, 0);
  return known >= lines.length * 0.5 && known >= (known + rest) * mostKnown;
}

/** Letters that the text explains as sides: `B = bal`; a number may stand behind them. */
function sidesIn(prose: readonly string[]): (clause: string) => ToldValue | undefined {
  const legend = legendIn(prose);
  return (clause) => {
    const [, word = '', amount = ''] = /^(\p{L}{1,3})\s?(\d{1,3}\s?%?)?$/u.exec(clause) ?? [];
    const says = word === '' ? undefined : legend.get(bareWord(word))?.says;
    const side = says === undefined ? undefined : panWord(says.split(/[\s,;.]/u)[0] ?? '');
    if (!side) return undefined;
    const text = side === 'centre' ? 'C' : `${side === 'left' ? 'L' : 'R'}${amount || '100'}`;
    return { meaning: 'pan', text, isNamed: true };
  };
}

/** The lines of a text, the first `most` of them. */
export function linesOfText(text: string, most: number = Number.POSITIVE_INFINITY): Stretch[] {
  const lines: Stretch[] = [];
  for (let start = textStart(text); start <= text.length && lines.length < most; ) {
    const feed = text.indexOf('\n', start);
    const end = feed < 0 ? text.length : feed;
    lines.push({ start, end: text[end - 1] === '\r' && end > start ? end - 1 : end });
    start = end + 1;
  }
  return lines;
}

/** An amount that counts the other way: `-3 ct` for `+3 ct`. */
function turned(amount: string): string {
  const bare = amount.replace(/^[-+]/u, '');
  return amount.startsWith('-') ? `+${bare}` : `-${bare}`;
}

/** The lines of a text as rows under headings that name what was understood. */
class ToldTable {
  readonly #cells: TableCells;
  readonly #spans: Stretch[] = [];
  readonly #notes: (Stretch & { text: string })[] = [];

  constructor(
    readonly text: string,
    readonly lead: Lead,
  ) {
    this.#cells = new TableCells(text);
  }

  cells(lines: readonly TextLine[], legend: (clause: string) => ToldValue | undefined): TableCells {
    const { corrected: told, notes } = correct(this.text, lines, legend);
    this.#notes.push(...notes);
    const corrected = this.#withOneTuning(told);
    const columns: ColumnMeaning[] = [...(this.lead ? [this.lead] : []), 'sample'];
    for (const { told } of corrected)
      for (const { meaning, isOpen } of told?.values ?? [])
        if (!isOpen && !columns.includes(meaning)) columns.push(meaning);
    columns.push('comment');
    let isHeaded = false;
    for (const line of corrected) {
      const { told, start, end } = line;
      if (told?.file && !isHeaded) {
        const at = told.file.start;
        for (const meaning of columns) this.#put(meaningNames[meaning], at, at);
        this.#endRow({ start, end: start });
        isHeaded = true;
      }
      if (told && isHeaded && (told.file || (told.lead && this.lead === 'key'))) this.#addZone(told, columns);
      else if (end > start) this.#cells.add(start, end);
      if (line.isWithdrawn) this.#cells.struckRows.add(this.#spans.length);
      this.#endRow(line);
    }
    this.#cells.rowSpans = this.#spans;
    this.#cells.assumptions = this.#notes.slice(0, mostNoted);
    return this.#cells;
  }

  /** Where some lines tell a tuning and others how far a sample is off, all of them as tunings. */
  #withOneTuning<Line extends TextLine>(lines: readonly Line[]): readonly Line[] {
    const tells = (one: ColumnMeaning) =>
      lines.some(({ told }) => told?.values.some(({ meaning }) => meaning === one));
    if (!tells('tune') || !tells('deviation')) return lines;
    return lines.map((line) => {
      const off = line.told?.values.find(({ meaning }) => meaning === 'deviation');
      if (!line.told || !off || line.told.values.some(({ meaning }) => meaning === 'tune')) return line;
      const tune = { ...off, meaning: 'tune' as const, text: turned(off.text) };
      const said = this.text.slice(off.start, off.end).slice(0, 60);
      this.#notes.push({
        start: off.start,
        end: off.end,
        text: `"${said}" says how far the sample is off pitch; it is tuned by ${tune.text} for that.`,
      });
      return {
        ...line,
        told: { ...line.told, values: line.told.values.map((one) => (one === off ? tune : one)) },
      };
    });
  }

  #addZone({ lead, file, values, rest }: ToldLine, columns: readonly ColumnMeaning[]): void {
    const { start } = file ?? lead ?? { start: 0 };
    const open = values.filter(({ isOpen }) => isOpen);
    for (const value of open) this.#noteOpen(value);
    for (const meaning of columns) {
      const value = values.find((one) => one.meaning === meaning && !one.isOpen);
      if (meaning === this.lead && lead && !value) this.#put(lead.text, lead.start, lead.end);
      else if (meaning === 'sample' && file) this.#cells.put(file.start, file.end);
      else if (meaning === 'comment' && rest.length + open.length > 0) this.#addRest(rest, open);
      else if (value) this.#put(value.text, value.start, value.end);
      else this.#cells.put(start, start);
    }
  }

  /** An amount that may go either way is never taken on a guess. */
  #noteOpen({ start, end }: PlacedValue): void {
    const said = this.text.slice(start, end).slice(0, 60);
    this.#notes.push({
      start,
      end,
      text: `"${said}" has no sign, and no known word says which way it goes: nothing of it is used. Write it with + or -.`,
    });
  }

  /** What is not understood; where it has a number it may be a value, and is told of. */
  #addRest(rest: readonly Stretch[], open: readonly Stretch[]): void {
    const texts = rest.map(({ start, end }) => this.text.slice(start, end));
    const all = [...rest, ...open].sort((one, other) => one.start - other.start);
    const said = all.map(({ start, end }) => this.text.slice(start, end)).join(', ');
    this.#put(said, all[0].start, all[all.length - 1].end);
    for (const [at, said] of texts.entries())
      if (/\d/.test(said))
        this.#notes.push({
          ...rest[at],
          text: `"${said.slice(0, 60)}" is not understood, and nothing of it is used.`,
        });
  }

  #put(written: string, start: number, end: number): void {
    const cell = this.#cells.put(start, Math.max(start + 1, end));
    if (this.text.slice(start, end) !== written) this.#cells.rewritten.set(cell, written);
  }

  #endRow({ start, end }: Stretch): void {
    this.#cells.endRow();
    this.#spans.push({ start, end });
  }
}
