import { isInstrumentXmlFileName, isSfzFileName } from '../../model/fileNames';
import type { Notation } from '../../model/notation';
import { detect } from './detect';
import { notationOfLanguage } from './notationOf';

/**
 * How an open document is read: by its language, or for plain XML by its content. `undefined` for a document that
 * holds no instrument and is left alone. A document in another language counts where its name says what it is.
 */
export function notationOfDocument(languageId: string, path: string, text: string): Notation | undefined {
  const settled = notationOfLanguage.get(languageId);
  if (settled) return settled;
  if (languageId !== 'xml' && !isSfzFileName(path) && !isInstrumentXmlFileName(path)) return undefined;
  const detected = detect(path, text);
  if (detected.kind !== 'notation') return undefined;
  return languageId === 'xml' && detected.notation.format !== 'xml' ? undefined : detected.notation;
}

/** How a file is read that is no open document, by its name and content alone. */
export function notationOfFile(path: string, text: string): Notation | undefined {
  const detected = detect(path, text);
  return detected.kind === 'notation' ? detected.notation : undefined;
}
