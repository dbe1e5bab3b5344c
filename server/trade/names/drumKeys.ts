import { wordsOf } from '../languages/spelling';

const hats = /^(?:hats?|hihats?|hh|charleston|charley|хаихэт|ハイハット)$/u;

/**
 * The keys of drums by words of their names, more telling ones first: the percussion key map of General MIDI System Level 1
 * (MIDI Manufacturers Association, 1991). To know another word, add it to a line.
 */
const drums: readonly { words: RegExp; keys: readonly number[] }[] = [
  { words: /^(?:side ?stick|cross ?stick|rim(?:shot)?)$/, keys: [37] },
  { words: /^(?:closed|shut|geschlossen|zu|fermee?|cerrado|chiuso|fechado|dicht|stangd)$/, keys: [42] },
  { words: /^(?:pedal|foot|fuss|pied|pie|pedale)$/, keys: [44] },
  { words: /^(?:open|offen|ouverte?|abierto|aperto|aberto|oppen)$/, keys: [46] },
  {
    words:
      /^(?:kick|bass ?drum|bd|grosse (?:trommel|caisse)|basstrommel|bombo|gran ?cassa|grancassa|bumbo|bastrumma|бочка|キック)$/u,
    keys: [35, 36],
  },
  {
    words: /^(?:snare|sd|kleine trommel|caisse claire|caja|redoblante|rullante|caixa|virveltrumma|スネア)$/u,
    keys: [38, 40],
  },
  { words: /^(?:clap|claps|handclap)$/, keys: [39] },
  { words: hats, keys: [42, 44, 46] },
  { words: /^toms?$/, keys: [41, 43, 45, 47, 48, 50] },
  { words: /^crash$/, keys: [49, 57] },
  { words: /^ride$/, keys: [51, 53, 59] },
  { words: /^china$/, keys: [52] },
  { words: /^splash$/, keys: [55] },
  { words: /^tamb(?:ourine)?$/, keys: [54] },
  { words: /^cowbell$/, keys: [56] },
  { words: /^bongos?$/, keys: [60, 61] },
  { words: /^congas?$/, keys: [62, 63, 64] },
  { words: /^claves?$/, keys: [75] },
  { words: /^triangle$/, keys: [80, 81] },
];
/** Words that say how a hi-hat is played, and nothing of other drums. */
const ofHats = new Set([42, 44, 46]);

/** The keys that a drum of some name has in General MIDI; none for other names. */
export function drumKeysOf(name: string): readonly number[] {
  const words = wordsOf(name.replace(/\.\w{1,5}$/, '').replace(/hi[- ]hat/i, 'hihat'));
  const isHat = words.some((word) => hats.test(word));
  const pairs = words.map((word, at) => `${word} ${words[at + 1] ?? ''}`.trim());
  for (const { words: known, keys } of drums) {
    if (keys.every((key) => ofHats.has(key)) && keys.length === 1 && !isHat) continue;
    if (words.some((word) => known.test(word)) || pairs.some((pair) => known.test(pair))) return keys;
  }
  return [];
}
