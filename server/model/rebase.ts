import type { Instrument } from './instrument';
import type { WriteOptions } from './notation';
import { Parameter } from './parameterNames';
import { folderOf, isAbsolutePath, joinPath, relativePath } from './paths';

/**
 * The value of a parameter as it is to be written. Where the text goes to another folder, sample paths are led back
 * to the files: through `default_path` where a `<control>` sets one, else in each `sample`.
 */
export function writtenValue(
  instrument: Instrument,
  header: number,
  parameter: number,
  { move }: WriteOptions,
): string {
  const value = instrument.valueText(parameter);
  if (!move || move.from === move.to || value === '' || isAbsolutePath(value) || value.startsWith('*'))
    return value;
  const name = instrument.canonicalName(parameter);
  const leads =
    name === Parameter.default_path ||
    (name === Parameter.sample && instrument.control(header).defaultPath === '');
  if (!leads) return value;
  // A prefix that ends in a folder keeps its slash; a file in that folder stands in for what follows.
  const isFolder = /[\\/]$/.test(value);
  const path = relativePath(move.to, joinPath(move.from, isFolder ? `${value}file` : value));
  if (!isFolder) return path;
  const folder = folderOf(path);
  return folder === '' ? '' : `${folder}/`;
}
