import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { nameWithoutEnding } from '../../model/paths';
import { counted } from '../../model/wording/counted';
import { groupNames } from '../../trade/names/groupNames';
import { RangeTexts } from '../rangeText';

/** A header of the document with those inside it. */
export interface HeaderSymbol {
  name: string;
  detail: string;
  kind: HeaderKind;
  /** The header with its parameters and all headers inside it. */
  start: number;
  end: number;
  /** The tag of the header. */
  tagStart: number;
  tagEnd: number;
  children: HeaderSymbol[];
}

const labels: Readonly<Partial<Record<HeaderKind, number>>> = {
  [HeaderKind.region]: Parameter.region_label,
  [HeaderKind.group]: Parameter.group_label,
  [HeaderKind.master]: Parameter.master_label,
  [HeaderKind.global]: Parameter.global_label,
};

/** Headers that an outline lists; an editor takes very long to show more. */
export const mostListed = 20_000;

/**
 * The headers that stand in the document itself, each with those that inherit from it inside. Where there are more than
 * `most`, the first of them, and one symbol that says how many are left out.
 */
export function headerSymbols(
  instrument: Instrument,
  most: number = Number.POSITIVE_INFINITY,
): HeaderSymbol[] {
  const count = Math.min(instrument.headers.count, most);
  const symbols: (HeaderSymbol | undefined)[] = new Array(instrument.headers.count);
  for (let header = 0; header < count; header++) {
    const { source, start, end } = instrument.bodySpan(header);
    if (source !== 0) continue;
    const symbol: HeaderSymbol = {
      name: symbolName(instrument, header),
      detail: '',
      kind: instrument.kind(header),
      start,
      end,
      tagStart: start,
      tagEnd: instrument.headerSpan(header).end,
      children: [],
    };
    symbols[header] = symbol;
    const parent = instrument.parent(header);
    const outer = parent < 0 ? undefined : symbols[parent];
    outer?.children.push(symbol);
  }
  const ranges = new RangeTexts(instrument);
  for (let header = count - 1; header >= 0; header--) {
    const symbol = symbols[header];
    if (!symbol) continue;
    const last = symbol.children[symbol.children.length - 1];
    if (last && last.end > symbol.end) symbol.end = last.end;
    symbol.detail = detailOf(instrument, header, symbol, ranges);
  }
  const nested = nestByText(symbols.filter((symbol) => symbol !== undefined));
  const left = count < instrument.headers.count ? leftOut(instrument, count) : undefined;
  return left ? [...nested, left] : nested;
}

/** The symbol that stands for all headers from one on. */
function leftOut(instrument: Instrument, first: number): HeaderSymbol | undefined {
  let at = first;
  while (at < instrument.headers.count && instrument.bodySpan(at).source !== 0) at++;
  if (at === instrument.headers.count) return undefined;
  const { start, end } = instrument.headerSpan(at);
  const name = `${counted(instrument.headers.count - first, 'more header is', 'more headers are')} not listed`;
  const kind = instrument.kind(at);
  return { name, detail: '', kind, start, end, tagStart: start, tagEnd: end, children: [] };
}

/**
 * Puts a header that stands in the midst of another's text inside that one although it does not inherit from it, such
 * as a `<control>` between the regions of a group, so that symbols side by side do not overlap. `symbols` are all, in the
 * order of the text; those that inherit from another lie in its stretch already.
 */
function nestByText(symbols: readonly HeaderSymbol[]): HeaderSymbol[] {
  const outermost: HeaderSymbol[] = [];
  /** Those around the place that was come to, from the outside in. */
  const open: HeaderSymbol[] = [];
  for (const symbol of symbols) {
    symbol.children = [];
    while (open.length > 0 && symbol.start >= (open[open.length - 1] as HeaderSymbol).end) open.pop();
    for (let at = open.length - 1; at >= 0 && (open[at] as HeaderSymbol).end < symbol.end; at--)
      (open[at] as HeaderSymbol).end = symbol.end;
    (open[open.length - 1]?.children ?? outermost).push(symbol);
    open.push(symbol);
  }
  return outermost;
}

function symbolName(instrument: Instrument, header: number): string {
  const kind = instrument.kind(header);
  const written = instrument.headerName(header) || 'before any header';
  const label = labels[kind];
  const labelled = label === undefined ? -1 : instrument.own(header, label);
  if (labelled >= 0) {
    const text = instrument.valueText(labelled).trim();
    if (text !== '') return text;
  }
  if (kind === HeaderKind.group) return groupNames(instrument).nameOf(header) ?? written;
  if (kind !== HeaderKind.region) return written;
  const sample = instrument.sampleParameter[header];
  return sample < 0 ? written : nameWithoutEnding(instrument.valueText(sample)) || written;
}

function detailOf(instrument: Instrument, header: number, symbol: HeaderSymbol, ranges: RangeTexts): string {
  if (symbol.kind === HeaderKind.region) return ranges.of(header);
  if (symbol.kind > HeaderKind.region || symbol.kind === HeaderKind.control) return '';
  const { length } = symbol.children;
  const inner = symbol.children.every(({ kind }) => kind === HeaderKind.region) ? 'region' : 'part';
  const named = symbol.name === instrument.headerName(header) ? '' : `${instrument.headerName(header)}, `;
  return length === 0 ? named.replace(/, $/, '') : `${named}${counted(length, inner)}`;
}
