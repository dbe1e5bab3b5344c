import type { Instrument } from './instrument';
import type { WriteOptions } from './notation';
import { Parameter } from './parameterNames';
import { isAbsolutePath, joinPath } from './paths';

/**
 * The value of a parameter as it is to be written. Where the text goes to another folder, sample paths are led back
 * to the files: through `default_path` where a `<control>` sets one, else in each `sample`.
 */
export function writtenValue(
  instrument: Instrument,
  header: number,
  parameter: number,
  options: WriteOptions,
): string {
  const value = instrument.valueText(parameter);
  const back = options.pathToOrigin;
  if (!back || isAbsolutePath(value) || value.startsWith('*')) return value;
  const name = instrument.canonicalName(parameter);
  const leads =
    name === Parameter.default_path
      ? value !== ''
      : name === Parameter.sample && instrument.control(header).defaultPath === '';
  if (!leads) return value;

  const folderEnd = /[\\/]$/.test(value) ? '/' : '';
  return joinPath(back, value) + folderEnd;
}
