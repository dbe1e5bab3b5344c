import { dynamicIn } from '../../../trade/dynamics';
import { panWord } from '../../../trade/languages/cellWords';
import { wordsOf } from '../../../trade/languages/spelling';
import { triggerOf } from '../../../trade/readings/triggers';
import type { ZoneList } from '../zoneList';
import { valueWords } from '../zoneList';

/** Letters for dynamics that no other word is written with. */
const letters = /^(?:p{2,4}|m[pf]|f{2,4})$/;
const hardPan = 100;

/**
 * The zones that a text means by what they are: those with a dynamic that it gives by its letters, of one side, or that sound when keys are let
 * go. None where it means none, `undefined` where it means different ones.
 */
export function zonesOfKindNamed(zones: ZoneList, text: string): number[] | undefined {
  const found = wordsOf(text)
    .map((word) => zonesOfKind(zones, word))
    .filter((one) => one.length > 0 && one.length < zones.count);
  const [first = []] = found;
  return found.every((one) => one.join() === first.join()) ? first : undefined;
}

function zonesOfKind(zones: ZoneList, word: string): number[] {
  const those = (isMeant: (zone: number) => boolean) =>
    Array.from({ length: zones.count }, (_, zone) => zone).filter(isMeant);
  const { dynamics } = zones;
  if (dynamics && letters.test(word))
    return those((zone) => dynamics.cells[zone] >= 0 && dynamics.numbers[zone] === dynamicIn(word));
  const side = panWord(word);
  const pans = zones.values('pan');
  if (pans && (side === 'left' || side === 'right')) {
    const pan = side === 'left' ? -hardPan : hardPan;
    return those((zone) => pans.cells[zone] >= 0 && pans.numbers[zone] === pan);
  }
  const triggers = zones.values('trigger');
  if (!triggers || triggerOf(word) !== 'release') return [];
  const release = valueWords.indexOf('release');
  return those((zone) => triggers.cells[zone] >= 0 && triggers.numbers[zone] === release);
}
