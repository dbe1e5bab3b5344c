import type { Diagnostic, TextDocument, Uri } from 'vscode';
import { DiagnosticSeverity, languages, workspace } from 'vscode';
import type { MapRegion, MapScene } from '../../server/map/mapScene';
import type { MapProblem } from './messages';

/** The map shows these in their place by signs of their own. */
const shownAsPlaces = new Set(['key-gap', 'velocity-gap', 'range-overlap']);

/** What the editor shows as wrong in the text of a scene's regions, as far as that text is open. */
export function regionProblems(scene: MapScene, main: Uri): MapProblem[] {
  const all = [...scene.shapes.flatMap(({ regions }) => regions), ...scene.unplaced];
  return scene.sources.flatMap((path, source) => {
    const uri = source === 0 ? main : main.with({ path });
    const document = workspace.textDocuments.find((one) => one.uri.toString() === uri.toString());
    const regions = document ? all.filter((region) => region.source === source) : [];
    return document && regions.length > 0 ? problemsIn(document, regions) : [];
  });
}

function problemsIn(document: TextDocument, regions: MapRegion[]): MapProblem[] {
  regions.sort((one, other) => one.start - other.start);
  return languages.getDiagnostics(document.uri).flatMap((diagnostic) => {
    const severity = severities[diagnostic.severity];
    const offset = document.offsetAt(diagnostic.range.start);
    const at = lastBefore(regions, offset);
    const before: MapRegion | undefined = regions[at];
    // What is wrong with a group header is shown with the first region that stands under it.
    const region: MapRegion | undefined = before && offset <= before.end ? before : regions[at + 1];
    if (!severity || !region || shownAsPlaces.has(codeOf(diagnostic))) return [];
    return { header: region.header, severity, message: diagnostic.message };
  });
}

/** The position of the last region that starts at or before an offset, by halving; −1 where none does. */
function lastBefore(regions: readonly MapRegion[], offset: number): number {
  let low = 0;
  let high = regions.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (regions[middle].start <= offset) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

function codeOf({ code }: Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

const severities: Readonly<Partial<Record<DiagnosticSeverity, MapProblem['severity']>>> = {
  [DiagnosticSeverity.Error]: 'error',
  [DiagnosticSeverity.Warning]: 'warning',
  [DiagnosticSeverity.Information]: 'information',
};
