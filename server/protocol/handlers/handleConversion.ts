import { notesPage } from '../../features/notesPage';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { folderOf, isAbsolutePath, nameOf, relativePath } from '../../model/paths';
import { Source } from '../../model/text/source';
import { foldNotes, lineNotes } from '../../model/writing/lineNotes';
import { placeNotes } from '../../model/writing/placeNotes';
import { parseVocabulary } from '../../vocabulary/parseVocabulary';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { vocabularyNotation } from '../../vocabulary/vocabularyNotation';
import { filesBelow } from '../../workspace/files/instrumentFiles';
import { readWholeText } from '../../workspace/files/readWhole';
import { assumedInVocabulary } from '../../workspace/notations/assumedInVocabulary';
import { notations } from '../../workspace/notations/notationOf';
import type { VocabularySource } from '../../workspace/notations/notationOutput';
import { notationOutput } from '../../workspace/notations/notationOutput';
import { stopIfCancelled } from '../cancellation';
import { rangeOf } from '../conversion/positions';
import { pathOfUri, uriOfPath } from '../conversion/uris';
import type { ConversionMark, ConvertParams } from '../requests/conversionRequests';
import { ConvertRequest, VocabulariesRequest } from '../requests/conversionRequests';
import type { ServerContext } from '../serverContext';

/** Findings of one document that an editor shows; more of them help nobody. */
const mostMarks = 1000;

/** Answers the requests about conversion. */
export function handleConversion(server: ServerContext): void {
  const { connection, documents } = server;

  connection.onRequest(ConvertRequest.type, async ({ uri, to, directives = 'keep', folderUri }, token) => {
    const reading = await documents.reading(uri);
    stopIfCancelled(token);
    if (!reading) return { problem: 'This document holds no instrument that can be read.' };
    const target = await targetOf(server, to);
    if ('problem' in target) return target;
    const { instrument, folder, vocabulary, document } = reading;
    const targetFolder = folderUri === undefined ? folder : pathOfUri(folderUri);
    const name = document.path === undefined ? 'a text that is not saved' : nameOf(document.path);
    const source: VocabularySource = {
      instrument,
      vocabulary: vocabulary?.vocabulary,
      ...(vocabulary && { notes: assumedInVocabulary(vocabulary) }),
      name,
      folder,
    };
    const output = notationOutput(target.notation, documents.samples);
    const { files, accounts } = await output.write(
      [source],
      { directives, folder: targetFolder },
      documents.files,
    );
    stopIfCancelled(token);
    const [[, text]] = files;
    if (typeof text !== 'string') return { problem: 'This is written to a file, not into the editor.' };
    const [{ notes, kept }] = accounts;
    const lines = lineNotes(instrument, notes);
    return {
      text,
      kept,
      notes: lines,
      marks: marksOf(instrument, notes, target.notation, text),
      page: notesPage(`Conversion notes for ${name}`, lines, kept),
      hasRelativePaths: hasRelativePaths(instrument),
    };
  });

  connection.onRequest(VocabulariesRequest.type, async ({ uri }, token) => {
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

async function targetOf(
  { documents }: ServerContext,
  to: ConvertParams['to'],
): Promise<{ notation: Notation } | { problem: string }> {
  if (typeof to === 'string') {
    const notation = Object.hasOwn(notations, to) ? notations[to] : undefined;
    return notation ? { notation } : { problem: `There is no notation "${to}".` };
  }
  const path = pathOfUri(to.vocabularyUri);
  if (path === undefined) return { problem: 'The vocabulary is not in a file.' };
  const text = documents.openDocument(path)?.getText() ?? (await savedText(documents.files, path));
  if (text === undefined) return { problem: `${nameOf(path)} cannot be read.` };
  const { vocabulary, problems } = parseVocabulary(text);
  if (vocabulary) return { notation: vocabularyNotation(vocabulary) };
  return { problem: `${nameOf(path)} holds no vocabulary: ${problems[0]?.message ?? 'it is empty.'}` };
}

async function savedText(
  files: ServerContext['documents']['files'],
  path: string,
): Promise<string | undefined> {
  const whole = await readWholeText(files, path);
  return whole.kind === 'text' ? whole.text : undefined;
}

function marksOf(
  instrument: Instrument,
  notes: readonly ConversionNote[],
  notation: Notation,
  text: string,
): ConversionMark[] {
  const isPlaced = notes.every(({ written }) => written);
  const placed = isPlaced ? notes : placeNotes(instrument, notation.read(text, { path: '' }), notes);
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
