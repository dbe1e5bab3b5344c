import type { TextEdit } from '../finding';
import type { Instrument } from '../instrument';
import type { Notation } from '../notation';
import type { InSomeFile } from '../text/span';

/** A text with edits made; they must not overlap. */
export function editedText(text: string, edits: readonly InSomeFile<TextEdit>[]): string {
  let at = 0;
  let edited = '';
  for (const { start, end, newText } of [...edits].sort((a, b) => a.start - b.start || a.end - b.end)) {
    edited += text.slice(at, start) + newText;
    at = end;
  }
  return edited + text.slice(at);
}

/**
 * Reads an instrument as it would be with edits in any of its files, so that a change can be judged before it is made.
 * `moved` says under which path a file is found then.
 */
export function readEdited(
  notation: Pick<Notation, 'read'>,
  { sources }: Instrument,
  edits: readonly TextEdit[],
  moved: (path: string) => string = (path) => path,
): Instrument {
  const texts = new Map(
    sources.map(({ path, text }, source) => [
      moved(path),
      editedText(
        text,
        edits.filter((edit) => edit.source === source),
      ),
    ]),
  );
  const path = moved(sources[0]?.path ?? '');
  return notation.read(texts.get(path) ?? '', {
    path,
    include: (included) => {
      const text = texts.get(included);
      return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
    },
  });
}

/**
 * The first parameter in which two readings of one instrument differ, apart from those whose value is meant to, or −1;
 * 0 as well where they differ in the number of headers or parameters.
 */
export function firstDifference(
  before: Instrument,
  after: Instrument,
  isMeant: (parameter: number) => boolean,
): number {
  if (before.headers.count !== after.headers.count || before.parameters.count !== after.parameters.count)
    return 0;
  for (let parameter = 0; parameter < before.parameters.count; parameter++) {
    if (before.canonicalName(parameter) !== after.canonicalName(parameter)) return parameter;
    if (isMeant(parameter)) continue;
    if (before.valueText(parameter) !== after.valueText(parameter)) return parameter;
  }
  return -1;
}
