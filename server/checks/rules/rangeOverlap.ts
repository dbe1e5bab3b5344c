import type { Fix } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { resolveOpcode } from '../../model/opcodes/resolve';
import { valueFault } from '../../model/opcodes/values';
import type { RegionOverlap } from '../../model/overlaps/overlaps';
import { sharedBy } from '../../model/overlaps/overlaps';
import type { Rectangle } from '../../model/overlaps/rectangles';
import { rectangleOf } from '../../model/overlaps/rectangles';
import { unmeantOverlaps } from '../../model/overlaps/unmeantOverlaps';
import { HeaderEdits, type RangeName } from '../../model/style/headerEdits';
import { keysText, velocitiesText } from '../../model/wording/rangeWords';
import { fixOf, ofKind, rangeEdits } from '../facts/parameters/parameterFixes';
import { ValueAnswers } from '../facts/parameters/valueAnswers';
import { placeText, regionTitle } from '../facts/regionText';
import type { CheckContext, Rule, RuleFinding } from '../rule';

const mostRelated = 10;
const overlapsInStep = 256;
const rangeNames = ['key', 'lokey', 'hikey', 'lovel', 'hivel'];
/** Finds regions of one layer that partly overlap; see `unmeantOverlaps`. */
export const rangeOverlap: Rule = {
  code: 'range-overlap',
  severity: 'warning',
  finds:
    'Two regions of one layer that partly overlap in keys and velocities, with no condition, round robin or crossfade to keep them apart.',
  *check(context, report) {
    const { instrument } = context;
    const found = yield* unmeantOverlaps(instrument);
    const ranges = new KnownRanges(instrument);
    for (const [at, overlaps] of found.entries()) {
      if (at % overlapsInStep === overlapsInStep - 1) yield at / found.length;
      const [first, ...more] = overlaps.filter(
        ({ region, other }) => ranges.areKnownOf(region) && ranges.areKnownOf(other),
      );
      if (!first) continue;
      report(() =>
        more.length === 0 ? findingOf(context, first) : foldedFinding(instrument, [first, ...more]),
      );
    }
  },
};

/** Tells whether all keys and velocities in force for a region are such, so that its range is known. */
class KnownRanges {
  readonly #instrument: Instrument;
  readonly #names: { canonical: number; isBroken: ValueAnswers<boolean> }[];

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    const { names } = instrument;
    this.#names = rangeNames.map((name) => {
      const facts = resolveOpcode(name)?.facts;
      const isBroken = (text: string) => {
        const fault = facts && valueFault(facts, text);
        return fault !== undefined && !('bound' in fault);
      };
      return {
        canonical: names.canonical(names.idOf(name)),
        isBroken: new ValueAnswers(instrument, isBroken),
      };
    });
  }

  areKnownOf(region: number): boolean {
    const instrument = this.#instrument;
    return !this.#names.some(({ canonical, isBroken }) =>
      isBroken.of(instrument.effective(region, canonical)),
    );
  }
}

function findingOf(context: CheckContext, overlap: RegionOverlap): RuleFinding {
  const { instrument } = context;
  const { region, other } = overlap;
  return {
    ...instrument.headerSpan(region),
    message: `${pairText(instrument, region, other)} sound on ${areaText(sharedBy(instrument, overlap))}. Make their ranges meet without overlap, or add a crossfade, round robin or condition.`,
    related: [
      {
        ...instrument.headerSpan(other),
        message: `${capital(regionTitle(instrument, other))} sounds on ${areaText(rectangleOf(instrument, other) as Rectangle)}.`,
      },
    ],
    fixes: () => fixesOf(context, overlap),
  };
}

function pairText(instrument: Instrument, region: number, other: number): string {
  const [one, two] = [regionTitle(instrument, region), regionTitle(instrument, other)];
  const place = placeText(instrument, other);
  return one === two ? `This and ${place}, both ${one},` : `${capital(one)} and ${two} (${place}) both`;
}

function foldedFinding(instrument: Instrument, overlaps: readonly RegionOverlap[]): RuleFinding {
  const { other } = overlaps[0];
  const rectangle = rectangleOf(instrument, other) as Rectangle;
  return {
    ...instrument.headerSpan(other),
    message: `${capital(regionTitle(instrument, other))} sounds on ${areaText(rectangle)}, where ${overlaps.length} other regions of its layer sound too. Narrow its range. If it is a layer of its own, give it a group of its own.`,
    related: overlaps.slice(0, mostRelated).map((overlap) => ({
      ...instrument.headerSpan(overlap.region),
      message: `${capital(regionTitle(instrument, overlap.region))} shares ${areaText(sharedBy(instrument, overlap))} with it.`,
    })),
  };
}

function areaText(area: Rectangle): string {
  const keys = keysText(area.lowKey, area.highKey);
  return area.lowVelocity <= 1 && area.highVelocity === 127
    ? keys
    : `${keys} at ${velocitiesText(area.lowVelocity, area.highVelocity)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function fixesOf(context: CheckContext, { region, other }: RegionOverlap): Fix[] {
  const { instrument } = context;
  const one = rectangleOf(instrument, region) as Rectangle;
  const two = rectangleOf(instrument, other) as Rectangle;
  const fixes: Fix[] = [];
  if (partlyCovers(one.lowKey, one.highKey, two.lowKey, two.highKey)) {
    const [lower, upper] = one.lowKey < two.lowKey ? [region, other] : [other, region];
    const start = instrument.lowKey[upper];
    const end = instrument.highKey[lower];
    fixes.push(
      ...ofKind('End the lower range before the upper one', setKey(context, lower, 'hikey', start - 1)),
      ...ofKind('Start the upper range after the lower one', setKey(context, upper, 'lokey', end + 1)),
    );
  }
  if (partlyCovers(one.lowVelocity, one.highVelocity, two.lowVelocity, two.highVelocity)) {
    const [lower, upper] = one.lowVelocity < two.lowVelocity ? [region, other] : [other, region];
    const start = instrument.lowVelocity[upper];
    const end = instrument.highVelocity[lower];
    fixes.push(
      ...ofKind('End the softer layer below the louder one', setValue(context, lower, 'hivel', start - 1)),
      ...ofKind('Start the louder layer above the softer one', setValue(context, upper, 'lovel', end + 1)),
    );
  }
  return fixes;
}

/** Whether two ranges that meet each reach past the other. */
function partlyCovers(low: number, high: number, otherLow: number, otherHigh: number): boolean {
  return (low < otherLow && high < otherHigh) || (otherLow < low && otherHigh < high);
}

function setKey(context: CheckContext, region: number, name: RangeName, key: number): Fix[] {
  return setValue(context, region, name, key - context.instrument.control(region).keyOffset);
}

function setValue(context: CheckContext, header: number, name: RangeName, value: number): Fix[] {
  if (value < 0 || value > 127) return [];
  const { instrument, notation } = context;
  const text = new HeaderEdits(notation, instrument).spell(header, name, value);
  const title = `Set ${name}=${text} for ${regionTitle(instrument, header)}`;
  return fixOf(title, rangeEdits(context, header, name, value), false);
}
