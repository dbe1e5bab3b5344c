import type { Assigned } from './assign';
import { namedMeaning } from './columnMeanings';
import type { Draft } from './draft';
import type { SampleFiles } from './samples/sampleFiles';
import { combiningWord } from './stated/nesting';
import { standsAside } from './values/asidePlaces';
import type { Column } from './values/column';
import { columnFactsOf, textsOf } from './values/columnFacts';
import { isPlausible, keyTargets, positionTargets, timeTargets, velocityTargets } from './values/plausible';
import type { Rows } from './values/rows';
import { isUnitName } from './values/unitNames';
import { parameterWords } from './words/parameterWords';

const soundTargets =
  'volume attenuation pan tune transpose loop one_shot trigger release_switch seq_position reverse';
const telling: ReadonlySet<string> = new Set([
  ...keyTargets,
  ...velocityTargets,
  ...positionTargets,
  ...timeTargets,
  ...soundTargets.split(' '),
  'key_range',
  'velocity_range',
  'loop_range',
  'loop_span',
]);
const words: Readonly<Record<string, string>> = {
  ...parameterWords,
  key_range: 'a key range',
  velocity_range: 'a velocity range',
  loop_range: 'the range of the loop',
  loop_span: 'the start and the length of the loop',
  loop_length: 'the length of the loop',
  sample_length: 'the length of the sample',
  attenuation: 'the level',
  loop: 'the loop',
  loop_on: 'the loop',
  loop_until: 'the loop mode',
  one_shot: 'the loop mode',
  reverse: 'the direction of playing',
  release_switch: 'what starts the region',
};
/** Words for how values are counted, which set none. */
const scaleWords: ReadonlySet<string> = new Set(
  'range scale scala skala limits ends bereich estremi escala echelle schaal'.split(' '),
);
const surelyNamed = 0.75;
const mostTold = 12;

/** Questions about places that are named like a parameter and are read as none, because of what stands there or elsewhere. */
export function unreadPlaces(
  rows: Rows,
  assigned: readonly Assigned[],
  chain: readonly string[],
  { form, around }: SampleFiles,
): Draft[] {
  const read = new Set(assigned.map(({ column }) => column));
  // What refers to an entry of a list is read by that.
  const referring = new Set(
    [...read, ...around].flatMap(({ level, at, listed }) => (listed ? [`${level} ${at}`] : [])),
  );
  // The velocities of layers that a list gives are read with their names.
  const ofLayers = new Set(
    assigned.flatMap(({ column, layers }) => (layers ? [`${column.level} ${column.at}`] : [])),
  );
  const drafts: Draft[] = [];
  for (const column of rows.columns) {
    if (read.has(column) || drafts.length >= mostTold) continue;
    if (!column.listed && referring.has(`${column.level} ${column.at}`)) continue;
    if (column.listed && ofLayers.has(`${column.level} ${column.at}`)) continue;
    // How values further in go with those around is heard.
    if (column.cells.every((cell) => !cell || combiningWord(cell.text) !== undefined)) continue;
    const files = unreadFiles(column, chain);
    if (files) {
      drafts.push(files);
      continue;
    }
    const unit = unknownUnit(column, read, chain);
    if (unit) {
      drafts.push(unit);
      continue;
    }
    const meaning = namedMeaning(column, chain);
    const signed = meaning ? undefined : unreadSigned(column, chain);
    if (signed) drafts.push(signed);
    if (!meaning || meaning.weight < surelyNamed || !telling.has(meaning.target)) continue;
    const texts = textsOf(column);
    const example = column.cells.find((cell) => cell !== undefined);
    if (!example) continue;
    const facts = columnFactsOf(texts);
    // What counts the regions, names their folder or speaks of the whole in words says no parameter.
    if (facts.isCounting || example.text.replace(/[\\/]+$/, '') === form.folder) continue;
    // `rev` of the whole is its revision.
    if (column.level === 0 && meaning.target === 'reverse') continue;
    if (column.level === 0 && column.own.some((word) => scaleWords.has(word))) continue;
    if (column.level === 0 && (column.around.length > 1 || !/\d/.test(example.text))) continue;
    if (column.level === 0 && /^4[0-7]\d(?:[.,]\d+)?(?:\s*Hz)?$/i.test(example.text)) continue;
    if (/^\d{4}-\d\d(?:-|$)/.test(example.text)) continue;
    const element = chain[column.level];
    const place = column.at.startsWith('@') ? column.at.slice(1) : column.at;
    const what = words[meaning.target] ?? meaning.target;
    const shown = example.text.slice(0, 40);
    const isBeside = column.level < chain.length - 1 && !column.listed && standsAside(column);
    drafts.push({
      id: `${element}/${column.at}`,
      message: `"${place}" of <${element}> is not read, though its name speaks of ${what}.`,
      confidence: 0.4,
      ...((isBeside || !isPlausible(meaning.target, facts, texts)) && { isLost: true }),
      evidence: [
        !isPlausible(meaning.target, facts, texts)
          ? `Values such as "${shown}" do not make sense as that.`
          : isBeside
            ? 'Its element stands beside the regions, and its name does not say that it is for them.'
            : 'Another place says that already.',
      ],
      span: example,
      isAbout: () => false,
      alternatives: [],
    });
  }
  return drafts;
}

/** The loss of a unit that nobody knows, beside numbers that are read; `undefined` for another place. */
function unknownUnit(column: Column, read: ReadonlySet<Column>, chain: readonly string[]): Draft | undefined {
  const example = column.cells.find((cell) => cell !== undefined);
  const element = /^(.+)\/@[^/]+$/.exec(column.at)?.[1];
  if (!example || element === undefined || !isUnitName(column.own)) return undefined;
  const isBeside = ({ level, at }: Column) =>
    level === column.level && (at === element || at.startsWith(`${element}/`));
  if (![...read].some(isBeside)) return undefined;
  return {
    id: `${chain[column.level]}/${column.at}`,
    message: `The unit "${example.text.slice(0, 40)}" in "${column.at}" of <${chain[column.level]}> is not known, so the numbers beside it may be read too great or too small.`,
    confidence: 0.4,
    isLost: true,
    evidence: ['Check them, or write them in a usual unit.'],
    span: example,
    isAbout: () => false,
    alternatives: [],
  };
}

/** The loss of numbers on both sides of 0, as tunings, levels and pan positions have them, in a place of regions whose name says nothing. */
function unreadSigned(column: Column, chain: readonly string[]): Draft | undefined {
  if (column.level !== chain.length - 1 || column.listed) return undefined;
  const { filled, numeric, negative, least, greatest, tally } = columnFactsOf(textsOf(column));
  const example = column.cells.find((cell) => cell?.text.trim().startsWith('-'));
  const isSigned = negative > 0 && tally.size > 1 && numeric === filled && least >= -1200 && greatest <= 1200;
  if (!isSigned || !example) return undefined;
  const element = chain[column.level];
  return {
    id: `${element}/${column.at}`,
    message: `"${column.at.replace(/^@/, '')}" of <${element}> is not read. Its numbers lie from ${least} to ${greatest}, as tunings, levels in dB and pan positions do, so regions may sound otherwise than they are meant to.`,
    confidence: 0.4,
    isLost: true,
    evidence: ['Nothing says what they mean.'],
    span: example,
    isAbout: () => false,
    alternatives: [],
  };
}

/** The loss of the files of a place, where regions name those of another one; `undefined` for a place of other things. */
function unreadFiles(column: Column, chain: readonly string[]): Draft | undefined {
  const { filled, files, tally } = columnFactsOf(textsOf(column));
  const example = column.cells.find((cell) => cell !== undefined);
  const isOfRegions = column.level === chain.length - 1 && tally.size > 1 && files === filled;
  if (!isOfRegions || !example || column.listed) return undefined;
  const element = chain[column.level];
  return {
    id: `${element}/${column.at}`,
    message: `The files in "${column.at.replace(/^@/, '')}" of <${element}> are not read: another place gives the file of each region.`,
    confidence: 0.4,
    isLost: true,
    evidence: [`Such as "${example.text.slice(0, 80)}".`],
    span: example,
    isAbout: () => false,
    alternatives: [],
  };
}
