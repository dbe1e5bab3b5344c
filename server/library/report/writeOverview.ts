import type { Files } from '../../model/files';
import { joinPath } from '../../model/paths';
import { readWholeText } from '../../workspace/files/readWhole';
import type { FileWriter } from '../build/fileWriter';
import type { ResolvedLibrary } from '../libraryInstrument';
import { libraryNote } from './libraryNote';
import { libraryReport } from './libraryReport';
import { reportPage } from './reportPage';

/** Writes the overview of a library that has just been built beside its instruments, as a page and as a note to be published. */
export async function writeOverview(
  files: Files,
  writer: FileWriter,
  library: ResolvedLibrary,
): Promise<void> {
  const report = await libraryReport(files, library, true);
  const texts = { 'report.html': reportPage(report), 'library.md': libraryNote(report) };
  for (const [name, text] of Object.entries(texts)) {
    const path = joinPath(library.output, name);
    const there = await readWholeText(files, path);
    if (there.kind !== 'text' || there.text !== text) await writer.write(path, text);
  }
}
