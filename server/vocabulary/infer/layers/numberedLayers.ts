import { dynamicIn } from '../../../trade/dynamics';
import type { LayerEnds } from '../../../trade/layerLimits';
import { velocitiesOfLayer } from '../../../trade/layerVelocities';
import { saysOf } from '../../../trade/phrases/toldWords';
import type { StatedLayerOrder } from '../../../trade/statements/layers/layerOrder';
import { layerOrderIn } from '../../../trade/statements/layers/layerOrder';
import type { Proposal } from '../proposal';
import { saysSo } from '../saysSo';
import type { Column } from '../values/column';
import type { ColumnFacts } from '../values/columnFacts';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { giveVelocities, knownPlaces } from './keySets';
import { layerNameOf, nameLayers, nameVelocities, speaksOfLayers } from './layerNames';
import { sharedLayers } from './sharedLayers';

/** Nobody records so many layers (our choice). */
const mostLayers = 32;
/** So many places of small numbers are looked at. */
const mostLooked = 40;

/** Whether the first layer is the softest, and why a place numbers layers at all. */
interface Told {
  order: StatedLayerOrder['is'];
  evidence: string;
}

/**
 * Takes a place of small numbers, several for the same keys, for the numbers of layers of velocities: where it is named after velocities,
 * or after layers and the document or the names of the samples say that these are soft and loud. The velocities are shared out among
 * them. Other proposals for the place are left out.
 */
export function withNumberedLayers(
  rows: Rows,
  chain: readonly string[],
  proposals: readonly Proposal[],
  prose: readonly string[],
): Proposal[] {
  const known = knownPlaces(proposals, rows.count);
  let looked = 0;
  for (const [order, column] of rows.columns.entries()) {
    if (column.listed || giveVelocities(known, column)) continue;
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    if (!areNumbers(facts)) continue;
    const sets = known.setsWithout(column) ?? [texts.map((_, row) => row)];
    if (!sets.some((set) => set.some((row) => texts[row] !== texts[set[0]]))) continue;
    if (looked++ > mostLooked) break;
    const words = layerNameOf(column.own, chain[column.level] ?? '');
    const told = toldOf(words, facts, rows, texts, prose);
    if (!told) continue;
    const count = Math.max(countIn(rows, facts) ?? 0, facts.greatest - facts.least + 1);
    const meaning = { target: 'dynamics', weight: 0.95, unit: undefined };
    const shared = sharedLayers(known, { column, texts }, sharedOut(facts, count, told.order));
    const own: Proposal = { column, order, texts, facts, meaning, evidence: told.evidence, shared };
    return [...proposals.filter((one) => one.column !== column), own];
  }
  return [...proposals];
}

/** Whether numbers count from 0 or 1, with none left out. */
function areNumbers({ filled, whole, least, greatest, tally, unit }: ColumnFacts): boolean {
  if (filled < 2 || whole < filled || unit !== undefined || least < 0 || least > 1) return false;
  return greatest <= mostLayers && tally.size > 1 && tally.size === greatest - least + 1;
}

function toldOf(
  words: readonly string[],
  facts: ColumnFacts,
  rows: Rows,
  texts: readonly (string | undefined)[],
  prose: readonly string[],
): Told | undefined {
  const ofVelocities = nameVelocities(words);
  const ofLayers = ofVelocities || nameLayers(words);
  const said = layerOrderIn(prose, (sentence) => speaksOfLayers(sentence, words));
  if (said && (ofLayers || words.some((word) => said.text.toLowerCase().includes(word))))
    return { order: said.is, evidence: saysSo(said.text) };
  const heard = ofLayers ? orderInNames(rows, texts, facts) : undefined;
  if (heard) return { order: heard, evidence: 'The names of the samples say which layer is soft.' };
  const shared = ofLayers && prose.find((text) => saysOf(text, 'velocities') && speaksOfLayers(text, words));
  if (shared) return { order: 'softestFirst', evidence: saysSo(shared) };
  if (!ofVelocities) return undefined;
  return {
    order: 'softestFirst',
    evidence: 'Its name speaks of velocities, and its numbers count from the first on.',
  };
}

/** The order of layers by words for loudness in the names of samples, where each number has its own. */
function orderInNames(
  { columns }: Rows,
  texts: readonly (string | undefined)[],
  { least, greatest }: ColumnFacts,
): StatedLayerOrder['is'] | undefined {
  const names = columns.find((column) => columnFactsOf(textsOf(column)).files * 2 > column.cells.length);
  const loudness = new Map<number, number>();
  for (const [row, text] of texts.entries()) {
    const dynamic = dynamicInName(names?.cells[row]?.text ?? '');
    if (text === undefined || dynamic === undefined) return undefined;
    if ((loudness.get(Number(text)) ?? dynamic) !== dynamic) return undefined;
    loudness.set(Number(text), dynamic);
  }
  const order = Array.from({ length: greatest - least + 1 }, (_, at) => loudness.get(least + at) ?? -1);
  const does = (follow: (one: number, next: number) => boolean) =>
    order.every((one, at) => at === 0 || follow(order[at - 1] ?? 0, one));
  if (does((one, next) => one < next)) return 'softestFirst';
  return does((one, next) => one > next) ? 'loudestFirst' : undefined;
}

function dynamicInName(path: string): number | undefined {
  const name = path.replace(/^.*[\\/]/, '').replace(/\.\w{2,5}$/, '');
  const found = new Set(
    name
      .split(/[\s_.()-]+/)
      .map((part) => dynamicIn(part))
      .filter((dynamic) => dynamic >= 0),
  );
  return found.size === 1 ? [...found][0] : undefined;
}

/** How many layers there are, where an element around the regions says so. */
function countIn({ columns }: Rows, { greatest }: ColumnFacts): number | undefined {
  const region = Math.max(...columns.map(({ level }) => level));
  for (const column of columns) {
    if (column.level >= region || !isCount(column)) continue;
    const facts = columnFactsOf(textsOf(column));
    if (
      facts.isConstant &&
      facts.whole === facts.filled &&
      facts.least >= greatest &&
      facts.least <= mostLayers
    )
      return facts.least;
  }
  return undefined;
}

function isCount({ own }: Column): boolean {
  return nameLayers(own) || nameVelocities(own);
}

function sharedOut(
  { tally, least }: ColumnFacts,
  count: number,
  order: StatedLayerOrder['is'],
): ReadonlyMap<string, LayerEnds> {
  const at = (text: string) => {
    const position = Number(text) - least;
    return order === 'softestFirst' ? position : count - 1 - position;
  };
  return new Map([...tally.keys()].map((text) => [text, velocitiesOfLayer(at(text), count)]));
}
