import { unchangedAt } from '../../../trade/headings/statedScale';
import { isSilentAtNone } from '../../../trade/languages/silenceWords';
import { bareWord } from '../../../trade/languages/spelling';
import type { ColumnMeaning, Unit } from '../../../trade/meaning';
import { loopModeInWords } from '../../../trade/readings/loopPhrases';
import { startInWords } from '../../../trade/readings/triggerPhrases';
import { panEndsIn } from '../../../trade/statements/amounts/statedSides';
import { scaleOf } from '../../../trade/statements/statedScales';
import type { Column } from '../values/column';
import { keyTargets } from '../values/plausible';
import type { InferredTarget } from '../words/meaningRules';
import type { NameUnit } from '../words/meanings';
import { isLevelOfBand, meaningsOf } from '../words/meanings';
import { meaningIn } from './explainedMeaning';
import type { ExplainedName } from './explainedNames';
import { explainedNames } from './explainedNames';
import { toldLoopPoints } from './loopNames';
import { isLoopSpan, saysStartAndLength } from './loopSpans';
import { isMeasured } from './measured';
import { asAttenuation, ofLoop } from './refinedMeaning';
import { speaksOfLoop, toldPosition } from './toldPositions';
import { toldValues } from './toldValues';

/** What the prose of a document says of a place by its own name. */
export interface ToldPlace {
  /** The sentence that says so. */
  text: string;
  /** What it holds, where that is explained. */
  meaning: InferredTarget | undefined;
  unit: NameUnit | undefined;
  range: { low: number; high: number } | undefined;
  /** Whether it is how far samples are off pitch, and no tuning that makes up for it. */
  isMeasured: boolean;
  /** What values stand for, by the bare value. */
  values: ReadonlyMap<string, string>;
}

const mostTexts = 200;
const longest = 2000;
/** Columns whose scales are stated in the same words, by what a place holds. */
const scaled: Readonly<Partial<Record<InferredTarget, readonly ColumnMeaning[]>>> = {
  volume: ['volume'],
  attenuation: ['volume'],
  tune: ['tune'],
  transpose: ['tune'],
  pan: ['pan'],
  lovel: ['lovel'],
  hivel: ['lovel'],
  velocity_range: ['lovel'],
  offset: ['loop'],
  end: ['loop'],
  loop_start: ['loop'],
  loop_end: ['loop'],
  loop_length: ['loop'],
};
/** The words of a name that an explanation starts with lie among so many. */
const mostLead = 8;
/** Words for the amplitude, of which levels are shares. */
const amplitude = /\bampl?itud\p{L}*|\bampiezza|\bdb\b|d[eé]cib\p{L}+|dezibel/iu;

/** What the texts of a document say of its places by their names; a place that they do not speak of is left out. */
export function toldPlaces(
  texts: readonly string[],
  columns: readonly Column[],
): ReadonlyMap<Column, ToldPlace> {
  // A word alone explains nothing.
  const prose = texts
    .filter((text) => /\S\s+\S/.test(text.trim()))
    .slice(0, mostTexts)
    .map((text) => text.slice(0, longest));
  const told = new Map<Column, ToldPlace>();
  if (prose.length === 0) return told;
  const clauses = clausesByLead(prose);
  const explained = explainedNames(prose, columns);
  const explaining = prose.filter((text) => /[=:\u2192]|->/u.test(text)).join('\n');
  const known = new Map<string, ToldPlace | undefined>();
  const hasLoops = columns.some(speaksOfLoop);
  const spans = prose.flatMap(clausesOf).filter(({ text }) => saysStartAndLength(text));
  const loopPoints = toldLoopPoints(prose.flatMap(clausesOf), columns);
  for (const column of columns) {
    const { own } = column;
    const id = own.join(' ');
    if (id.length < 2 || isLevelOfBand(own)) continue;
    if (!known.has(id)) {
      const starting = clauses.get(leadOf(own[0])) ?? [];
      known.set(id, asAttenuation(own, toldOf(column, starting, explaining, explained.get(id), hasLoops)));
    }
    const found =
      loopSpanOf(column, spans) ?? asLoopPoint(loopPoints.get(column), ofLoop(column, known.get(id)));
    if (found) told.set(column, found);
  }
  return withoutContradicted(told);
}

/** Without ranges that values of a place lie outside of, for no place that they are told of. */
function withoutContradicted(told: ReadonlyMap<Column, ToldPlace>): ReadonlyMap<Column, ToldPlace> {
  const contradicted = new Set<ToldPlace>();
  for (const [column, one] of told) if (one.range && liesOutside(column, one.range)) contradicted.add(one);
  if (contradicted.size === 0) return told;
  return new Map(
    Array.from(told, ([column, one]) => [column, contradicted.has(one) ? { ...one, range: undefined } : one]),
  );
}

/** Whether numbers of a place, or of ranges in it, lie outside of a range. */
function liesOutside({ cells }: Column, { low, high }: { low: number; high: number }): boolean {
  return cells.some((cell) => {
    const found = numberOrRange.exec(cell?.text ?? '');
    const numbers = found?.slice(1).flatMap((text) => (text === undefined ? [] : [Number(text)])) ?? [];
    return numbers.some((number) => number < low || number > high);
  });
}

const numberOrRange = /^\s*(-?\d+(?:\.\d+)?)(?:\s*(?:-|\u2013|\.{2,3})\s*(-?\d+(?:\.\d+)?))?\s*$/u;

/** What a sentence says of a place of loops whose two numbers are a start and a length. */
function loopSpanOf(column: Column, clauses: readonly Clause[]): ToldPlace | undefined {
  const said = clauses.find(({ text, words }) => startsWith(words, column.own) && isLoopSpan(column, text));
  if (!said) return undefined;
  const { text } = said;
  return {
    text,
    meaning: 'loop_span',
    unit: undefined,
    range: undefined,
    isMeasured: false,
    values: new Map(),
  };
}

/** What is told of a place with what a sentence makes it of a loop, where nothing explains it as something else. */
function asLoopPoint(
  point: { text: string; meaning: InferredTarget } | undefined,
  told: ToldPlace | undefined,
): ToldPlace | undefined {
  if (!point || told?.meaning) return told;
  const unknown = { unit: undefined, range: undefined, isMeasured: false, values: new Map() };
  return { ...unknown, ...told, ...point };
}

/** Clauses by the beginnings of the words among which a name is looked for. */
function clausesByLead(prose: readonly string[]): ReadonlyMap<string, readonly Clause[]> {
  const found = new Map<string, Clause[]>();
  for (const clause of prose.flatMap(clausesOf))
    for (const lead of new Set(clause.words.slice(0, mostLead).map(leadOf))) {
      const list = found.get(lead);
      if (list) list.push(clause);
      else found.set(lead, [clause]);
    }
  return found;
}

/** So much of a word is the same in its plural. */
function leadOf(word: string): string {
  return word.slice(0, 3);
}

interface Clause {
  text: string;
  words: readonly string[];
}

function clausesOf(text: string): Clause[] {
  return text
    .split(/(?:(?<!\.)\.|[!?;])(?=\s|$)|[\n\r]/u)
    .map((clause) => ({ text: clause.trim(), words: (clause.match(/[\p{L}\p{N}]+/gu) ?? []).map(bareWord) }))
    .filter(({ words }) => words.length > 1);
}

function toldOf(
  { own, cells }: Column,
  clauses: readonly Clause[],
  explaining: string,
  explained: ExplainedName | undefined,
  hasLoops: boolean,
): ToldPlace | undefined {
  const says = explained?.says;
  const words = new Set(cells.flatMap((cell) => cell?.text.trim() ?? []));
  const values = toldValues(own, says ?? '', explaining, [...words]);
  const meaning = explained && (meaningIn(explained) ?? releaseIn(own, explained.says));
  // What is said of the name alone goes before a sentence that may speak of others as well.
  const ownScale = says === undefined ? undefined : scaleIn(says, meaning, values);
  if (ownScale?.meaning !== undefined) return ownScale;
  for (const { text, words } of clauses) {
    const held = meaning ?? toldPosition(own, text, hasLoops);
    const told = startsWith(words, own) ? scaleIn(text, held, values) : undefined;
    // Keys lie semitones from one another.
    if (!told || (told.meaning === 'tune' && meaning === undefined && isKeyName(own))) continue;
    if (!ownScale) return told;
    if (told.range?.high === ownScale.range?.high) return { ...ownScale, meaning: told.meaning };
  }
  if (ownScale) return ownScale;
  if (meaning === undefined && values.size === 0) return undefined;
  return {
    text: says ?? [...values.values()].join('; '),
    meaning,
    unit: undefined,
    range: undefined,
    isMeasured: isMeasured(says ?? ''),
    values,
  };
}

/** What a sentence about a place says of how its values count; `meaning` is what it is known to hold. */
function scaleIn(
  text: string,
  meaning: InferredTarget | undefined,
  values: ToldPlace['values'],
): ToldPlace | undefined {
  const sides = meaning === undefined || meaning === 'pan' ? panEndsIn(text) : undefined;
  if (sides) return { text, meaning: 'pan', unit: undefined, range: sides, isMeasured: false, values };
  const known = meaning === undefined ? undefined : scaled[meaning];
  const isOfLevel = amplitude.test(text) || (unchangedAt(text) ?? 1) > 1 || isSilentAtNone(text);
  const level = scaleOf(text, ['volume']);
  const scale = known ? scaleOf(text, known) : isOfLevel ? level : (scaleOf(text, ['tune']) ?? level);
  if (!scale) return undefined;
  const { unit, low, high } = scale;
  return {
    text,
    meaning: meaning ?? (isOfLevel ? level && 'volume' : isTuning(unit) ? 'tune' : undefined),
    unit: unit === 'linear' ? 'ratio' : unit,
    range: low === undefined || high === undefined ? undefined : { low, high },
    isMeasured: isMeasured(text),
    values,
  };
}

/** What an explanation such as `it sounds when the key is let go` says of a name that says nothing by itself. */
function releaseIn(own: readonly string[], says: string): InferredTarget | undefined {
  if (meaningsOf(own, [], []).length > 0 || loopModeInWords(says) !== undefined) return undefined;
  return startInWords(says) === 'release' ? 'release_switch' : undefined;
}

function isKeyName(own: readonly string[]): boolean {
  const target = meaningsOf(own, [], [])[0]?.target;
  return target !== undefined && keyTargets.has(target);
}

function isTuning(unit: Unit | undefined): boolean {
  return unit === 'cents' || unit === 'semitones';
}

/** Whether a sentence starts with the words of a name, the last one perhaps in its plural. */
function startsWith(words: readonly string[], own: readonly string[]): boolean {
  for (let from = 0; from < Math.min(words.length, mostLead); from++) {
    const fits = own.every((word, at) => {
      const other = words[from + at] ?? '';
      return other === word || (word.length > 3 && other.startsWith(word) && other.length <= word.length + 2);
    });
    if (fits) return true;
  }
  return false;
}
