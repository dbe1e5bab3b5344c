import type { Instrument } from '../instrument';
import { includeParts } from './includeParts';

/** An include of the main file with what it brought in; ends are one past. */
export interface MainInclude {
  start: number;
  end: number;
  endHeader: number;
  endParameter: number;
}

/** Tells what of an instrument is read before an offset of the main file, with what includes bring in. */
export class ReadBefore {
  /** The includes of the main file, in the order of the text. */
  readonly includes: readonly MainInclude[];
  readonly #instrument: Instrument;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.includes = [...includeParts(instrument).values()]
      .filter(({ directive }) => directive.source === 0)
      .map(({ directive: { start, end }, endHeader, endParameter }) => ({
        start,
        end,
        endHeader,
        endParameter,
      }));
  }

  /** The first header and parameter that are read behind an offset, or their number where none is. */
  at(offset: number): { header: number; parameter: number } {
    const instrument = this.#instrument;
    const include = this.includes.findLast(({ start }) => start < offset);
    return {
      header: Math.max(instrument.headerAt(0, offset - 1) + 1, include?.endHeader ?? 0),
      parameter: Math.max(instrument.parameterAt(0, offset - 1) + 1, include?.endParameter ?? 0),
    };
  }
}
