import { movedPaths } from '../../features/rename/renameFiles';
import { editedText } from '../../model/editing/changedInstrument';
import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { OutputError } from '../../model/output';
import { folderOf, relativePath } from '../../model/paths';
import type { PackPlan } from './packPlan';
import { packRoot } from './packPlan';
import type { PackText } from './packSource';

/**
 * The texts of an instrument as they stand in the pack, by their paths there: every path leads to the packed file, relative
 * and with `/`. Fails with an {@link OutputError} where a path cannot be written so.
 */
export function packTexts(
  { instrument, notation, notationOf }: PackText,
  plan: PackPlan,
): Map<string, string> {
  const { moves, actual } = plan;
  const done = edits({ instrument, notation, notationOf }, plan);
  // What variables and includes keep from being written is written out.
  const written =
    done.problem === undefined ? undefined : notation.write(instrument, { directives: 'inline' });
  if (written) {
    const { path } = instrument.sources[0];
    const inlined = notation.read(written.text, { path });
    const again = edits({ instrument: inlined, notation, notationOf }, plan);
    if (again.problem !== undefined || !isSame(instrument, inlined))
      throw new OutputError(`it cannot be packed: ${done.problem}`);
    return new Map([[placeIn(moves.after(path)), editedText(written.text, again.edits)]]);
  }
  return new Map(
    instrument.sources.map(({ path, text }, source) => [
      placeIn(moves.after(actual(path))),
      editedText(
        text,
        done.edits.filter((edit) => edit.source === source),
      ),
    ]),
  );
}

function edits(
  { instrument, notation, notationOf }: PackText,
  { moves, actual }: PackPlan,
): { edits: TextEdit[]; problem: string | undefined } {
  const { paths, problems } = movedPaths({ notation, notationOf, instrument, moves, actual });
  const found = new Map<string, TextEdit>();
  const root = `${folderOf(moves.after(instrument.sources[0].path))}/`;
  for (const span of paths) {
    const raw = instrument.sources[span.source].text.slice(span.start, span.end);
    const moved = span.newText ?? raw;
    const text = (moved.startsWith(root) ? moved.slice(root.length) : moved).replaceAll('\\', '/');
    if (text !== raw) found.set(`${span.source} ${span.start}`, replacing(span, text));
  }
  return { edits: [...found.values()], problem: problems[0] };
}

/** Whether each region still has the sample that it had. */
function isSame(one: Instrument, other: Instrument): boolean {
  return (
    one.regions.length === other.regions.length &&
    one.regions.every((region, at) => one.samplePath(region) === other.samplePath(other.regions[at]))
  );
}

/** The path in the pack of a path below its root. */
function placeIn(path: string): string {
  return relativePath(packRoot, path);
}
