import type { SampleFactsLookup } from '../../model/notation';
import { joinPath } from '../../model/paths';
import type { SampleFacts } from '../../model/samples';
import { audioEndings, isAudioName } from '../../model/samples';
import { isAudioFileName } from '../../table/audioFileName';
import type { ValueForm } from '../vocabulary';
import type { Assigned } from './assign';
import type { Draft } from './draft';
import { exampleOf, otherForm, placeName } from './draft';
import type { Rows } from './rows';

/** The audio files of the rows. */
export interface SampleFiles {
  form: Extract<ValueForm, { kind: 'path' }>;
  /** What the header of a row's file says, where it is known. */
  facts: readonly (SampleFacts | undefined)[];
  /** How a row names its file. */
  names: readonly (string | undefined)[];
  drafts: Draft[];
}

const mostLookedUp = 160;
const folderWords =
  /^(?:folder|folders|dir|directory|path|basepath|base|root|home|location|samples|ordner|verzeichnis|pfad|dossier|chemin|carpeta|ruta|cartella|pasta)$/;

/** Finds how paths are written, and the files that they lead to. */
export function findSampleFiles(
  assigned: readonly Assigned[],
  rows: Rows,
  lookup: SampleFactsLookup | undefined,
  given?: SampleFiles['form'],
): SampleFiles {
  const places = assigned.filter(({ target }) => target === 'sample');
  const names: (string | undefined)[] = new Array(rows.count).fill(undefined);
  for (const { texts, column } of [...places].sort((one, other) => other.column.level - one.column.level)) {
    for (let row = 0; row < rows.count; row++) if (column.cells[row]) names[row] ??= texts[row];
  }
  const place = places.at(-1);
  const looked: string[] = [];
  const step = Math.max(1, Math.floor(rows.count / mostLookedUp));
  for (let row = 0; row < rows.count && looked.length < mostLookedUp; row += step) {
    const name = names[row];
    if (name) looked.push(name.replaceAll('\\', '/'));
  }
  const withEnding = looked.filter(isAudioFileName).length * 2 >= looked.length;
  const named = foldersIn(rows, assigned);
  const folders = [...new Set([given?.folder ?? '', '', ...named])];
  const endings = withEnding
    ? ['']
    : [...new Set([...(given?.ending ? [given.ending] : []), ...audioEndings.map((ending) => `.${ending}`)])];
  let best = { folder: folders[0] as string, ending: endings[0] as string, found: 0 };
  if (lookup) {
    for (const folder of folders) {
      for (const ending of endings) {
        const found = looked.filter((name) => lookup(pathOf(folder, name, ending))).length;
        if (found > best.found) best = { folder, ending, found };
      }
    }
  }
  const guessed = best.found === 0 && !given ? named[0] : undefined;
  const folder = guessed ?? best.folder;
  const form: SampleFiles['form'] = {
    kind: 'path',
    ...(folder !== '' && { folder }),
    ...(best.ending !== '' && { ending: best.ending }),
    ...(names.some((name) => name?.includes('\\')) && { separator: '\\' as const }),
  };
  const facts: (SampleFacts | undefined)[] = new Array(rows.count).fill(undefined);
  if (lookup && best.found > 0) {
    for (let row = 0; row < rows.count; row++) {
      if (row % step !== 0) continue;
      const name = names[row];
      if (name) facts[row] = lookup(pathOf(folder, name.replaceAll('\\', '/'), best.ending));
    }
  }
  return {
    form,
    facts,
    names,
    drafts: place ? draftsOf(place, form, best.found, looked.length, endings) : [],
  };
}

function pathOf(folder: string, name: string, ending: string): string {
  const path = ending === '' || isAudioName(name) ? name : name + ending;
  return folder === '' ? path : joinPath(folder, path);
}

/** Values of outer elements, the same for all regions, that are named like a folder. */
function foldersIn(rows: Rows, assigned: readonly Assigned[]): string[] {
  const used = new Set(assigned.map(({ column }) => column));
  const folders: string[] = [];
  const region = Math.max(0, ...rows.columns.map(({ level }) => level));
  for (const column of rows.columns) {
    if (used.has(column) || column.level >= region) continue;
    if (![...column.own, ...(column.around.at(-1) ?? [])].some((word) => folderWords.test(word))) continue;
    const texts = new Set(column.cells.map((cell) => cell?.text));
    const [text] = texts;
    if (texts.size !== 1 || !text || isAudioFileName(text) || !/[\p{L}./]/u.test(text) || text.length > 300)
      continue;
    folders.push(text.replaceAll('\\', '/').replace(/\/+$/, ''));
  }
  return folders.slice(0, 4);
}

function draftsOf(
  place: Assigned,
  { folder, ending }: SampleFiles['form'],
  found: number,
  looked: number,
  endings: readonly string[],
): Draft[] {
  const drafts: Draft[] = [];
  const span = exampleOf(place);
  const isAbout: Draft['isAbout'] = ({ parameter }) => parameter === 'sample';
  const files = `${found} of ${looked} sample files are found so.`;
  if (folder) {
    drafts.push({
      id: 'sample.folder',
      message: `Paths in ${placeName(place)} are inside the folder "${folder}".`,
      confidence: found > 0 ? 0.95 : 0.8,
      evidence: [found > 0 ? files : 'An outer element names this folder for all regions.'],
      span,
      isAbout,
      alternatives: [
        otherForm('paths start from the folder of this file', (form) => {
          if (form.kind !== 'path') return form;
          const { folder: _, ...rest } = form;
          return rest;
        }),
      ],
    });
  }
  if (ending) {
    drafts.push({
      id: 'sample.ending',
      message: `Names in ${placeName(place)} are those of files that end in "${ending}".`,
      confidence: found > 0 ? 0.95 : 0.5,
      evidence: [found > 0 ? files : 'No name has an ending, and no sample file could be looked at.'],
      span,
      isAbout,
      alternatives: endings
        .filter((other) => other !== ending)
        .map((other) =>
          otherForm(`files that end in ${other}`, (form) =>
            form.kind === 'path' ? { ...form, ending: other } : form,
          ),
        ),
    });
  }
  return drafts;
}
