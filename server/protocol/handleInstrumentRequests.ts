import { buildMapScene } from '../map/scene';
import type { ConversionNote } from '../model/notes';
import type { Source } from '../model/source';
import { notations } from '../workspace/notationOf';
import { stopIfCancelled } from './cancellation';
import type { LanguageServer } from './languageServer';
import type { LineNote } from './requests';
import { ConvertRequest, KeyboardMapRequest } from './requests';

/** Answers requests of our own: keyboard maps and conversion. */
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
