import {
  loopWord,
  panWord,
  sidePhrase,
  triggerWord as wordOfAnyLanguage,
} from '../../../trade/languages/cellWords';
import { bareWord } from '../../../trade/languages/spelling';
import { startInTitle } from '../../../trade/readings/startInTitle';

const yes = new Set(
  'yes true on 1 y t enabled active ja wahr an ein oui vrai si sí verdadero vero verdadeiro sim x always aan waar pa tak evet kylla да はい'.split(
    ' ',
  ),
);
const no = new Set(
  'no false off 0 n f disabled inactive nein falsch aus non faux falso nao none never nee uit onwaar av nej nie hayir ei нет いいえ'.split(
    ' ',
  ),
);

/** Whether a word switches on or off; `undefined` for other words. */
export function switchWord(word: string): boolean | undefined {
  const bare = bareWord(word);
  if (yes.has(bare)) return true;
  return no.has(bare) ? false : undefined;
}

/** The word that says the opposite, in the same letter case; `undefined` where none is known. */
export function oppositeOf(word: string): string | undefined {
  const bare = bareWord(word);
  for (const [one, other] of opposites) {
    if (bare === one) return inCaseOf(word, other);
    if (bare === other) return inCaseOf(word, one);
  }
  return undefined;
}

const opposites: readonly (readonly [string, string])[] = [
  ['yes', 'no'],
  ['true', 'false'],
  ['on', 'off'],
  ['1', '0'],
  ['y', 'n'],
  ['ja', 'nein'],
  ['oui', 'non'],
  ['si', 'no'],
  ['enabled', 'disabled'],
  ['active', 'inactive'],
  ['an', 'aus'],
  ['wahr', 'falsch'],
  ['vrai', 'faux'],
  ['sim', 'nao'],
  ['aan', 'uit'],
  ['ja', 'nee'],
  ['tak', 'nie'],
];

function inCaseOf(model: string, word: string): string {
  if (model.length > 1 && model === model.toUpperCase()) return word.toUpperCase();
  const first = model[0];
  return first !== first.toLowerCase() ? word[0]?.toUpperCase() + word.slice(1) : word;
}

const loopModes: Readonly<Record<string, string>> = {
  'one shot': 'one_shot',
  oneshot: 'one_shot',
  single: 'one_shot',
  whole: 'one_shot',
  complete: 'one_shot',
  full: 'one_shot',
  'play through': 'one_shot',
  'to end': 'one_shot',
  straight: 'no_loop',
  plain: 'no_loop',
  never: 'no_loop',
  unlooped: 'no_loop',
  endless: 'loop_continuous',
  forever: 'loop_continuous',
  infinite: 'loop_continuous',
  constant: 'loop_continuous',
  repeat: 'loop_continuous',
  cycle: 'loop_continuous',
  'through release': 'loop_continuous',
  release: 'loop_continuous',
  'while held': 'loop_sustain',
  held: 'loop_sustain',
  hold: 'loop_sustain',
  key: 'loop_sustain',
  sustaining: 'loop_sustain',
  'sustain only': 'loop_sustain',
  'until note off': 'loop_sustain',
};

/** The loop mode that a word names, and the direction where it names one. */
export function loopMode(word: string): { mode: string; type?: string } | undefined {
  const bare = spaced(word);
  if (loopModes[bare]) return { mode: loopModes[bare] };
  const switched = switchWord(word);
  const known = loopWord(bare) ?? loopWord(bare.replaceAll(' ', ''));
  if (known === 'alternate') return { mode: 'loop_continuous', type: 'alternate' };
  if (known === 'backward') return { mode: 'loop_continuous', type: 'backward' };
  if (known) return { mode: known, ...(/^forw/.test(bare) && { type: 'forward' }) };
  if (switched !== undefined) return { mode: switched ? 'loop_continuous' : 'no_loop' };
  return looseLoopMode(bare);
}

/** The loop mode that a word names which says up to when it goes on. */
export function loopUntil(word: string): string | undefined {
  const bare = spaced(word);
  if (/release|note ?off|key ?(?:up|off)|let ?go|lift/.test(bare)) return 'loop_sustain';
  return /\bend\b|ever|endless|always|infinit|silence|fade/.test(bare) ? 'loop_continuous' : undefined;
}

/** A mode that is named in more words: `loop_until_release`, `sustain loop`. */
function looseLoopMode(bare: string): { mode: string } | undefined {
  if (/\b(?:no|not|without|off)\b|noloop|unloop/.test(bare)) return { mode: 'no_loop' };
  if (/one ?shot|once/.test(bare)) return { mode: 'one_shot' };
  if (/sus|held|until|while|hold|press/.test(bare)) return { mode: 'loop_sustain' };
  if (/contin|forever|endless|always|infinit|loop/.test(bare)) return { mode: 'loop_continuous' };
  return undefined;
}

const directions: Readonly<Record<string, string>> = {
  forward: 'forward',
  forwards: 'forward',
  fwd: 'forward',
  normal: 'forward',
  ahead: 'forward',
  vorwarts: 'forward',
  avant: 'forward',
  reverse: 'reverse',
  reversed: 'reverse',
  backward: 'reverse',
  backwards: 'reverse',
  back: 'reverse',
  rev: 'reverse',
  bwd: 'reverse',
  ruckwarts: 'reverse',
  arriere: 'reverse',
};

/** The direction of playing that a word names. */
export function direction(word: string): string | undefined {
  return directions[spaced(word)];
}

const triggers: Readonly<Record<string, string>> = {
  attack: 'attack',
  press: 'attack',
  pressed: 'attack',
  down: 'attack',
  on: 'attack',
  'note on': 'attack',
  noteon: 'attack',
  'key down': 'attack',
  keydown: 'attack',
  'key on': 'attack',
  start: 'attack',
  strike: 'attack',
  hit: 'attack',
  normal: 'attack',
  play: 'attack',
  anschlag: 'attack',
  attaque: 'attack',
  release: 'release',
  released: 'release',
  lift: 'release',
  up: 'release',
  off: 'release',
  'note off': 'release',
  noteoff: 'release',
  'key up': 'release',
  keyup: 'release',
  'key off': 'release',
  end: 'release',
  'let go': 'release',
  loslassen: 'release',
  relachement: 'release',
  first: 'first',
  'first note': 'first',
  legato: 'legato',
  tied: 'legato',
  slurred: 'legato',
  bound: 'legato',
  'release key': 'release_key',
};

/** What starts a region, by a word for it. */
export function triggerOfName(word: string): string | undefined {
  const bare = spaced(word);
  if (triggers[bare]) return triggers[bare];
  const known = wordOfAnyLanguage(bare);
  if (known === 'press') return 'attack';
  if (known) return known;
  if (/releas|note ?off|key ?(?:off|up)|let ?go|lift/.test(bare)) return 'release';
  return /press|note ?on|key ?(?:on|down)|attack|strik/.test(bare) ? 'attack' : undefined;
}

/** What starts a region, by words that say nothing else: `up` and `down`, not `on` and `normal`. */
export function surelyTrigger(word: string): string | undefined {
  return /^(?:on|off|start|end|normal|play|hit|first|bound|tied)$/.test(spaced(word))
    ? undefined
    : triggerOfName(word);
}

/** Whether the name of an element says that what stands in it starts when a key is let go. */
export function isReleaseName(words: readonly string[]): boolean {
  if (/\b(?:releases?|released|key ?up|note ?off|let ?go)\b/.test(words.join(' '))) return true;
  const name = words.join(' ');
  const isSaid = [...words, name].some((word) => word.length > 4 && wordOfAnyLanguage(word) === 'release');
  return isSaid || startInTitle(name) === 'release' || words.some((word) => tails.has(word));
}

/** What is heard when a key has been let go, as a recording of its own (from memory). */
const tails: ReadonlySet<string> = new Set(
  'tail tails nachklang nachklange nachklaenge nachhall naklank naklanken nagalm efterklang efterklange etterklang naslag wybrzmienie wybrzmienia dozvuk dozvuky dozneni sueltas soltadas'.split(
    ' ',
  ),
);

const playsOut =
  /\bone ?shot\b|\b(?:play|plays|played|sounds?) (?:\w+ )?(?:through|out|full|fully|whole|all|complete|completely|to (?:the |its )?end)\b|\bto (?:the |its )?end\b|\bfino (?:in|alla) (?:fondo|fine)\b|\bbis (?:zum )?(?:ende|schluss)\b|\bhasta (?:el )?final\b|\bganz (?:aus|ab)?spielen\b|\bjusqu ?(?:a la|au) (?:fin|bout)\b|\bhasta el final\b|\bate (?:ao|o) fim\b|\b(?:tot|helemaal) (?:het )?(?:einde|uit)\b|\bdo konca\b|\btill slut\b|\btil slut(?:t|ningen)?\b|\bignore (?:note ?off|release|key ?up)\b|\bauskling(?:en|t) lassen\b/;

/** Whether the name of a switch says that what it is on for plays to its end whatever the key does. */
export function isOneShotName(words: readonly string[]): boolean {
  return playsOut.test(words.join(' '));
}

const follows: Readonly<Record<string, string>> = {
  full: '100',
  normal: '100',
  chromatic: '100',
  half: '50',
  none: '0',
  fixed: '0',
  constant: '0',
};

/** How far the pitch follows the keys, in percent, by a word for it: `no` and `fixed` for not at all. */
export function pitchFollow(word: string): string | undefined {
  const switched = switchWord(word);
  return switched === undefined ? follows[spaced(word)] : switched ? '100' : '0';
}

const offModes: Readonly<Record<string, string>> = {
  fast: 'fast',
  quick: 'fast',
  immediate: 'fast',
  hard: 'fast',
  normal: 'normal',
  release: 'normal',
  soft: 'normal',
  slow: 'normal',
  time: 'time',
};

/** How a region that another one silences ends, by a word for it. */
export function offMode(word: string): string | undefined {
  return offModes[spaced(word)];
}

const filters: Readonly<Record<string, string>> = {
  lowpass: 'lpf_2p',
  lp: 'lpf_2p',
  lpf: 'lpf_2p',
  lp12: 'lpf_2p',
  lp24: 'lpf_4p',
  lp6: 'lpf_1p',
  highpass: 'hpf_2p',
  hp: 'hpf_2p',
  hpf: 'hpf_2p',
  hp12: 'hpf_2p',
  hp6: 'hpf_1p',
  hp24: 'hpf_4p',
  bandpass: 'bpf_2p',
  bp: 'bpf_2p',
  bpf: 'bpf_2p',
  notch: 'brf_2p',
  bandreject: 'brf_2p',
  bandstop: 'brf_2p',
  tiefpass: 'lpf_2p',
  hochpass: 'hpf_2p',
};

/** A type of filter by a word for it; the open SFZ format's own words are answered as they are. */
export function filterType(word: string): string | undefined {
  const bare = bareWord(word);
  return /^[lhb][pr]f_\dp$/.test(bare) ? bare : filters[bare.replace(/[^a-z0-9]/g, '')];
}

/** A side as a word: −100, 0 or 100; `slightly left` lies between. */
export function panSide(word: string): string | undefined {
  const bare = spaced(word);
  if (/^(?:l|port)$/.test(bare)) return '-100';
  if (/^(?:r|starboard)$/.test(bare)) return '100';
  if (/^(?:c|m|amidships)$/.test(bare)) return '0';
  const said = panWord(word) ?? panWord(bare);
  if (said === 'centre') return '0';
  if (said) return said === 'left' ? '-100' : '100';
  const phrase = /\d/.test(word) ? undefined : sidePhrase(word);
  return phrase && String(Math.round((phrase.side === 'left' ? -100 : 100) * phrase.share));
}

/** A word in lower case with blanks where its parts meet. */
function spaced(word: string): string {
  return bareWord(word.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')).replace(/[\s_.-]+/g, ' ');
}
