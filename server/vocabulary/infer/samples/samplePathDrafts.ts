import { parseListedFolder } from '../../listedFolder';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, otherForm, wordedPlace } from '../draft';

type PathForm = Extract<ValueForm, { kind: 'path' }>;

/** How many sample files were found, and how many were looked for. */
export interface FilesFound {
  found: number;
  looked: number;
}

/** Says what was decided about paths: the list, the folder and the ending. */
export function samplePathDrafts(
  place: Assigned,
  form: PathForm,
  files: FilesFound,
  endings: readonly string[],
): Draft[] {
  const { folder, under, ending, list } = form;
  const name = wordedPlace(place);
  const { found, looked } = files;
  const proof = found > 0 ? `${found} of ${looked} sample files are found so.` : undefined;
  const about = {
    span: firstValueOf(place),
    isAbout: (({ parameter }) => parameter === 'sample') satisfies Draft['isAbout'],
  };
  const inFolder = { ...about, confidence: proof ? 0.95 : 0.8 };
  const drafts: Draft[] = [];
  if (list)
    drafts.push({
      ...about,
      id: 'sample.list',
      message: list.key.startsWith('#')
        ? `${name} is the position of a <${list.element}>, which names the audio file, counted from ${list.key.slice(1)}.`
        : `${name} is the ${list.key.replace(/^@/, '')} of a <${list.element}>, which names the audio file.`,
      confidence: list.key.startsWith('#') ? 0.7 : 0.9,
      evidence: ['All of its values are found there.'],
      alternatives: [],
    });
  if (folder)
    drafts.push({
      ...inFolder,
      id: 'sample.folder',
      message: `Paths in ${name} are inside the folder "${folder}".`,
      evidence: [proof ?? 'An outer element names this folder for all regions.'],
      alternatives: [withoutFolder(({ folder: _, ...rest }) => rest)],
    });
  const listed = under?.split(' | ').flatMap((place) => parseListedFolder(place)?.listed ?? [])[0];
  if (under)
    drafts.push({
      ...inFolder,
      id: 'sample.under',
      message: listed
        ? `Paths in ${name} are inside the folder that "${listed.at.replace(/^@/, '')}" of the <${listed.element}> names to which a region refers.`
        : `Paths in ${name} are inside the folder that "${under.replaceAll('@', '')}" of an element around names.`,
      evidence: [proof ?? 'It is named like a folder, and the names of files have none.'],
      alternatives: [withoutFolder(({ under: _, ...rest }) => rest)],
    });
  if (ending)
    drafts.push({
      ...about,
      id: 'sample.ending',
      message: `Names in ${name} are those of files that end in "${ending}".`,
      confidence: proof ? 0.95 : 0.5,
      evidence: [proof ?? 'No name has an ending, and no sample file could be looked at.'],
      alternatives: endings.filter((other) => other !== ending).map(withEnding),
    });
  return drafts;
}

function withoutFolder(change: (form: PathForm) => PathForm): Draft['alternatives'][number] {
  return otherForm('paths start from the folder of this file', (form) =>
    form.kind === 'path' ? change(form) : form,
  );
}

function withEnding(ending: string): Draft['alternatives'][number] {
  return otherForm(`files that end in ${ending}`, (form) =>
    form.kind === 'path' ? { ...form, ending } : form,
  );
}
