import { folderOf, isWithin, nameOf } from '../../model/paths';
import { instrumentName, isAbbreviation, isPartFolder, mayStandFor, nameLikeness } from './instrumentNames';

/** What a table is called, with how sure that is. */
export interface TableName {
  name: string;
  /** Whether table and folder of samples bear the same name. */
  agrees: boolean;
  doubt?: string;
}

/** The name that a table's file gives; that of the folder around it where the file's says nothing. */
export function titleOfTable(path: string): string {
  return instrumentName(nameOf(path), true) || folderName(folderOf(path));
}

/** The name that a folder gives: of itself, or of the nearest around it that is not named after what kind of files it holds. */
export function folderName(folder: string): string {
  let at = folder;
  while (isPartFolder(nameOf(at)) && folderOf(at) !== at && folderOf(at) !== '') at = folderOf(at);
  return instrumentName(nameOf(at), false);
}

/** What an instrument is called, by its table, the folders around it and the folder of its samples. */
export function nameOfTable(path: string, samples: string, library: string): TableName {
  const own = instrumentName(nameOf(path), true);
  const around = nameAround(path, library);
  const ofSamples = isWithin(library, samples) && samples !== library ? folderName(samples) : '';
  const likeness = nameLikeness(own, ofSamples);
  if (own !== '' && !isAbbreviation(own)) {
    const agrees = likeness >= 0.6;
    return { name: likeness === 1 ? ofSamples : own, agrees };
  }
  if (around !== '') return { name: around, agrees: nameLikeness(around, ofSamples) >= 0.6 };
  if (ofSamples === '') return { name: own === '' ? nameOf(path) : own, agrees: false };
  if (own !== '' && mayStandFor(own, ofSamples)) return { name: ofSamples, agrees: false };
  return {
    name: ofSamples,
    agrees: false,
    doubt: `The name is that of its sample folder, because ${nameOf(path)} gives none.`,
  };
}

/** The name that the folders around a table give, below that of the library; empty where they say nothing. */
function nameAround(path: string, library: string): string {
  let at = folderOf(path);
  while (at !== library && isWithin(library, at) && isPartFolder(nameOf(at))) at = folderOf(at);
  if (at === library || !isWithin(library, at)) return '';
  const name = instrumentName(nameOf(at), false);
  return isAbbreviation(name) ? '' : name;
}
