import { namesLoop } from '../../../trade/loopWords';
import { saysOf } from '../../../trade/phrases/toldWords';
import { rangeWords } from '../../../trade/rangeWords';
import { scaleOf } from '../../../trade/statements/statedScales';
import type { Column } from '../values/column';
import type { InferredTarget } from '../words/meaningRules';
import { isBare, meaningsOf } from '../words/meanings';
import { conceptsOf } from '../words/tradeWords';

/** Longer sentences speak of several things. */
const mostWords = 14;
const joint = String.raw`(?:[,/&+]|(?<!\p{L})(?:and|und|et|y|e|en|och|og|i)(?!\p{L}))`;
/** What stands behind the last of some names that a sentence tells the unit of. */
const behind = String.raw`(?:[,/&+:=([]|(?:and|und|et|y|e|en|och|og|i|in|is|are|as|given|counted|als|ist|sind|est|sont|es|son|sono)(?!\p{L}))`;

/**
 * The place in a sample that a bare name such as `start` gives where a sentence tells its unit among others: `loop points and start in
 * frames`. `hasLoops`: other places give the loop, so that the sentence may speak of that too.
 */
export function toldPosition(
  own: readonly string[],
  text: string,
  hasLoops: boolean,
): InferredTarget | undefined {
  if (!isBare(own) || (namesLoop(text) && !hasLoops)) return undefined;
  const target = meaningsOf(own, [], []).find(
    (one) => one.target === 'offset' || one.target === 'end',
  )?.target;
  const [name] = own;
  if (target === undefined || name === undefined || own.length > 1 || smallWord.test(name)) return undefined;
  if (saysOf(text, 'keys') || saysOf(text, 'velocities')) return undefined;
  if ((text.match(/[\p{L}\p{N}]+/gu) ?? []).length > mostWords) return undefined;
  const unit = scaleOf(text, ['loop'])?.unit;
  if (unit !== 'frames' && unit !== 's' && unit !== 'ms') return undefined;
  const listed = new RegExp(String.raw`(?:^|${joint})\s*(?:the\s)?${name}\s*${behind}`, 'iu');
  return listed.test(text) ? target : undefined;
}

const smallWord = new RegExp(`^(?:.{1,2}|from|von|${rangeWords})$`, 'iu');

/** Whether the name of a place speaks of a loop. */
export function speaksOfLoop({ own, around }: Column): boolean {
  return [...own, ...around.flat()].some((word) => conceptsOf(word)?.concepts.includes('loop') === true);
}
