import type { CodeLens } from 'vscode-languageserver';
import { nameOf } from '../../model/paths';
import { counted } from '../../model/wording/counted';
import { doubtfulDecisions, vocabularyFile } from '../../workspace/notations/vocabularyFindings';
import type { DocumentReading } from '../../workspace/openDocument';
import { rangeOf } from '../conversion/positions';
import { uriOfPath } from '../conversion/uris';
import type { ServerContext } from '../serverContext';
import { tellingLens } from './tellingLens';

/** What stands above the outermost element of XML in a vocabulary: how it is read, and the way to keep that in a file. */
export function vocabularyLenses(server: ServerContext, reading: DocumentReading): CodeLens[] {
  const { vocabulary: inForce, instrument, document } = reading;
  if (!inForce) return [];
  const source = instrument.sources[0];
  const at = Math.max(0, source.text.search(/<[\p{L}_]/u));
  const range = rangeOf(source, { start: at, end: at });
  const { name } = inForce.vocabulary;
  const doubts = doubtfulDecisions(inForce).length;
  const open = doubts === 0 ? '' : `, ${counted(doubts, 'point')} open`;
  const { savedIn } = inForce;
  const title =
    savedIn === undefined
      ? `Read as "${name}", worked out from this text${open}`
      : `Read as "${name}" by ${nameOf(savedIn)}${open}`;
  const lenses: CodeLens[] = [
    savedIn !== undefined && server.openCommand !== undefined
      ? { range, command: { title, command: server.openCommand, arguments: [uriOfPath(savedIn)] } }
      : tellingLens(range, title),
  ];
  const file = vocabularyFile(
    inForce,
    { ...inForce.vocabulary, unsettled: [] },
    server.documents.saveFolder(document.path),
  );
  const command = server.saveVocabularyCommand;
  if (command !== undefined && file && (savedIn === undefined || doubts > 0)) {
    const keep =
      doubts === 0 ? 'Keep this in a vocabulary file' : 'Keep all as it is read now in a vocabulary file';
    lenses.push({
      range,
      command: { title: keep, command, arguments: [uriOfPath(file.path), file.text, file.replaces] },
    });
  }
  return lenses;
}
