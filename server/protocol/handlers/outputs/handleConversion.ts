import { notesPage } from '../../../features/notesPage';
import type { Instrument } from '../../../model/instrument';
import type { Notation } from '../../../model/notation';
import type { ConversionNote } from '../../../model/notes';
import { OutputError } from '../../../model/output';
import { folderOf, isAbsolutePath, nameOf, relativePath } from '../../../model/paths';
import type { Steps } from '../../../model/steps';
import { Source } from '../../../model/text/source';
import { foldNotes, lineNotes } from '../../../model/writing/lineNotes';
import { placeNotes } from '../../../model/writing/placeNotes';
import { vocabularyEnding } from '../../../vocabulary/vocabulary';
import { filesBelow } from '../../../workspace/files/instrumentFiles';
import { assumedInVocabulary } from '../../../workspace/notations/assumedInVocabulary';
import { doubtsOfXml } from '../../../workspace/notations/doubtsOfReading';
import type { VocabularySource } from '../../../workspace/notations/notationOutput';
import { readTableWithSamples } from '../../../workspace/readTableWithSamples';
import { takeSteps } from '../../../workspace/takeSteps';
import type { AnswerRequest } from '../../answerLater';
import { stopIfCancelled } from '../../cancellation';
import { rangeOf } from '../../conversion/positions';
import { pathOfUri, uriOfPath } from '../../conversion/uris';
import type { ConversionMark, ConvertParams } from '../../requests/conversionRequests';
import { ConvertRequest, VocabulariesRequest } from '../../requests/conversionRequests';
import type { ServerContext } from '../../serverContext';
import { conversionTarget } from './conversionTarget';

/** Findings of one document that an editor shows; more of them help nobody. */
const mostMarks = 1000;

/** Answers the requests about conversion. */
export function handleConversion(answer: AnswerRequest, server: ServerContext): void {
  const { documents } = server;

  answer(ConvertRequest.type, async ({ to, directives = 'keep', ...params }, token) => {
    const target = await conversionTarget(server, to);
    if ('problem' in target) return target;
    const targetFolder = params.folderUri === undefined ? undefined : pathOfUri(params.folderUri);
    const source = await sourceOf(server, params, targetFolder);
    stopIfCancelled(token);
    if ('problem' in source) return source;
    const { instrument, name } = source;
    const folder = targetFolder ?? source.folder;
    try {
      const { files, accounts } = await target.output.write(
        [source],
        { directives, ...(folder !== undefined && { folder }) },
        documents.files,
      );
      stopIfCancelled(token);
      const [[, text]] = files;
      if (typeof text !== 'string') return { problem: 'This is written to a file, not into the editor.' };
      const [{ notes, kept }] = accounts;
      const lines = lineNotes(instrument, notes);
      const marks = await takeSteps(marksOf(instrument, notes, target.notation, text), () =>
        stopIfCancelled(token),
      );
      return {
        text,
        kept,
        notes: lines,
        marks,
        page: notesPage(`Conversion notes for ${name || 'the table'}`, lines, kept),
        format: target.format,
        missingFacts: target.missingFacts,
        hasRelativePaths: hasRelativePaths(instrument),
      };
    } catch (error) {
      if (error instanceof OutputError) return { problem: `Nothing was converted: ${error.message}.` };
      throw error;
    }
  });

  answer(VocabulariesRequest.type, async ({ uri }, token) => {
    const path = pathOfUri(uri);
    const below = await filesBelow(documents.files, server.folders, (name) =>
      name.endsWith(vocabularyEnding),
    );
    stopIfCancelled(token);
    const around = path === undefined ? [] : await documents.notations.vocabularies.around(folderOf(path));
    const paths = new Set([...around.map((one) => one.path), ...below]);
    return [...paths].sort().map((one) => {
      const folder = server.folders.find((open) => one.startsWith(`${open}/`));
      return {
        uri: documents.openDocument(one)?.uri ?? uriOfPath(one),
        path: folder === undefined ? one : relativePath(folder, one),
      };
    });
  });
}

/** The instrument of a document, or of a table whose samples are looked up in its folder; or why there is none. */
async function sourceOf(
  { documents, settings }: ServerContext,
  { uri, table }: Pick<ConvertParams, 'uri' | 'table'>,
  targetFolder: string | undefined,
): Promise<VocabularySource | { problem: string }> {
  if (table !== undefined) {
    const path = pathOfUri(uri);
    const folder = path === undefined ? '' : folderOf(path);
    const middleC = await settings.middleC(uri, path);
    const { problem, instrument, notes } = await readTableWithSamples(documents.files, table, {
      path: 'table',
      ...(middleC !== 'auto' && { middleC }),
      samplesFolder: folder,
      outputFolder: targetFolder ?? folder,
    });
    if (problem !== undefined) return { problem: `No zone table was found: ${problem}` };
    return { instrument, notes, name: '', folder: targetFolder ?? folder };
  }
  const reading = await documents.reading(uri);
  if (!reading) return { problem: 'This document holds no instrument that can be read.' };
  const { instrument, folder, vocabulary, document } = reading;
  return {
    instrument,
    vocabulary: vocabulary?.vocabulary,
    ...(vocabulary && {
      notes: [
        ...assumedInVocabulary(vocabulary),
        ...(vocabulary.inferred ? await takeSteps(doubtsOfXml(instrument)) : []),
      ],
    }),
    name: document.path === undefined ? 'a text that is not saved' : nameOf(document.path),
    folder,
  };
}

function* marksOf(
  instrument: Instrument,
  notes: readonly ConversionNote[],
  notation: Notation,
  text: string,
): Steps<ConversionMark[]> {
  const isPlaced = notes.every(({ written }) => written);
  const placed = isPlaced
    ? notes
    : placeNotes(instrument, yield* notation.readInSteps(text, { path: '' }), notes);
  const source = new Source('', text);
  const marks: ConversionMark[] = [];
  const rest: ConversionNote[] = [];
  for (const note of placed) {
    const { written, kind, message } = note;
    if (written) marks.push({ range: rangeOf(source, written), kind, message });
    else rest.push(note);
  }
  const start = { line: 0, character: 0 };
  for (const { note, count, lines } of foldNotes(lineNotes(instrument, rest))) {
    const message = count === 1 ? note.message : `${note.message} (${count} times, in lines ${lines})`;
    marks.push({ range: { start, end: start }, kind: note.kind, message });
  }
  return marks.slice(0, mostMarks);
}

function hasRelativePaths(instrument: Instrument): boolean {
  return instrument.regions.some((region) => {
    const path = instrument.samplePath(region);
    return path !== undefined && !path.startsWith('*') && !isAbsolutePath(path);
  });
}
