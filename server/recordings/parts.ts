import type { NameMarks, NameWord } from './nameText';
import { markOf, wordsOfPath } from './nameText';
import { nameStem } from './noteNames';
import type { Recording } from './recording';
import type { Root } from './roots';

/** Words that so many of the files have say nothing of a single one (our choice). */
const sharedBy = 0.9;

/** What the path of a recording says beside its note. */
export interface NamePart extends NameMarks {
  /** Words that are no marks and are not in all names, joined. */
  rest: string;
  /** Numbers among them, in their order. */
  numbers: readonly number[];
  words: readonly NameWord[];
}

/** What the paths of recordings say, by position. */
export function partsOf(recordings: readonly Recording[], roots: readonly (Root | undefined)[]): NamePart[] {
  const words = recordings.map(({ path }, at) => wordsOfPath(withoutNote(path, roots[at]?.noteText)));
  const counts = new Map<string, number>();
  for (const list of words)
    for (const word of new Set(list.map(nameOf))) counts.set(word, (counts.get(word) ?? 0) + 1);
  const isShared = (word: NameWord) =>
    recordings.length > 1 && (counts.get(nameOf(word)) ?? 0) >= sharedBy * recordings.length;
  return words.map((list) => {
    const part: NamePart = { rest: '', numbers: [], words: list };
    const rest: string[] = [];
    const numbers: number[] = [];
    for (const word of list) {
      if (isShared(word)) continue;
      const mark = markOf(word);
      if (mark) Object.assign(part, mark);
      else if (/^\d+$/.test(word.plain)) numbers.push(Number(word.plain));
      else rest.push(word.plain);
    }
    return { ...part, rest: rest.join(' '), numbers };
  });
}

function nameOf({ plain, isFolder }: NameWord): string {
  return `${isFolder ? '/' : ''}${plain}`;
}

function withoutNote(path: string, note: string | undefined): string {
  if (note === undefined) return path;
  const stem = nameStem(path);
  const at = stem.indexOf(note);
  const from = path.lastIndexOf(stem);
  return at < 0 ? path : `${path.slice(0, from)}${stem.slice(0, at)} ${stem.slice(at + note.length)}.wav`;
}
