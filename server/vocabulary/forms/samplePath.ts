import { isSampleFileName } from '../../model/fileNames';
import { isAbsolutePath, joinPath, relativePath } from '../../model/paths';
import type { ValueForm } from '../vocabulary';

type SamplePath = Extract<ValueForm, { kind: 'path' }>;

/**
 * The path, with `/`, that a text stands for: below the form's folder, and with its ending where the text ends like no audio
 * file. A generator such as `*sine` stays as it is.
 */
export function readSamplePath({ folder = '', ending = '' }: SamplePath, text: string): string {
  if (text.startsWith('*')) return text;
  let path = text.includes('\\') ? text.replaceAll('\\', '/') : text;
  if (ending !== '' && !isSampleFileName(path)) path += ending;
  return folder === '' || isAbsolutePath(path) ? path : joinPath(folder, path);
}

/** How a path is written; `undefined` where no text stands for it. */
export function writeSamplePath(form: SamplePath, value: string): string | undefined {
  const { folder = '', ending = '', separator = '/' } = form;
  const path = value.replaceAll('\\', '/');
  const inFolder =
    folder === '' || isAbsolutePath(path) || path.startsWith('*') ? path : relativePath(folder, path);
  const isEnded = ending !== '' && inFolder.endsWith(ending) && inFolder.length > ending.length;
  for (const written of isEnded ? [inFolder.slice(0, -ending.length), inFolder] : [inFolder]) {
    const text = path.startsWith('*') ? written : written.replaceAll('/', separator);
    if (readSamplePath(form, text) === path) return text;
  }
  return folder !== '' && joinPath('', path) !== path ? writeSamplePath(form, joinPath('', path)) : undefined;
}
