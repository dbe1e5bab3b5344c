import type { Instrument } from '../../model/instrument';

import type { Terminal } from '../terminal';
import { shownPath } from '../terminalPaths';

/** Where a region stands, and its sample, as commands tell it. */
export interface RegionPlace {
  /** The line of its header, from 1. */
  line: number;
  /** The included file that it stands in, relative to the folder of the command; missing for the main file. */
  file?: string;
  /** The path after `default_path`, relative to the instrument's folder; `null` where none is set. */
  sample: string | null;
}

/** Where a region stands, by its position among the regions of the instrument. */
export function regionPlace(terminal: Terminal, instrument: Instrument, region: number): RegionPlace {
  const header = instrument.regions[region];
  const { source, start } = instrument.headerSpan(header);
  const file = instrument.sources[source];
  return {
    line: file?.positionAt(start).line ?? 1,
    ...(source > 0 && file && { file: shownPath(terminal, file.path) }),
    sample: instrument.samplePath(header) ?? null,
  };
}

/** Where a parameter stands. */
export type ParameterPlace = Pick<RegionPlace, 'line' | 'file'> & { column: number };

/** Where a parameter of an instrument stands, by its name. */
export function parameterPlace(
  terminal: Terminal,
  instrument: Instrument,
  parameter: number,
): ParameterPlace {
  const { source, start } = instrument.nameSpan(parameter);
  const file = instrument.sources[source];
  const position = file?.positionAt(start);
  return {
    line: position?.line ?? 1,
    column: position?.column ?? 1,
    ...(source > 0 && file && { file: shownPath(terminal, file.path) }),
  };
}
