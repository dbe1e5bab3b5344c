import { limitsOfLayers } from '../../../trade/layerLimits';
import type { Proposal } from '../proposal';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import { positionTargets } from '../values/plausible';
import type { Rows } from '../values/rows';
import { conceptsOf } from '../words/tradeWords';
import { knownPlaces } from './keySets';

const velocities: ReadonlySet<string> = new Set(['lovel', 'hivel', 'velocity_range', 'dynamics']);
const keyTargets: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'key_range']);
/** No tuning ends at 127 on all keys, and no sample within its first 128 frames; so words with a second meaning may say so. */
const tunings: ReadonlySet<string> = new Set(['tune', 'transpose']);
const surely = 0.6;
const evidence =
  'Other places give the keys, and among regions of the same keys its numbers end at 127 or begin at 0 or 1.';

/**
 * Takes one place of numbers for the upper ends of layers of velocities, or for the lower ones, whatever it is called: where other
 * places give the keys and the numbers of each set of regions on the same keys go up to 127, or from 0 or 1 on. What else the place
 * was proposed for is left out.
 */
export function withLimitedLayers(rows: Rows, proposals: readonly Proposal[]): Proposal[] {
  const known = knownPlaces(proposals, rows.count);
  if (known.velocities.size > 0) return [...proposals];
  const others = new Set(proposals.filter(isSurelyOther).map(({ column }) => column));
  for (const [order, column] of rows.columns.entries()) {
    if (column.listed || others.has(column)) continue;
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    if (facts.whole < facts.filled || facts.isConstant || facts.unit !== undefined) continue;
    if (facts.greatest !== 127 && !(facts.least <= 1 && facts.greatest < 127)) continue;
    const areKeyed = known.keys.some((one) => one.column !== column && isOfKeys(one));
    const sets = areKeyed ? known.setsWithout(column) : undefined;
    const numbers = sets?.map((set) =>
      set.map((row) => facts.numbers[row]).filter((number) => !Number.isNaN(number)),
    );
    const are = numbers && limitsOfLayers(numbers.filter((set) => set.length > 0));
    if (!are || numbers.length < 2 || (are === 'lower' && !isLow(column))) continue;
    const target = are === 'upper' ? 'hivel' : 'lovel';
    const meaning = { target, weight: 0.88, unit: undefined };
    const elsewhere = proposals.filter((one) => one.column !== column);
    return [...elsewhere, { column, order, texts, facts, meaning, evidence }];
  }
  return [...proposals];
}

function isOfKeys({ meaning }: Proposal): boolean {
  return keyTargets.has(meaning.target);
}

/** Whether a name says what no layer is. */
function isSurelyOther({ meaning }: Proposal): boolean {
  const { target, weight } = meaning;
  const isUnlikely = positionTargets.has(target) || tunings.has(target);
  return weight >= surely && !keyTargets.has(target) && !velocities.has(target) && !isUnlikely;
}

/** Numbers from 0 on may be many things; a name has to say that they are lower ends. */
function isLow({ own }: Column): boolean {
  return own.some((word) => conceptsOf(word)?.concepts.includes('lo') === true);
}
