import { countsDownIn } from '../../../trade/statements/amounts/countsDown';
import type { Column } from '../values/column';
import type { InferredTarget } from '../words/meaningRules';
import { meaningsOf } from '../words/meanings';
import { conceptsOf } from '../words/tradeWords';

/** What is told of a place, with the text that says so. */
interface Told {
  text: string;
  meaning: InferredTarget | undefined;
}

/** A level whose name or explanation says by how much it is turned down. */
export function asAttenuation<One extends Told>(
  own: readonly string[],
  told: One | undefined,
): One | undefined {
  if (told?.meaning !== 'volume') return told;
  const isDown = meaningsOf(own, [], [])[0]?.target === 'attenuation' || countsDownIn([told.text]).length > 0;
  return isDown ? { ...told, meaning: 'attenuation' } : told;
}

/** What is said of a place in an element of loops is of the loop: its `start = first frame`. */
export function ofLoop<One extends Told>({ around }: Column, told: One | undefined): One | undefined {
  const meaning = told?.meaning && loopPlaces[told.meaning];
  if (!told || meaning === undefined) return told;
  const isLoop = around.at(-1)?.some((word) => conceptsOf(word)?.concepts.includes('loop')) === true;
  return isLoop ? { ...told, meaning } : told;
}

const loopPlaces: Readonly<Record<InferredTarget, InferredTarget>> = {
  offset: 'loop_start',
  end: 'loop_end',
  sample_length: 'loop_length',
};
