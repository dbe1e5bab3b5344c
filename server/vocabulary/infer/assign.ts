import type { Steps } from '../../model/steps';
import type { LayerEnds } from '../../trade/layerLimits';
import { fittingTo, meaningsFor, withAudio } from './columnMeanings';
import type { RegionElement } from './elements/regionElement';
import { withLimitedLayers } from './layers/limitedLayers';
import type { ListedLayers } from './layers/listedLayers';
import { withNumberedLayers } from './layers/numberedLayers';
import { withSharedDynamics } from './layers/sharedLayers';
import type { Proposal, SharedLayers } from './proposal';
import { proposalsByContents, proposalsByToldValues, withListedLayers, withoutCodes } from './proposals';
import { withKeysAroundOwnRoots, withKeysOfPitches, withVelocitiesInKeys } from './ranges/bareRanges';
import { withBareStarts } from './ranges/bareStarts';
import { keyRangesOf } from './ranges/keyRanges';
import { rangesOf } from './ranges/rangeText';
import { withSharedKeys } from './ranges/sharedKeys';
import { factorMeanings } from './stated/factorAlone';
import type { ToldPlace } from './stated/toldPlaces';
import { withoutAsides } from './values/asidePlaces';
import type { Column } from './values/column';
import type { ColumnFacts } from './values/columnFacts';
import { columnFactsOf, textsOf } from './values/columnFacts';
import { positionTargets } from './values/plausible';
import type { Rows } from './values/rows';
import type { InferredTarget } from './words/meaningRules';
import type { Meaning, NameUnit } from './words/meanings';
import { nameWords } from './words/nameWords';
import { conceptsOf } from './words/tradeWords';

/** A place and one parameter that it holds. */
export interface Assigned {
  column: Column;
  /** The parameter of the open SFZ format, or a target that the values make one of. */
  target: InferredTarget;
  /** 0..1 */
  weight: number;
  unit: NameUnit | undefined;
  part: 1 | 2 | undefined;
  between: string | undefined;
  /** What stands there, or in this part of it, by row. */
  texts: readonly (string | undefined)[];
  facts: ColumnFacts;
  /** Other targets that the name and the values allow. */
  others: readonly InferredTarget[];
  /** Why, where the values say more than the name. */
  evidence: string | undefined;
  /** How many times its numbers are as great as those in the parameter's own unit, where no form says so. */
  times?: number;
  /** What the document says of its scale. */
  stated?: { text: string; range: { low: number; high: number } | undefined };
  /** For a high end that is written as how many there are: the low end that they count from; for ends by their distance, the root key. */
  countedFrom?: 'lokey' | 'lovel' | 'pitch_keycenter';
  /** For keys that are counted from one: the number of that key. */
  base?: number;
  /** Whether a tuning is how far samples are off pitch. */
  isMeasured?: boolean;
  /** The velocities that its texts stand for, where a list gives them. */
  layers?: ReadonlyMap<string, LayerEnds>;
  /** The velocities that its texts stand for, where they are shared out among them. */
  shared?: SharedLayers;
  /** What the document says that its values stand for, by the bare value. */
  words?: ReadonlyMap<string, string>;
}

/** Targets that hold two parameters in one text. */
const rangeParts: Readonly<Record<InferredTarget, readonly [InferredTarget, InferredTarget]>> = {
  key_range: ['lokey', 'hikey'],
  velocity_range: ['lovel', 'hivel'],
  loop_range: ['loop_start', 'loop_end'],
  loop_span: ['loop_start', 'loop_length'],
  loop: ['loop_start', 'loop_end'],
  sample_range: ['offset', 'end'],
  rand_range: ['lorand', 'hirand'],
  seq: ['seq_position', 'seq_length'],
  xfin_velocity_range: ['xfin_lovel', 'xfin_hivel'],
  xfout_velocity_range: ['xfout_lovel', 'xfout_hivel'],
  xfin_key_range: ['xfin_lokey', 'xfin_hikey'],
  xfout_key_range: ['xfout_lokey', 'xfout_hikey'],
};
/** Targets that say the same thing, so that an element has one of them. */
const same: Readonly<Record<InferredTarget, string>> = {
  loop_length: 'loop_end',
  sample_length: 'end',
  attenuation: 'volume',
  one_shot: 'loop',
  release_switch: 'trigger',
  reverse: 'direction',
  seq: 'seq_position',
  pitch_follow: 'pitch_keytrack',
  pitch_fixed: 'pitch_keytrack',
};

/** Places after which a step ends. */
const placesInStep = 20;

const path: Meaning = { target: 'sample', weight: 0.85, unit: undefined };

/** Finds for each place what it holds, so that no element says a thing twice. A step for some places. */
export function* assignColumns(
  rows: Rows,
  { chain, pathAt }: RegionElement,
  told: ReadonlyMap<Column, ToldPlace> = new Map(),
  layers: ReadonlyMap<Column, ListedLayers> = new Map(),
  prose: readonly string[] = [],
): Steps<Assigned[]> {
  const proposals: Proposal[] = [];
  // In a text without an outermost element several stand there.
  const areSeveral = rows.columns.some(
    ({ level, cells }) =>
      level === 0 && new Set(cells.flatMap((cell) => (cell ? [cell.start] : []))).size > 1,
  );
  const isOutermost = ({ level }: Column) => level === 0 && !areSeveral;
  for (const [order, column] of rows.columns.entries()) {
    if (order % placesInStep === placesInStep - 1) yield order / rows.columns.length;
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    // What explains how values are to be read is none.
    if (facts.filled === 0 || (isOutermost(column) && texts.some((text) => text?.includes('=')))) continue;
    const isReference = rows.columns.some((one) => one.listed && isNamedAfter(column, one));
    const level = column.listed ? nameWords(column.listed.element) : levelWords(chain, column.level);
    const isPath = column.at === pathAt && column.level === chain.length - 1 && !column.listed;
    for (const meaning of isPath
      ? [path]
      : withAudio(
          withTold(meaningsFor(column, level, isOutermost(column)), told.get(column), column),
          facts,
        )) {
      // A place that was found by what it leads to may hold numbers.
      // Groups have names where their regions are.
      const isNamedGroup = /^(?:choke|off_by)$/.test(meaning.target) && facts.numeric === 0;
      if (isNamedGroup && isOutermost(column)) continue;
      if (isReference && positionTargets.has(meaning.target)) continue;
      for (const fitting of isPath ? [meaning] : fittingTo(meaning, facts, texts)) {
        proposals.push({ column, meaning: fitting, facts, texts, order });
      }
    }
  }
  const region = chain.length - 1;
  proposals.push(...proposalsByContents(rows, region, proposals), ...proposalsByToldValues(rows, told));
  const proposed = withoutAsides(proposals, region);
  tellTurnsFromPositions(proposed, region);
  const layered = withLayers(rows, chain, withListedLayers(rows, layers, withoutCodes(proposed)), prose);
  const isLetter = nameWords(chain[region]).join('').length === 1;
  return assignedBy(rows, region, pathAt, withSharedKeys(rows, layered), isLetter);
}

/** Whether a place refers to an entry of a list whose elements have its name. */
function isNamedAfter({ level, at, own, listed }: Column, entry: Column): boolean {
  const element = nameWords(entry.listed?.element ?? '').join(' ');
  return !listed && level === entry.level && at === entry.at && own.join(' ') === element;
}

/** What places tell of layers of velocities by the numbers of those, by one end of each or by names. */
function withLayers(
  rows: Rows,
  chain: readonly string[],
  proposals: readonly Proposal[],
  prose: readonly string[],
): Proposal[] {
  const numbered = withNumberedLayers(rows, chain, proposals, prose);
  return withSharedDynamics(rows, withLimitedLayers(rows, numbered));
}

/** Gives each place the likeliest of what is proposed for it, so that no element says a thing twice. */
function assignedBy(
  rows: Rows,
  region: number,
  pathAt: string | undefined,
  proposals: Proposal[],
  isLetter: boolean,
): Assigned[] {
  proposals.sort((one, other) => rankOf(other) - rankOf(one) || one.order - other.order);
  const taken = new Set<string>();
  const done = new Map<Column, Assigned[]>();
  const hasFiles =
    pathAt !== undefined || proposals.some(({ column, facts }) => column.level === region && facts.files > 0);
  const hasAudio = pathAt === undefined && proposals.some((one) => namesAudio(one, region));
  for (const proposal of proposals) {
    const { column, meaning } = proposal;
    if (done.has(column) || (hasFiles && isFolder(proposal, region)) || isOtherName(proposal, region))
      continue;
    if (hasAudio && meaning.target === 'sample' && proposal.facts.files === 0) continue;
    const assigned = assignedOf(proposal, proposals);
    const listed = column.listed ? 'listed ' : '';
    const ids = assigned.map(({ target }) => `${column.level} ${listed}${same[target] ?? target}`);
    const isTaken = ids.some((id) => taken.has(id)) && !isElsewhere(column, assigned, done);
    if (isTaken || clashes(meaning.target, column.level, taken)) continue;
    for (const id of ids) taken.add(id);
    done.set(column, assigned);
  }
  for (const one of numbersOfGroups(rows, done, proposals)) done.set(one.column, [one]);
  const all = withBareStarts(besideRanges(rows.columns.flatMap((column) => done.get(column) ?? [])));
  return withKeysOfPitches(withVelocitiesInKeys(withKeysAroundOwnRoots(all, isLetter)));
}

/** What the name of an element tells of its bare attributes; one around regions is no loop, though it may be a cycle of them. */
function levelWords(chain: readonly string[], level: number): string[] {
  const words = nameWords(chain[level]);
  if (level === chain.length - 1) return words;
  return words.filter((word) => !conceptsOf(word)?.concepts.includes('loop'));
}

/** Whether a place says the same as others, of other regions than these: some loops in seconds, some in frames. */
function isElsewhere(
  column: Column,
  assigned: readonly Assigned[],
  done: ReadonlyMap<Column, readonly Assigned[]>,
): boolean {
  const [{ target, part }] = assigned;
  if (part !== undefined || (!positionTargets.has(target) && column.unit === undefined)) return false;
  return [...done].every(
    ([other, all]) =>
      other.level !== column.level ||
      !all.some((one) => one.target === target) ||
      other.cells.every((cell, row) => cell === undefined || column.cells[row] === undefined),
  );
}

/** The name of something that stands in an element around regions is not that element's. */
function isOtherName({ column, meaning }: Proposal, region: number): boolean {
  if (meaning.target !== 'label' || column.level >= region) return false;
  return column.around.some((words) =>
    words.some(
      (word) => !['name', 'weak', 'ignored'].some((one) => conceptsOf(word)?.concepts.includes(one)),
    ),
  );
}

/** A number of a round robin on an element around regions that have positions says how many there are. */
function tellTurnsFromPositions(proposals: Proposal[], region: number): void {
  const isTurn = ({ meaning }: Proposal) => meaning.target === 'seq' || meaning.target === 'seq_position';
  if (!proposals.some((one) => one.column.level === region && isTurn(one))) return;
  for (const one of proposals) {
    if (one.column.level < region && one.meaning.target === 'seq')
      one.meaning = { ...one.meaning, target: 'seq_length' };
  }
}

/** A place around regions that name files themselves, and that names none, is a folder. */
function isFolder({ column, meaning, facts }: Proposal, region: number): boolean {
  return meaning.target === 'sample' && column.level < region && facts.files === 0;
}

/** Whether a place of regions names audio files by their endings, so that one without endings names something else. */
function namesAudio({ column, meaning, facts }: Proposal, region: number): boolean {
  return column.level === region && meaning.target === 'sample' && facts.files * 10 >= facts.filled * 6;
}

/** What the values say goes before what a single letter says. */
function rankOf({ meaning, evidence }: Proposal): number {
  return evidence === undefined ? meaning.weight : Math.max(0.81, meaning.weight);
}

/** Where groups are silenced by number, a number of the same element that counts so is the group's, if its name says nothing else. */
function numbersOfGroups(
  rows: Rows,
  done: ReadonlyMap<Column, readonly Assigned[]>,
  proposals: readonly Proposal[],
): Assigned[] {
  const all = [...done.values()].flat();
  const by = all.find(({ target }) => target === 'off_by');
  if (!by || all.some(({ target }) => target === 'group')) return [];
  const named = [...by.facts.tally.keys()].filter((text) => text.trim() !== '0');
  const evidence = 'It holds the numbers that other groups are silenced by.';
  for (const column of rows.columns) {
    if (done.has(column) || column.level !== by.column.level || column.around.length > 0) continue;
    const isNumber = column.own.every((word) => groupNumberWords.has(word));
    if (!isNumber && proposals.some((one) => one.column === column)) continue;
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    if (facts.whole < facts.filled || named.filter((text) => facts.tally.has(text)).length * 2 < named.length)
      continue;
    if (!isNumber && (facts.isConstant || !named.some((text) => facts.tally.has(text)))) continue;
    const weight = isNumber ? 0.8 : 0.72;
    return [{ ...by, column, texts, facts, target: 'group', weight, evidence, others: [] }];
  }
  return [];
}

const groupNumberWords: ReadonlySet<string> = new Set(
  'number no nr num id index idx n nummer numero numéro numero'.split(' '),
);

/**
 * A single key beside a key range is the root key. So is one inside the range of an outer element where all regions in it have
 * the same.
 */
function besideRanges(all: readonly Assigned[]): Assigned[] {
  const at = (level: number, ...targets: InferredTarget[]) =>
    all.filter(({ column, target }) => column.level === level && targets.includes(target));
  return all.flatMap((one) => {
    if (one.target !== 'key') return [one];
    const { level } = one.column;
    if (at(level, 'lokey', 'hikey').length > 0) {
      return at(level, 'pitch_keycenter').length > 0 ? [] : [{ ...one, target: 'pitch_keycenter' }];
    }
    const outer = all.find(({ column, target }) => column.level < level && target === 'lokey');
    return outer && isOneWithin(one, outer) ? [{ ...one, target: 'pitch_keycenter', weight: 0.7 }] : [one];
  });
}

function isOneWithin({ texts }: Assigned, { column }: Assigned): boolean {
  const keys = new Map<number, string>();
  for (const [row, text] of texts.entries()) {
    const place = column.cells[row]?.start;
    if (text === undefined || place === undefined) return false;
    if ((keys.get(place) ?? text) !== text) return false;
    keys.set(place, text);
  }
  return keys.size < texts.length;
}

/** A key range and a single key in one element: the single one is the root key. */
function clashes(target: InferredTarget, level: number, taken: ReadonlySet<string>): boolean {
  return target === 'key' && (taken.has(`${level} lokey`) || taken.has(`${level} hikey`));
}

/** What the document explains of a place goes before what its name could mean. */
function withTold(
  meanings: readonly Meaning[],
  told: ToldPlace | undefined,
  { own }: Column,
): readonly Meaning[] {
  const target = told?.meaning;
  // A stroke that is a factor is none of a layer: `strength` may be a level.
  if (told && target === undefined && meanings.every((one) => one.target === 'velocity_range'))
    return [...meanings, ...factorMeanings(told, own)];
  // A share of the full level may be that of an envelope.
  const isOfEnvelope = target === 'volume' && /^(?:amp|fil|pitch)eg_/.test(meanings[0]?.target ?? '');
  if (target === undefined || isOfEnvelope || (meanings[0]?.target === target && meanings[0].weight > 0.9))
    return meanings;
  const others = meanings.filter((one) => one.target !== target);
  return [
    { target, weight: 0.93, unit: told?.unit },
    ...others.map((one) => ({ ...one, weight: one.weight * 0.7 })),
  ];
}

function rangePartsOf(target: InferredTarget): readonly [InferredTarget, InferredTarget] | undefined {
  const controller = /^cc_range(\d+)$/.exec(target)?.[1];
  return controller === undefined ? rangeParts[target] : [`locc${controller}`, `hicc${controller}`];
}

function assignedOf(
  { column, meaning, facts, texts, evidence, words, layers, shared }: Proposal,
  proposals: readonly Proposal[],
): Assigned[] {
  const others = proposals
    .filter((one) => one.column === column && one.meaning.target !== meaning.target)
    .map((one) => one.meaning.target);
  const base = {
    column,
    weight: meaning.weight,
    unit: meaning.unit,
    others,
    evidence,
    ...(meaning.range && { stated: { text: column.own.join(' '), range: meaning.range } }),
    ...(words && { words }),
    ...(layers && { layers }),
    ...(shared && { shared }),
  };
  const parts = rangePartsOf(meaning.target);
  const ranges = parts && (meaning.target === 'key_range' ? keyRangesOf(texts) : rangesOf(texts));
  if (parts && ranges) {
    return [ranges.first, ranges.second].map((side, at) => ({
      ...base,
      target: parts[at as 0 | 1],
      part: at === 0 ? 1 : 2,
      between: ranges.between,
      texts: side,
      facts: columnFactsOf(side),
    }));
  }
  const target = meaning.target === 'seq' ? 'seq_position' : meaning.target;
  return [{ ...base, target, part: undefined, between: undefined, texts, facts }];
}
