import { namesLoop } from '../../../trade/loopWords';
import { turningWords } from '../../../trade/turningWords';
import type { Column } from '../values/column';
import type { InferredTarget } from '../words/meaningRules';
import { isBare, meaningsOf } from '../words/meanings';
import { speaksOfLoop } from './toldPositions';

/** What two bare names of places in a sample are where a sentence names both with a loop. */
const ofLoops: Readonly<Record<InferredTarget, InferredTarget>> = {
  offset: 'loop_start',
  end: 'loop_end',
  sample_length: 'loop_length',
};
/** Longer sentences speak of several things. */
const longest = 200;
const negation = new RegExp(turningWords('not', 'none'), 'iu');
/** What says that loops are somewhere else, or what else the two are; from memory. */
const elsewhere =
  /(?<!\p{L})(?:files?|wavs?|headers?|chunks?|dateien|datei|fichiers?|archivos?|trim\p{L}*|beschnitten|geschnitten|recorte)(?!\p{L})/iu;
/** `Loops start and end …` names nothing. */
const loopsDo = /(?<!\p{L})loops? (?:always |all |must |should )?(?:start|end|begin)s?(?!\p{L})/iu;
const between = String.raw`["\u201c\u201d']?\s*[,/]\s*["\u201c\u201d']?`;

/**
 * The places of regions with bare names such as `start` and `end` that are the points of a loop, by what the text says of them:
 * `a voice loops from start to end`. None where other places are those of loops by their names.
 */
export function toldLoopPoints(
  clauses: readonly { text: string }[],
  columns: readonly Column[],
): ReadonlyMap<Column, { text: string; meaning: InferredTarget }> {
  const found = new Map<Column, { text: string; meaning: InferredTarget }>();
  const said = clauses.filter(({ text }) => saysLoop(text));
  if (said.length === 0 || columns.some(speaksOfLoop)) return found;
  const points = columns.flatMap((column) => {
    const meaning = loopPointOf(column);
    const name = column.at.replace(/^.*[/@]/, '');
    return meaning === undefined ? [] : [{ column, meaning, name }];
  });
  const starts = points.filter(({ meaning }) => meaning === 'loop_start');
  for (const start of starts) {
    const ends = points.filter(
      ({ column, meaning }) => meaning !== 'loop_start' && column.level === start.column.level,
    );
    for (const end of ends) {
      const text = said.map((one) => one.text).find((one) => namesBoth(one, start.name, end.name));
      if (text === undefined || starts.length > 1 || ends.length > 1) continue;
      found.set(start.column, { text, meaning: 'loop_start' });
      found.set(end.column, { text, meaning: end.meaning });
    }
  }
  return found;
}

function saysLoop(text: string): boolean {
  return (
    text.length <= longest &&
    namesLoop(text) &&
    !negation.test(text) &&
    !elsewhere.test(text) &&
    !loopsDo.test(text)
  );
}

function loopPointOf({ own, listed }: Column): InferredTarget | undefined {
  if (own.length !== 1 || listed || !isBare(own)) return undefined;
  const meanings = meaningsOf(own, [], []);
  // A short name is a key's as well, and has to be quoted.
  const known = isShort(own[0]) ? meanings : meanings.slice(0, 1);
  return known.flatMap(({ target }) => ofLoops[target] ?? [])[0];
}

/** Whether a part of a sentence that speaks of a loop names both places. */
function namesBoth(text: string, start: string, end: string): boolean {
  const joined = text.replace(new RegExp(`(${start})${between}(?=${end})`, 'iu'), '$1 ');
  return joined.split(/,\s/).some((part) => namesLoop(part) && names(part, start) && names(part, end));
}

/** Whether a text has a name as a word; a short one, which may be any word, in quotes. */
function names(text: string, name: string): boolean {
  const sign = isShort(name) ? String.raw`["\u201c\u201d'\u2018\u2019\u201e@]` : '';
  const pattern = new RegExp(String.raw`(?<![\p{L}\p{N}])${sign}${name}(?![\p{L}\p{N}])`, 'iu');
  return /^[\p{L}\p{N}]+$/u.test(name) && pattern.test(text);
}

function isShort(name = ''): boolean {
  return name.length < 3 || /^(?:from|von|bis|out|aus)$/iu.test(name);
}
