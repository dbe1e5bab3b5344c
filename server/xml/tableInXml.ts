import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';

/** A stretch of text that one element holds. */
interface Stretch {
  /** The element's name, and which of all elements it stands in. */
  name: string;
  around: number;
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
/** So many ranges are told of. */
const mostAround = 12;
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
    const holding = look.stretches.filter(({ start, end }) => audioName.test(text.slice(start, end)));
    return table === undefined ? undefined : { table, commented: [], around: rangesAround(holding) };
  }
  const head = headFor(text, look.stretches, rows);
  const kept = head ? [head, ...rows.stretches] : rows.stretches;
  let masked = '';
  let at = 0;
  for (const { start, end } of kept) {
    masked += blank(text.slice(at, start));
    masked += text.slice(start, end);
    at = end;
  }
  masked += blank(text.slice(at));
  const commented = rows.stretches.flatMap(({ start, end }) => commentsIn(text, start, end));
  for (const { start, end } of commented)
    masked = masked.slice(0, start) + blank(masked.slice(start, end)) + masked.slice(end);
  return { table: masked, commented, around: rangesAround(rows.stretches) };
}

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
const audioName = /\.(?:wav|wave|aiff?|flac|ogg|mp3|opus)\b/i;

/** Lines that each name a file, their parts set apart by tabs; `undefined` where they are not alike. */
function partedLines(text: string, stretches: readonly Stretch[]): string | undefined {
  const lines = stretches.flatMap(({ start, end }) => {
    const found: { start: number; end: number }[] = [];
    for (let from = start; from < end; ) {
      const next = text.indexOf('\n', from);
      const to = next < 0 || next > end ? end : next;
      if (audioName.test(text.slice(from, to))) found.push({ start: from, end: to });
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
    masked += blank(text.slice(at, start));
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
      .map((part) => (audioName.test(part) ? '' : (/^\s*(\p{L}{3,14})\s+\S/u.exec(part)?.[1] ?? ''))),
  );
  return new Set(
    (parts[0] ?? []).filter((word, at) => word !== '' && parts.every((part) => part[at] === word)),
  );
}

/** A line with such words as blanks. */
function withoutLabels(line: string, labels: ReadonlySet<string>): string {
  return line.replace(/(?<=[([@=:,;|]\s*)\p{L}{3,14}(?=\s)/gu, (word, at: number) => {
    const part = line.slice(at).split(partSign)[0] ?? '';
    return labels.has(word) && !audioName.test(part) ? ' '.repeat(word.length) : word;
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
    const id = `${one.name} ${one.around}`;
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

/** A text as blanks, its lines kept. */
function blank(text: string): string {
  return text.replace(/[^\r\n]/g, ' ');
}

class TextLook implements XmlHandler {
  readonly stretches: Stretch[] = [];
  readonly #text: string;
  readonly #open: { name: string; number: number; ranges: Span[] }[] = [];
  #elements = 0;
  #next: { name: string; number: number; ranges: Span[] } = { name: '', number: 0, ranges: [] };

  constructor(text: string) {
    this.#text = text;
  }

  open(_tagStart: number, nameStart: number, nameEnd: number): void {
    this.#next = { name: this.#text.slice(nameStart, nameEnd), number: this.#elements++, ranges: [] };
  }

  attribute(_: number, start: number, _nameEnd: number, valueStart: number, end: number): void {
    if (end - valueStart < 12 && rangeOfNumbers.test(this.#text.slice(valueStart, end)))
      this.#next.ranges.push({ start, end });
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
    const around = this.#open.at(-2)?.number ?? -1;
    if (to > from)
      this.stretches.push({ name: element.name, around, start: from, end: to, ranges: element.ranges });
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}
