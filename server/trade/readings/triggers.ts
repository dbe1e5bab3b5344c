import { loopWord, triggerWord } from '../languages/cellWords';
import { shortTrigger } from '../languages/shortTriggerWords';
import { bareWord } from '../languages/spelling';
import { triggerPhrase } from './triggerPhrases';

/** What starts a region, by the values of `trigger` in the open SFZ format. */
export type TriggerValue = 'attack' | 'release' | 'first' | 'legato';

/**
 * Reads what starts a region: `press`, `release`, `note off`, `key up`. Under a heading that names one of them, such as `Release`,
 * also whether it is so: `yes`, `x`, `0`. `undefined` for anything else.
 */
export function triggerIn(text: string, heading = ''): TriggerValue | undefined {
  const word = triggerOf(text);
  if (word) return word;
  if (/^(?:down|on)$/i.test(text)) return triggerOf(heading) ? undefined : 'attack';
  if (/^(?:up|off)$/i.test(text) && !triggerOf(heading)) return 'release';
  const said = triggerOf(heading);
  const is = loopWord(text);
  if (!said || !is) return undefined;
  return is === 'no_loop' ? (said === 'release' ? 'attack' : undefined) : said;
}

/** What starts a region by a word that says nothing else: `note off`, not `off`. */
export function triggerOf(text: string): TriggerValue | undefined {
  switch (triggerWord(text) ?? triggerPhrase(text)) {
    case 'press':
      return 'attack';
    case 'release':
      return 'release';
    case 'first':
      return 'first';
    case 'legato':
      return 'legato';
    default:
      return undefined;
  }
}

/** Words for what sounds while keys are held, beside sounds of keys that are let go; without accents, in the languages of the trade. */
const heldWord =
  /^(?:sustain(?:s|ed)?|held?|hold|holds|main|normal|note|notes|tone|tones|body|regular|standard|gehalten|halten|haupt\p{L}*|ton|tone|tenue?|soutenue?|normale?|sostenid[oa]|mantenid[oa]|principal|tenut[oa]|sostenut[oa]|principale|mantid[oa]|aangehouden|hoofd\p{L}*|hallen|halls|vanlig|normaali|normalny|glowny|hlavni|обычн\p{L}*|основн\p{L}*)$/u;

/** Reads what starts a region where other cells of a column say that keys are let go: `Sustain` beside `Release` sounds on the key. */
export function triggerBesideRelease(text: string): TriggerValue | undefined {
  return triggerOf(text) ?? (heldWord.test(bareWord(text.trim())) ? 'attack' : undefined);
}

/** Reads what starts a region where other cells of a column say the opposite as shortly: `sus` beside `rel`. */
export function triggerInShort(text: string): TriggerValue | undefined {
  return triggerBesideRelease(text) ?? shortTrigger(bareWord(text.trim()).replace(/\.$/, ''));
}
