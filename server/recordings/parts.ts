import type { NameMarks, NameWord } from './nameText';
import { markOf, markOfTwo, velocityRangeIn, wordsOfPath } from './nameText';
import type { Recording } from './recording';
import type { Root } from './root';

/** Words that so many of the files have say nothing of a single one (our choice). */
const sharedBy = 0.9;

/** What one place of paths says: the name of a file, or the name of the folder at one depth. */
export interface PathPlace {
  /** Words that are no marks and are not in all names, joined; empty where there are none. */
  unknown: string;
  /** The same as they are written. */
  shown: string;
  /** The kinds of marks that stand there. */
  marks: ReadonlySet<string>;
}

/** What the path of a recording says beside its note. */
export interface NamePart extends NameMarks {
  /** The unknown words of all places, joined. */
  rest: string;
  /** Numbers among them, in their order. */
  numbers: readonly number[];
  words: readonly NameWord[];
  /** By the depth of the folder; −1 is the file's name. */
  places: ReadonlyMap<number, PathPlace>;
}

/** What the paths of recordings say, by position. */
export function partsOf(recordings: readonly Recording[], roots: readonly (Root | undefined)[]): NamePart[] {
  const split = recordings.map(({ path }, at) => {
    const withoutNote = cutNote(path, roots[at]);
    const range = velocityRangeIn(withoutNote);
    return { words: wordsOfPath(range?.rest ?? withoutNote), velocities: range?.velocities };
  });
  const counts = new Map<string, number>();
  for (const { words } of split)
    for (const word of new Set(words.map(nameOf))) counts.set(word, (counts.get(word) ?? 0) + 1);
  const isShared = (word: NameWord) =>
    recordings.length > 1 && (counts.get(nameOf(word)) ?? 0) >= sharedBy * recordings.length;
  return split.map(({ words, velocities }) => partOf(words, isShared, velocities && { velocities }));
}

function partOf(
  words: readonly NameWord[],
  isShared: (word: NameWord) => boolean,
  marked: NameMarks | undefined,
): NamePart {
  const marks: NameMarks = { ...marked };
  const numbers: number[] = [];
  const places = new Map<number, { unknown: NameWord[]; marks: Set<string> }>();
  const told = words.filter((word) => !isShared(word));
  for (let at = 0; at < told.length; at++) {
    const word = told[at];
    const place = places.get(word.folder) ?? { unknown: [], marks: new Set() };
    places.set(word.folder, place);
    const next = told.at(at + 1);
    const two = next && markOfTwo(word, next);
    const mark = two ?? markOf(word);
    if (two) at++;
    if (mark) {
      Object.assign(marks, mark);
      for (const kind of Object.keys(mark)) place.marks.add(kind);
    } else if (/^\d+$/.test(word.plain)) numbers.push(Number(word.plain));
    else place.unknown.push(word);
  }
  return {
    ...marks,
    rest: [...places.values()].flatMap(({ unknown }) => unknown.map(({ plain }) => plain)).join(' '),
    numbers,
    words,
    places: new Map(
      [...places].map(([folder, { unknown, marks: kinds }]) => [
        folder,
        {
          unknown: unknown.map(({ plain }) => plain).join(' '),
          shown: unknown.map(({ text }) => text).join(' '),
          marks: kinds,
        },
      ]),
    ),
  };
}

function nameOf({ plain, folder }: NameWord): string {
  return `${folder < 0 ? '' : '/'}${plain}`;
}

function cutNote(path: string, root: Root | undefined): string {
  const note = root?.note;
  return note ? `${path.slice(0, note.start)} ${path.slice(note.start + note.text.length)}` : path;
}
