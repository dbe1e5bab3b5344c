import { withoutUnchanged } from '../../../trade/headings/statedScale';
import { bareWord } from '../../../trade/languages/spelling';
import { unitByStem } from '../../../trade/languages/unitStems';
import { rangeWords } from '../../../trade/rangeWords';
import type { Meaning } from '../words/meanings';
import { meaningsOf } from '../words/meanings';
import type { ToldPlace } from './toldPlaces';

/** Words around a factor that say nothing of what it is of, in any language (from memory). */
const small: ReadonlySet<string> = new Set(
  'a an the is are as by it its this of and between from with value values number numbers simple plain ein eine einen der die das ist sind als wert werte von zwischen und un une le la est comme entre et de es como el y e il lo uma um o een het tussen en van ett en ar mellan och'.split(
    ' ',
  ),
);
const between = new RegExp(`^(?:${rangeWords})$`, 'iu');

/**
 * What a name that says nothing is by an explanation that is nothing but a factor: one up to 1 is a share of the amplitude, of one without
 * ends the values have to tell.
 */
export function factorMeanings(told: ToldPlace, own: readonly string[]): readonly Meaning[] {
  if (told.unit !== 'ratio' || !isFactorAlone(withoutUnchanged(told.text), own)) return [];
  const { range } = told;
  if (range?.low === 0 && range.high === 1) return [{ target: 'volume', weight: 0.85, unit: undefined }];
  return range ? [] : meaningsOf(['factor'], [], []);
}

function isFactorAlone(text: string, own: readonly string[]): boolean {
  const words = text.match(/\p{L}+/gu) ?? [];
  return words.every((word) => {
    const bare = bareWord(word);
    return small.has(bare) || own.includes(bare) || between.test(word) || unitByStem(word) === 'linear';
  });
}
