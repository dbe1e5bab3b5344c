import { layerOrderIn } from '../../../trade/statements/layers/layerOrder';
import type { TakesElement } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import type { RegionElement } from '../elements/regionElement';
import { saysSo } from '../saysSo';
import type { Column } from '../values/column';
import { keyTargets, velocityTargets } from '../values/plausible';
import type { Rows } from '../values/rows';
import { conceptsOf } from '../words/tradeWords';
import { nameLayers, speaksOfLayers } from './layerNames';

/** The loudest velocity (MIDI 1.0). */
const loudest = 127;
/** Beginnings of words for where one layer ends and the next begins; from memory. */
const limitStem =
  /^(?:threshold|limit|bound|split|border|edge|break|schwell|grenz|seuil|borne|soglia|soglie|umbral|limiar|drempel|grens|trosk|grans|prog|hranic)/u;
const listed = /^\s*\d{1,3}(?:\s*[,;|/\s]\s*\d{1,3})+\s*$/u;

/** A place around regions that lists where layers of velocities end, and how it is read. */
export interface LayerLimits {
  column: Column;
  takes: TakesElement;
  draft: Draft;
}

/**
 * A place around regions that lists where the layers of velocities end, the same for all: one number less than there are regions on
 * the same keys, or as many from 0 or 1 on or up to 127. The regions are the layers in their order.
 */
export function layerLimitsOf(
  rows: Rows,
  assigned: readonly Assigned[],
  { chain, count }: RegionElement,
  prose: readonly string[],
): LayerLimits | undefined {
  const region = chain.length - 1;
  const element = chain[region - 1];
  // Of regions that were left out of the look nobody knows the keys.
  if (element === undefined || count > rows.count) return undefined;
  for (const column of rows.columns) {
    const text = column.cells[0]?.text;
    if (column.level >= region || column.listed || text === undefined || !listed.test(text)) continue;
    if (!nameLimits(column) || column.cells.some((cell) => cell?.text !== text)) continue;
    const others = assigned.filter((one) => one.column !== column);
    if (others.some(({ target }) => velocityTargets.has(target) || target === 'dynamics')) continue;
    const size = sizeOfSets(rows, others);
    const limits = size === undefined ? undefined : limitsIn(text, size);
    if (!limits) continue;
    const said = layerOrderIn(prose, (sentence) => speaksOfLayers(sentence, column.own));
    const upTo = said?.is === 'loudestFirst' ? [...limits].reverse() : limits;
    const takes: TakesElement = { element, are: 'layers', upTo };
    return { column, takes, draft: draftOf(column, chain, takes, said?.text) };
  }
  return undefined;
}

/** Whether a name speaks of limits of velocities or layers, its element perhaps of which of these. */
function nameLimits({ own, around }: Column): boolean {
  const all = [...around.flat(), ...own];
  const areLimits = (word: string) =>
    limitStem.test(word) || conceptsOf(word)?.concepts.some((one) => one === 'hi' || one === 'lo') === true;
  const areVelocities = (word: string) => conceptsOf(word)?.concepts.includes('vel') === true;
  return (
    own.some((word) => areLimits(word) || areVelocities(word)) && (all.some(areVelocities) || nameLayers(all))
  );
}

/** How many regions have the same keys, where that are equally many everywhere and several. */
function sizeOfSets(rows: Rows, assigned: readonly Assigned[]): number | undefined {
  const keys = assigned.filter(({ target }) => keyTargets.has(target));
  if (keys.length === 0) return undefined;
  const sizes = new Map<string, number>();
  for (let row = 0; row < rows.count; row++) {
    const id = keys.map(({ texts }) => texts[row] ?? '').join('|');
    sizes.set(id, (sizes.get(id) ?? 0) + 1);
  }
  const [size, ...more] = new Set(sizes.values());
  return more.length === 0 && size > 1 ? size : undefined;
}

/** The greatest velocity of each layer, the softest first, where so many layers are told. */
function limitsIn(text: string, count: number): number[] | undefined {
  const numbers = text.match(/\d+/g)?.map(Number) ?? [];
  const doRise = numbers.every((number, at) => number <= loudest && (at === 0 || number > numbers[at - 1]));
  if (!doRise) return undefined;
  const [first = 0, ...rest] = numbers;
  if (numbers.length === count - 1 && first > 0 && numbers.at(-1) !== loudest) return [...numbers, loudest];
  if (numbers.length !== count) return undefined;
  if (numbers.at(-1) === loudest && first > 1) return numbers;
  return first <= 1 && rest.at(-1) !== loudest ? [...rest.map((number) => number - 1), loudest] : undefined;
}

function draftOf(
  column: Column,
  chain: readonly string[],
  takes: TakesElement,
  said: string | undefined,
): Draft {
  const { upTo = [] } = takes;
  const place = column.at.replace(/^@/, '');
  return {
    id: `${takes.element}.layers`,
    message: `The regions of the same keys inside <${takes.element}> are layers of velocities in their order, up to ${upTo.slice(0, -1).join(', ')} and ${upTo.at(-1)}.`,
    confidence: 0.85,
    isGuess: true,
    evidence: [
      `"${place}" of <${chain[column.level]}> lists where they end.`,
      ...(said === undefined
        ? ['Nothing says which is the softest; the first was taken for it.']
        : [saysSo(said)]),
    ],
    span: column.cells.find((cell) => cell) ?? { start: 0, end: 0 },
    isAbout: () => false,
    alternatives: [],
  };
}
