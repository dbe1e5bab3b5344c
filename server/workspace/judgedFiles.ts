import type { Finding } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Source } from '../model/text/source';
import { analyse } from './analyse';
import type { InstrumentDocuments } from './documents';
import { instrumentFilesBelow } from './files/instrumentFiles';
import { readWholeText } from './files/readWhole';

/** A file with the findings of the instrument that it belongs to. */
export interface JudgedFile {
  source: Source;
  instrument: Instrument;
  findings: readonly Finding[];
  /** The position of the file in the sources that the findings speak of. */
  position: number;
}

/**
 * Judges every instrument in folders: open ones as they stand in the editor, included files as parts of what includes them.
 * `afterEach` is told of the share that is done.
 */
export async function* judgedFiles(
  documents: InstrumentDocuments,
  folders: readonly string[],
  afterEach: (share: number) => void = () => {},
): AsyncGenerator<JudgedFile> {
  const paths = (await instrumentFilesBelow(documents.files, folders)).sort();
  for (const [at, path] of paths.entries()) {
    const judged = await judgedFile(documents, path);
    if (judged) yield judged;
    afterEach((at + 1) / paths.length);
  }
}

/** Judges the file of a path as {@link judgedFiles} does; `undefined` for one that holds no instrument or cannot be judged. */
export async function judgedFile(
  documents: InstrumentDocuments,
  path: string,
): Promise<JudgedFile | undefined> {
  // One that cannot be judged keeps none of the others from it.
  const judgement = await judge(documents, path).catch(() => undefined);
  const position = judgement?.instrument.sources.findIndex((one) => one.path === path) ?? -1;
  const source = judgement?.instrument.sources[position];
  if (!judgement || !source) return undefined;
  return { source, instrument: judgement.instrument, findings: judgement.findings, position };
}

async function judge(documents: InstrumentDocuments, path: string) {
  const open = documents.openDocument(path);
  if (open) return documents.judgement(open.uri);
  const main = await documents.mainOf(path);
  if (main) return main.ownJudgement();
  const whole = await readWholeText(documents.files, path);
  if (whole.kind !== 'text') return undefined;
  const { text } = whole;
  const found = await documents.notations.find({ path, text });
  if (!found) return undefined;
  const severities = await documents.severitiesFor({ uri: undefined, path });
  const source = { path, text, notation: found.notation, ...documents.notations.readingOf(found) };
  return analyse(source, documents.includes, documents.samples, severities);
}
