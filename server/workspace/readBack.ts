import { effectiveValues } from '../model/effectiveValues';
import type { Instrument } from '../model/instrument';
import type { Notation, SampleFactsLookup } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import { mainSpan } from '../model/text/span';
import { counted } from '../model/wording/counted';
import type { Unplain } from '../playing/plain/unplain';
import { unsaidRegions } from '../playing/plain/unsaidRegions';

/** More such notes help nobody. */
const mostNotes = 100;
/** Numbers that differ by less were rounded on writing (our choice). */
const leastDifference = 1e-6;

/**
 * Reads again what was written of an instrument, and notes each value of its regions that comes out otherwise and has no note yet:
 * a text that cannot be read as it was meant is to be seen at once. `isMoved`: paths to samples start from another folder now.
 */
export function readBack(
  instrument: Instrument,
  notation: Notation,
  { text, notes }: { text: string; notes: readonly ConversionNote[] },
  isMoved: boolean,
  sampleFacts: SampleFactsLookup | undefined,
  leftOut: ReadonlySet<number> = new Set(),
): ConversionNote[] {
  const again = notation.read(text, { path: '', ...(sampleFacts && { sampleFacts }) });
  const regions = [...instrument.regions].filter((region) => !leftOut.has(region));
  const count = regions.length;
  if (again.regions.length !== count) {
    const message = `The written text has ${counted(again.regions.length, 'region')} instead of ${count}. Check it.`;
    return [{ kind: 'dropped', ...mainSpan(0, 0), message }];
  }
  const noted = new Set(notes.map(({ source, start }) => `${source} ${start}`));
  const found: ConversionNote[] = [];
  const told = new Set<number>();
  for (let at = 0; at < count && found.length < mostNotes; at++) {
    const region = regions[at];
    const before = effectiveValues(instrument, region);
    const after = effectiveValues(again, again.regions[at]);
    for (const [name, value] of Object.entries(before)) {
      if (isSame(value, after[name]) || (name === 'sample' && isMoved)) continue;
      const parameter = instrument.effective(region, instrument.names.canonical(instrument.names.idOf(name)));
      if (parameter < 0 || told.has(parameter)) continue;
      const span = instrument.parameterSpan(parameter);
      const transpose = name === 'tune' && 'transpose' in before && !('transpose' in after);
      if (transpose || noted.has(`${span.source} ${span.start}`)) continue;
      told.add(parameter);
      const now = after[name] === undefined ? 'is missing' : `is ${after[name]}`;
      found.push({
        kind: 'dropped',
        ...span,
        message: `${name} ${value} ${now} when the text is read again. Check it.`,
      });
    }
  }
  return found;
}

/**
 * The regions that would sound whenever a key is struck in what was written of an instrument, because that does not say what they
 * are; none where other regions came out of it.
 */
export function unsaidIn(
  instrument: Instrument,
  notation: Notation,
  text: string,
  sampleFacts: SampleFactsLookup | undefined,
): Map<number, Unplain> {
  const again = notation.read(text, { path: '', ...(sampleFacts && { sampleFacts }) });
  const { regions } = instrument;
  if (again.regions.length !== regions.length) return new Map();
  const written = new Map(Array.from(regions, (region, at) => [region, again.regions[at]]));
  const values = new Map<number, [before: Values, after: Values]>();
  return unsaidRegions(instrument, regions, (region, name) => {
    const there = written.get(region) ?? -1;
    const known = values.get(region) ?? [effectiveValues(instrument, region), effectiveValues(again, there)];
    values.set(region, known);
    const [before, after] = known;
    return before[name] !== undefined && isSame(before[name], after[name]);
  });
}

type Values = Record<string, number | string>;

function isSame(one: number | string, other: number | string | undefined): boolean {
  if (typeof one === 'number' && typeof other === 'number') return Math.abs(one - other) <= leastDifference;
  return String(one) === String(other);
}
