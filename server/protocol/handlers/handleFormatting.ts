import type { FormattingOptions, TextEdit } from 'vscode-languageserver';
import { formatDocument, formatOnType, formatRange } from '../../features/format';
import type { ReadDocument } from '../../features/readDocument';
import { mainSource } from '../../features/readDocument';
import type { TextEdit as ModelEdit } from '../../model/finding';
import type { FormatStyle } from '../../model/formatStyle';
import { usualFormatStyle } from '../../model/formatStyle';
import { stopIfCancelled } from '../cancellation';
import { offsetOf, rangeOf } from '../conversion/positions';
import type { ServerContext } from '../serverContext';

/** Characters after which a line is laid out while it is typed. */
export const formattedOnType = { firstTriggerCharacter: '\n', moreTriggerCharacter: ['>'] };

/** Answers how documents are to be laid out. */
export function handleFormatting(server: ServerContext): void {
  const { connection } = server;

  connection.onDocumentFormatting(async ({ textDocument: { uri }, options }, token) => {
    const read = await readToFormat(server, uri, options);
    if (!read) return null;
    stopIfCancelled(token);
    return protocolEdits(read.document, formatDocument(read.document, read.style));
  });

  connection.onDocumentRangeFormatting(async ({ textDocument: { uri }, range, options }, token) => {
    const read = await readToFormat(server, uri, options);
    if (!read) return null;
    stopIfCancelled(token);
    const source = mainSource(read.document);
    const [start, end] = [offsetOf(source, range.start), offsetOf(source, range.end)];
    return protocolEdits(read.document, formatRange(read.document, start, end, read.style));
  });

  connection.onDocumentOnTypeFormatting(async ({ textDocument: { uri }, position, ch, options }, token) => {
    const read = await readToFormat(server, uri, options);
    if (!read) return null;
    stopIfCancelled(token);
    const offset = offsetOf(mainSource(read.document), position);
    return protocolEdits(read.document, formatOnType(read.document, offset, ch, read.style));
  });
}

async function readToFormat(
  server: ServerContext,
  uri: string,
  { insertSpaces, tabSize }: FormattingOptions,
): Promise<{ document: ReadDocument; style: FormatStyle } | undefined> {
  const reading = await server.documents.reading(uri);
  if (!reading) return undefined;
  const document = { ...reading, samples: server.documents.samples };
  const indentation = insertSpaces ? ' '.repeat(Math.max(1, Math.min(tabSize, 16))) : '\t';
  const set = await server.settings.format(uri, reading.document.path);
  return { document, style: { ...usualFormatStyle, ...set, indentation } };
}

function protocolEdits(document: ReadDocument, edits: readonly ModelEdit[]): TextEdit[] {
  const source = mainSource(document);
  return edits.map((edit) => ({ range: rangeOf(source, edit), newText: edit.newText }));
}
