import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { OutputError } from '../../model/output';
import { counted } from '../../model/wording/counted';
import type { Unplain } from '../../playing/plain/unplain';
import { unsaidNotes, unsaidRegions } from '../../playing/plain/unsaidRegions';
import { isSameValue } from './comparedValues';
import type { FilledTemplate } from './fillExamples';
import type { SourceSection } from './sourceSections';
import { isSameSample } from './templateAccount';
import { velocitiesLost } from './velocitiesLost';
import { writtenValues } from './writtenValues';

/** The regions of a source that a template cannot say as what they are. */
export class RegionsLeftOut {
  readonly #instrument: Instrument;
  readonly #unsaid = new Map<number, Unplain>();
  /** By sample that the template cannot name, the regions that play it. */
  readonly #unnamed = new Map<string, number[]>();
  readonly regions = new Set<number>();

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  /**
   * Adds the regions that read otherwise than they are meant in what was written; whether there are any. Fails with an
   * {@link OutputError} where none would be left.
   */
  add({ result, regions }: FilledTemplate): boolean {
    const before = this.regions.size;
    const found = new Map(
      regions.map(({ source, header }) => [source.header, { source, there: writtenValues(result, header) }]),
    );
    const isSaid = (region: number, name: string) => {
      const written = found.get(region);
      const value = written?.source.values.get(name);
      return value !== undefined && isSameValue(name, value, written?.there.get(name));
    };
    for (const { source, header } of regions) {
      const path = source.values.get('sample');
      if (path === undefined || isSameSample(result, header, path)) continue;
      this.regions.add(source.header);
      this.#unnamed.set(path, [...(this.#unnamed.get(path) ?? []), source.header]);
    }
    const written = [...found.keys()].filter((region) => !this.regions.has(region));
    for (const [region, reason] of unsaidRegions(this.#instrument, written, isSaid)) {
      this.regions.add(region);
      this.#unsaid.set(region, reason);
    }
    const plain = regions.filter(({ source }) => !this.regions.has(source.header));
    for (const region of velocitiesLost(this.#instrument, result, plain)) {
      this.regions.add(region);
      const name = this.#instrument.lowVelocity[region] > 1 ? 'lovel' : 'hivel';
      this.#unsaid.set(region, { name, why: 'at other velocities than one that stays on its keys' });
    }
    if (this.regions.size === before) return false;
    if (this.regions.size < this.#instrument.regions.length) return true;
    const [first] = this.notes();
    throw new OutputError(`the template can say none of the regions; the first reason: ${first.message}`);
  }

  /** The sections without these regions. */
  without(sections: readonly SourceSection[]): SourceSection[] {
    return sections
      .map(({ regions, ...section }) => ({
        ...section,
        regions: regions.filter(({ header }) => !this.regions.has(header)),
      }))
      .filter(({ regions }) => regions.length > 0);
  }

  notes(): ConversionNote[] {
    const unnamed = [...this.#unnamed].map(
      ([path, regions]): ConversionNote => ({
        kind: 'dropped',
        ...this.#instrument.headerSpan(regions[0]),
        message: `The template has no way to name the sample ${path}, so ${counted(regions.length, 'region')} with it ${regions.length === 1 ? 'is' : 'are'} left out.`,
      }),
    );
    return [...unsaidNotes(this.#instrument, this.#unsaid, 'the template'), ...unnamed];
  }
}
