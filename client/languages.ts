import type { TextDocument } from 'vscode';

/** Languages of documents that can hold an instrument; of plain XML the server serves those that do. */
export const instrumentLanguages = ['sfz', 'instrument-xml', 'xml'] as const;

/** Whether a document is in one of the languages that can hold an instrument. */
export function mayHoldInstrument(document: TextDocument | undefined): document is TextDocument {
  return document !== undefined && (instrumentLanguages as readonly string[]).includes(document.languageId);
}
