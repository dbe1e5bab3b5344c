import type { Instrument } from '../../../model/instrument';
import { ColumnsInForce } from '../parameters/columnsInForce';
import type { PlayedSample } from './playedSamples';

const names = ['loop_mode', 'end', 'direction', 'ampeg_sustain', 'oscillator'] as const;

/** Answers which regions are heard up to the end of their sample file. */
export class FileEnds {
  readonly #instrument: Instrument;
  readonly #few: ColumnsInForce<(typeof names)[number]>;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#few = new ColumnsInForce(instrument, names);
  }

  /** Whether one of the regions that play a sample is heard up to its end: no loop, no `end`, no envelope that dies away. */
  areHeard({ regions, facts }: PlayedSample): boolean {
    return regions.some((region) => {
      const mode = this.#text(region, 'loop_mode');
      if (mode === undefined ? facts.loops.length > 0 : mode.startsWith('loop_')) return false;
      const end = this.#few.of(region, 'end');
      if (end >= 0 && this.#instrument.number(end) < facts.frames - 1) return false;
      const sustain = this.#few.of(region, 'ampeg_sustain');
      if (sustain >= 0 && this.#instrument.number(sustain) === 0) return false;
      // A sample that is used as one period of a wave is repeated.
      return this.#text(region, 'direction') !== 'reverse' && this.#text(region, 'oscillator') !== 'on';
    });
  }

  #text(region: number, name: (typeof names)[number]): string | undefined {
    const parameter = this.#few.of(region, name);
    return parameter < 0 ? undefined : this.#instrument.valueText(parameter).toLowerCase();
  }
}
