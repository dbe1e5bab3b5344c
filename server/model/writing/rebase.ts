import type { Instrument } from '../instrument';
import type { WriteOptions } from '../notation';
import { Parameter } from '../parameterNames';
import { folderOf, isAbsolutePath, joinPath, relativePath } from '../paths';

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
  const plain = plainlyLed(value, move);
  if (plain !== undefined) return plain;
  // A prefix that ends in a folder keeps its slash; a file in that folder stands in for what follows.
  const isFolder = /[\\/]$/.test(value);
  const path = relativePath(move.to, joinPath(move.from, isFolder ? `${value}file` : value));
  if (!isFolder) return path;
  const folder = folderOf(path);
  return folder === '' ? '' : `${folder}/`;
}

type Move = NonNullable<WriteOptions['move']>;

/** By the move, the way from the one folder to the other with a slash at its end; empty where no such way is all that a path needs. */
const ways = new WeakMap<Move, string>();

/** Where one folder is not within the other's path, a path without dots for folders needs no more than the way put before it. */
function plainlyLed(value: string, move: Move): string | undefined {
  let way = ways.get(move);
  if (way === undefined) {
    const path = relativePath(move.to, joinPath(move.from, 'file'));
    way = move.to.startsWith(move.from) || isAbsolutePath(path) ? '' : path.slice(0, -'file'.length);
    ways.set(move, way);
  }
  return way !== '' && !tangled.test(value) ? way + value : undefined;
}

/** What makes a path other than one name behind the other. */
const tangled = /\\|\/\/|(?:^|\/)\.{0,2}(?:\/|$)/;
