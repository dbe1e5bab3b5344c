import type { ConversionNote } from '../../model/notes';
import { nameOf, relativePath } from '../../model/paths';
import type { Span } from '../../model/text/span';
import { counted } from '../../model/wording/counted';
import type { FoundSample } from './sampleFinder';

/** So many samples have notes of their own. */
const mostNotes = 50;

/** What a person may choose for a sample name of a table that no single file bears exactly. */
export interface SampleChoice {
  /** The name as the table gives it. */
  name: string;
  /** Files that it can mean, as paths from the output folder, the likeliest first. */
  choices: string[];
  /** The one of {@link choices} that is taken; `undefined` where the name is kept as it is. */
  taken: string | undefined;
}

/** The question that a name leaves open, and a note on what was taken; `undefined` where the name is plain. */
export function questionOf(
  name: string,
  { paths, match, nearest }: FoundSample,
  outputFolder: string,
): { question: SampleChoice; message: string } | undefined {
  const shown = (path: string) => relativePath(outputFolder, path);
  const choices = [...new Set([...paths, ...nearest])].map(shown);
  const [first] = paths;
  if (first === undefined) {
    if (choices.length === 0) return undefined;
    const message = `No file is named "${nameOf(name)}"; the nearest names are ${choices.join(', ')}. The name is kept as it is.`;
    return { question: { name, choices, taken: undefined }, message };
  }
  const question = { name, choices, taken: shown(first) };
  if (match === 'nearest' || match === 'characters') {
    const how = match === 'nearest' ? 'the nearest name' : 'the same apart from spaces, signs or accents';
    const others = choices.length > 1 ? ` Others are ${choices.slice(1).join(', ')}.` : '';
    const message = `No file is named "${nameOf(name)}"; ${shown(first)} was taken, ${how}.${others}`;
    return { question, message };
  }
  if (paths.length === 1) return undefined;
  const others = choices.slice(1, 6).join(', ');
  const message = `There are ${paths.length} files named "${nameOf(name)}"; ${shown(first)} was taken. Others are ${others}.`;
  return { question, message };
}

/** Notes on samples, each at its place; of very many the rest is counted. */
export function notesOnSamples(
  messages: readonly { name: string; message: string }[],
  placeOf: (name: string) => Span,
): ConversionNote[] {
  const notes = messages
    .slice(0, mostNotes)
    .map(({ name, message }): ConversionNote => ({ kind: 'assumed', ...placeOf(name), message }));
  const more = messages.length - mostNotes;
  const last = notes.at(-1);
  if (last && more > 0) last.message += ` (The like holds for ${counted(more, 'more sample')}.)`;
  return notes;
}
