import { convertTable } from '../features/convertTable';
import { buildMapScene } from '../map/scene';
import type { ConversionNote } from '../model/notes';
import { folderOf } from '../model/paths';
import { Source } from '../model/source';
import { looksLikeZoneTable } from '../table/looksLikeZoneTable';
import { notationOfDocument, notations } from '../workspace/notationOf';
import { stopIfCancelled } from './cancellation';
import type { LanguageServer } from './languageServer';
import { offsetOf, rangeOf } from './positions';
import type { LineNote } from './requests';
import { ConvertRequest, ConvertTableRequest, KeyboardMapRequest, LooksLikeTableRequest } from './requests';

/** Answers the requests of our own: keyboard maps, conversion, copied tables. */
export function handleInstrumentRequests(server: LanguageServer): void {
  const { connection, documents } = server;

  connection.onRequest(KeyboardMapRequest.type, async ({ uri }, token) => {
    server.showsMaps = true;
    const reading = await documents.reading(uri);
    stopIfCancelled(token);
    if (!reading) return { scene: null, reason: 'This document holds no instrument.' };
    return { scene: buildMapScene(reading.instrument) };
  });

  connection.onRequest(ConvertRequest.type, async ({ uri, to }, token) => {
    const notation = Object.hasOwn(notations, to) ? notations[to] : undefined;
    const reading = await documents.reading(uri);
    if (!reading || !notation) return null;
    stopIfCancelled(token);
    const { text, notes } = notation.write(reading.instrument);
    return { text, notes: lineNotes(notes, (source) => reading.instrument.sources[source]) };
  });

  connection.onRequest(LooksLikeTableRequest.type, ({ text }) => looksLikeZoneTable(text));

  connection.onRequest(ConvertTableRequest.type, async ({ uri, range, text: table, middleC }, token) => {
    const document = server.openDocument(uri);
    if (!document) return null;
    const { path } = document;
    const text = document.getText();
    const notation = notationOfDocument(document.languageId, path ?? '', text);
    if (!notation) return null;
    const source = new Source(path ?? '', text);
    const converted = await convertTable(
      documents.files,
      documents.includes,
      table,
      {
        text,
        start: offsetOf(source, range.start),
        end: offsetOf(source, range.end),
        notation,
        path,
        folder: path === undefined ? undefined : folderOf(path),
      },
      middleC ?? (await server.settings.middleC(uri, path)),
    );
    stopIfCancelled(token);
    const { insertText, problem, edits, regionCount } = converted;
    return {
      notes: lineNotes(converted.notes, () => converted.table),
      regionCount,
      ...(insertText !== undefined && { insertText }),
      ...(problem === undefined
        ? { edits: edits.map((edit) => ({ range: rangeOf(source, edit), newText: edit.newText })) }
        : { problem }),
    };
  });
}

function lineNotes(
  notes: readonly ConversionNote[],
  sourceOf: (source: number) => Source | undefined,
): LineNote[] {
  return notes.map(({ kind, message, source, start }) => ({
    kind,
    message,
    line: sourceOf(source)?.positionAt(start).line ?? 1,
  }));
}
