import { namesAudioFileIn } from '../model/fileNames';
import { languages } from '../trade/languages/languages';
import { namedStatement, tellsHowToRead } from '../trade/statements/namedStatement';
import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';

/** A stretch of text that one element holds. */
interface Stretch {
  /** The element's name, that of the element around it, and how deep it stands. */
  name: string;
  outer: string;
  depth: number;
  start: number;
  end: number;
  /** The ranges of numbers in the attributes of the element, such as those of velocities. */
  ranges: readonly Span[];
}

interface Span {
  start: number;
  end: number;
}

const separators = ['\t', '|', ';', ','] as const;
const longest = 4_000_000;
const mostStretches = 200_000;
const leastRows = 2;
const leastCells = 3;
const mostHeads = 12;
const longestSetting = 120;
/** So many ranges are told of. */
const mostAround = 12;
/** Attributes that say something of all rows in an element: the folder of the files, the velocities of a layer. */
const settingName = new RegExp(
  `^(?:${languages.flatMap(({ folders }) => folders).join('|')}|vel\\p{L}*|velocity|dynami\\p{L}*|anschl\\p{L}*|aanslag\\p{L}*|anslag\\p{L}*)$`,
  'iu',
);
const rangeOfNumbers = /^\d{1,3}\s*(?:-|–|\.{2,3}|÷)\s*\d{1,3}$/u;
/** So many elements beside each other are looked at. */
const mostRows = 5000;

/**
 * The table that an XML text holds as lines of text: rows in one element or one row in each of several, perhaps with the columns
 * named in another element before them. All else is blank, so that each cell stands where it stood. `undefined` where there is none.
 */
export function tableInXml(text: string): string | undefined {
  return xmlTable(text)?.table;
}

/** A table in XML, what is blank in it: its rows that are commented out, and ranges that stand on the elements around rows. */
export interface XmlTable {
  table: string;
  /** Sentences around the rows, which may say how they are to be read. */
  said: readonly string[];
  commented: readonly Span[];
  around: readonly Span[];
}

/** As {@link tableInXml}, with the rows that are commented out. */
export function xmlTable(text: string): XmlTable | undefined {
  if (text.length > longest || !/^\ufeff?\s*</.test(text.slice(0, 1000))) return undefined;
  const look = new TextLook(text);
  scanXml(text, look);
  const rows = rowsIn(text, look.stretches);
  if (!rows) {
    const table = partedLines(text, look.stretches);
    const holding = look.stretches.filter(({ start, end }) => namesAudioFileIn(text.slice(start, end)));
    return table === undefined
      ? undefined
      : { table, said: [], commented: [], around: rangesAround(holding) };
  }
  const head = headFor(text, look.stretches, rows) ?? headFor(text, look.values, rows);
  const said = [
    ...look.stretches.filter(isProse(text, rows)).map(({ start, end }) => text.slice(start, end).trim()),
    ...shortStatements(text, look, rows),
  ];
  const folders = look.settings.filter(({ start, end }) => !/\d/.test(text.slice(start, end)));
  // Of several folders each is that of some rows only, which a table cannot say.
  const settings = look.settings.filter((one) => folders.length < 2 || !folders.includes(one));
  const isHead = ({ start }: Span) => head !== undefined && start >= head.start && start < head.end;
  const kept = [...settings.filter((one) => !isHead(one)), ...(head ? [head] : []), ...rows.stretches].sort(
    (one, other) => one.start - other.start,
  );
  let masked = '';
  let at = 0;
  for (const { start, end } of kept) {
    if (start < at) continue;
    masked += between(text.slice(at, start), text.slice(start, end));
    const isSetting = settings.some((one) => one.start === start);
    masked += isSetting ? settingLine(text.slice(start, end)) : text.slice(start, end);
    at = end;
  }
  masked += blank(text.slice(at));
  const commented = rows.stretches.flatMap(({ start, end }) => commentsIn(text, start, end));
  for (const { start, end } of commented)
    masked = masked.slice(0, start) + blank(masked.slice(start, end)) + masked.slice(end);
  const read = new Set(settings.map(({ start }) => start));
  return {
    table: masked,
    said,
    commented,
    around: [
      ...rangesAround(rows.stretches).filter(({ start }) => !read.has(start)),
      ...(folders.length > 1 ? folders.map(({ start, end }) => ({ start, end: end - 1 })) : []),
    ],
  };
}

/** An attribute as a line that says something of the rows below: `folder="strings"` as `folder: strings/`. */
function settingLine(attribute: string): string {
  const open = attribute.replace(/=\s*["']/, (sign) => `:${' '.repeat(sign.length - 1)}`);
  return /\d/.test(attribute) || /[/\\].$/.test(attribute)
    ? open.replace(/.$/, ' ')
    : open.replace(/.$/, '/');
}

/** Sentences around the rows, which may say how they are to be read. */
function isProse(text: string, { stretches, separator }: RowsOfText): (one: Stretch) => boolean {
  return (one) => {
    const said = text.slice(one.start, one.end);
    return (
      !stretches.includes(one) &&
      said.trim().split(/\s+/).length >= leastWords &&
      said.length < longestProse &&
      !/[<&]/.test(said) &&
      said.split(separator).length < leastCells
    );
  };
}

/** Attributes and elements around the rows that say in a word how values are read: `middleC="C3"`. */
function shortStatements(text: string, { stretches, named }: TextLook, rows: RowsOfText): string[] {
  const around = stretches.filter((one) => !rows.stretches.includes(one)).slice(0, mostSaid);
  return [...named, ...around]
    .filter(({ start, end }) => end - start < longestSetting)
    .map(({ name, start, end }) => namedStatement(name, text.slice(start, end)))
    .filter(tellsHowToRead);
}

/** So many short texts are looked at. */
const mostSaid = 100;
const leastWords = 4;
const longestProse = 1000;

function rangesAround(stretches: readonly Stretch[]): Span[] {
  return [...new Set(stretches.flatMap(({ ranges }) => ranges))].slice(0, mostAround);
}

/** The lines of a stretch that a sign at their start comments out. */
function commentsIn(text: string, start: number, end: number): { start: number; end: number }[] {
  const found: { start: number; end: number }[] = [];
  for (const line of text.slice(start, end).matchAll(/^[ \t]*(?:#(?![A-Ga-g]?\d)|\/\/|--)[^\r\n]*/gm))
    found.push({ start: start + line.index, end: start + line.index + line[0].length });
  return found;
}

/** What stands between the parts of a line such as `C2-E2 = file @ root`. */
const partSign = /[ \t]*(?:=>|->|\u2192|=|@|[()[\]|;]|[:,](?=\s))[ \t]*/g;

/** Lines that each name a file, their parts set apart by tabs; `undefined` where they are not alike. */
function partedLines(text: string, stretches: readonly Stretch[]): string | undefined {
  const lines = stretches.flatMap(({ start, end }) => {
    const found: { start: number; end: number }[] = [];
    for (let from = start; from < end; ) {
      const next = text.indexOf('\n', from);
      const to = next < 0 || next > end ? end : next;
      if (namesAudioFileIn(text.slice(from, to))) found.push({ start: from, end: to });
      from = to + 1;
    }
    return found;
  });
  const signsOf = (line: string) => [...line.matchAll(partSign)].map(([sign]) => sign.trim()).join(' ');
  const shapes = new Map<string, number>();
  for (const { start, end } of lines) {
    const shape = signsOf(text.slice(start, end).trim());
    shapes.set(shape, (shapes.get(shape) ?? 0) + 1);
  }
  const [most] = [...shapes].sort((one, other) => other[1] - one[1]);
  if (!most || most[0] === '' || most[1] < leastRows || most[1] * 10 < lines.length * 8) return undefined;
  const labels = labelsOf(lines.map(({ start, end }) => text.slice(start, end)));
  let masked = '';
  let at = 0;
  for (const { start, end } of lines) {
    masked += between(text.slice(at, start), text.slice(start, end));
    masked += withoutLabels(text.slice(start, end), labels).replace(
      partSign,
      (sign) => `\t${' '.repeat(sign.length - 1)}`,
    );
    at = end;
  }
  return masked + blank(text.slice(at));
}

/** The word that starts the part at each position in all lines, as `root` in `(root 38)`. */
function labelsOf(lines: readonly string[]): ReadonlySet<string> {
  const parts = lines.map((line) =>
    line
      .split(partSign)
      .map((part) => (namesAudioFileIn(part) ? '' : (/^\s*(\p{L}{3,14})\s+\S/u.exec(part)?.[1] ?? ''))),
  );
  return new Set(
    (parts[0] ?? []).filter((word, at) => word !== '' && parts.every((part) => part[at] === word)),
  );
}

/** A line with such words as blanks. */
function withoutLabels(line: string, labels: ReadonlySet<string>): string {
  return line.replace(/(?<=[([@=:,;|]\s*)\p{L}{3,14}(?=\s)/gu, (word, at: number) => {
    const part = line.slice(at).split(partSign)[0] ?? '';
    return labels.has(word) && !namesAudioFileIn(part) ? ' '.repeat(word.length) : word;
  });
}

interface RowsOfText {
  stretches: readonly Stretch[];
  separator: string;
  cells: number;
}

/** The rows of the first elements that hold a table as text. */
function rowsIn(text: string, stretches: readonly Stretch[]): RowsOfText | undefined {
  const groups = new Map<string, Stretch[]>();
  for (const one of stretches) {
    const id = `${one.name} ${one.depth} ${one.outer}`;
    const group = groups.get(id);
    if (!group) groups.set(id, [one]);
    else if (group.length < mostRows) group.push(one);
  }
  for (const group of groups.values()) {
    const lines = group.flatMap(({ start, end }) => linesOf(text.slice(start, end)));
    if (lines.length < leastRows) continue;
    for (const separator of separators) {
      const counts = lines.map((line) => line.split(separator).length);
      const [most] = [...tally(counts)].sort((one, other) => other[1] - one[1]);
      if (most[0] < leastCells || most[1] * 10 < lines.length * 6 || most[1] < leastRows) continue;
      return { stretches: group, separator, cells: most[0] };
    }
  }
  return undefined;
}

/** The text before the rows that names as many columns as they have cells. */
function headFor(
  text: string,
  stretches: readonly Stretch[],
  { stretches: rows, separator, cells }: RowsOfText,
): Stretch | undefined {
  const [first] = rows;
  const before = stretches.filter(({ end }) => end <= first.start).slice(-mostHeads);
  return before.findLast(({ start, end }) => {
    const lines = linesOf(text.slice(start, end));
    return lines.length === 1 && Math.abs((lines[0]?.split(separator).length ?? 0) - cells) <= 1;
  });
}

function linesOf(text: string): string[] {
  return text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');
}

function tally(counts: readonly number[]): Map<number, number> {
  const found = new Map<number, number>();
  for (const count of counts) found.set(count, (found.get(count) ?? 0) + 1);
  return found;
}

/** What stands between rows as blanks; rows of one line whose elements end between them come to lines of their own. */
function between(text: string, row: string): string {
  const blanks = blank(text);
  const isParted = !text.includes('</') || /[\r\n]/.test(text) || /^[ \t]*[\r\n]/.test(row);
  return isParted ? blanks : `\n${blanks.slice(1)}`;
}

/** A text as blanks, its lines kept. */
function blank(text: string): string {
  return text.replace(/[^\r\n]/g, ' ');
}

class TextLook implements XmlHandler {
  readonly stretches: Stretch[] = [];
  /** Values of attributes, of which one may name the columns. */
  readonly values: Stretch[] = [];
  /** Attributes that say something of the rows in their element, with their names. */
  readonly settings: Span[] = [];
  /** The first attributes, with their names. */
  readonly named: { name: string; start: number; end: number }[] = [];
  readonly #text: string;
  readonly #open: { name: string; ranges: Span[] }[] = [];
  #next: { name: string; ranges: Span[] } = { name: '', ranges: [] };

  constructor(text: string) {
    this.#text = text;
  }

  open(_tagStart: number, nameStart: number, nameEnd: number): void {
    this.#next = { name: this.#text.slice(nameStart, nameEnd), ranges: [] };
  }

  attribute(_: number, start: number, nameEnd: number, valueStart: number, end: number): void {
    if (end - valueStart < 12 && rangeOfNumbers.test(this.#text.slice(valueStart, end)))
      this.#next.ranges.push({ start, end });
    if (this.values.length < mostStretches && end > valueStart)
      this.values.push({ ...this.#next, outer: '', depth: 0, start: valueStart, end });
    if (this.named.length < mostSaid)
      this.named.push({ name: this.#text.slice(start, nameEnd), start: valueStart, end });
    if (settingName.test(this.#text.slice(start, nameEnd)) && end - valueStart < longestSetting)
      this.settings.push({ start, end: end + 1 });
  }

  openEnd(_end: number, empty: boolean): void {
    if (!empty) this.#open.push(this.#next);
  }

  close(): void {
    this.#open.pop();
  }

  characters(start: number, end: number): void {
    const element = this.#open.at(-1);
    if (!element || this.stretches.length >= mostStretches) return;
    const isSection = this.#text.startsWith('<![CDATA[', start);
    const from = isSection ? start + 9 : start;
    const to = isSection && this.#text.startsWith(']]>', end - 3) ? end - 3 : end;
    const outer = this.#open.at(-2)?.name ?? '';
    const ranges = [...element.ranges, ...(this.#open.at(-2)?.ranges ?? [])];
    const depth = this.#open.length;
    if (to > from) this.stretches.push({ name: element.name, outer, depth, start: from, end: to, ranges });
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}
