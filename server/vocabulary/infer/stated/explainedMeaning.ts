import { readHeading } from '../../../trade/headings/headings';
import { unchangedAt } from '../../../trade/headings/statedScale';
import { isSilentAtNone } from '../../../trade/languages/silenceWords';
import { velocityOfLevel } from '../../../trade/languages/velocityOfLevel';
import { namesLoop } from '../../../trade/loopWords';
import type { ColumnMeaning } from '../../../trade/meaning';
import { saysOf, writtenWords } from '../../../trade/phrases/toldWords';
import { unitPartsIn } from '../../../trade/phrases/unitFractions';
import { endsIn } from '../../../trade/statements/playing/statedEnds';
import { saysInTurn } from '../../../trade/statements/playing/turns';
import type { InferredTarget } from '../words/meaningRules';
import type { ExplainedName } from './explainedNames';

/** Columns of tables with the targets that say the same. */
const targets: Readonly<Partial<Record<ColumnMeaning, InferredTarget>>> = {
  lokey: 'lokey',
  hikey: 'hikey',
  key_range: 'key_range',
  pitch_keycenter: 'pitch_keycenter',
  lovel: 'lovel',
  hivel: 'hivel',
  velocity_range: 'velocity_range',
  volume: 'volume',
  attenuation: 'attenuation',
  pan: 'pan',
  tune: 'tune',
  transpose: 'transpose',
  offset: 'offset',
  end: 'end',
  loop_start: 'loop_start',
  loop_end: 'loop_end',
  loop_length: 'loop_length',
  seq_position: 'seq_position',
};

/** Words for a key, in texts that may speak of other things too (from memory). */
const keyWord =
  /(?<!\p{L})(?:keys?|notes?|midi|pitch\p{L}*|tast[eioa]n?|t\u00f6ne?|tons?|touches?|teclas?|notas?|tecles?|toets\p{L}*|noten?|tangent\p{L}*|koskett\p{L}*|klawisz\p{L}*|kl[a\u00e1]ves\p{L}*|клавиш\p{L}*|нот\p{L}+)(?!\p{L})|鍵|键|음/iu;
/** What says that a sample sounds there as it was recorded (from memory). */
const recorded =
  /as (?:it was )?recorded|(?:original|natural|own|unchanged|true|recorded|sampled|unshifted) (?:pitch|key|note)|un(?:transposed|shifted|pitched|altered)|without (?:being )?(?:transpos|pitch|chang|shift)\p{L}*|no transposition|(?:was|were|is|been|actually|really) (?:struck|played|pressed|hit|recorded|sampled|sung|blown|bowed|plucked)|pitch of the (?:recording|sample|take|file)|wie aufgenommen|unver\u00e4ndert|untransponiert|ohne (?:transpon|umstimm)\p{L}*|(?:angeschlagen|aufgenommen|gespielt|angezupft|geblasen)(?!\p{L})|tel qu['\u2019]enregistr|sans transposition|enregistr\u00e9e?s?(?!\p{L})|jou\u00e9e?s?(?!\p{L})|sin transportar|grabad[oa]s?(?!\p{L})|tocad[oa]s?(?!\p{L})|come registrat|senza trasposizione|registrat[oa](?!\p{L})|suonat[oa](?!\p{L})|gravad[oa]s?(?!\p{L})|zoals opgenomen|opgenomen(?!\p{L})|aangeslagen(?!\p{L})|gespeeld(?!\p{L})|inspela[dt]|indspillet|nagran\p{L}+|nahr\u00e1n\p{L}+|записан\p{L}*/iu;

/** Explanations of what a place holds, by what they speak of (common practice). */
const phrases: readonly (readonly [pattern: RegExp, target: InferredTarget])[] = [
  [
    /(?:low|deep|first|bottom|left)\p{L}*(?: midi)?(?: key| note)?(?:\s*[-–:/]\s*| (?:and|to|or) (?:the )?)(?:high|top|last|right)\p{L}* (?:midi )?(?:key|note)|(?:outer(?:most)?|limiting|boundary|extreme) (?:midi )?(?:keys|notes)|(?:tief|unter|erst|klein)\p{L}* (?:taste )?(?:und|bis) \p{L}* ?(?:h[öo]chst|ober|letzt|gr[öo]ß)\p{L}*(?: taste)?|key range|range of (?:the )?keys|(?:grenz|rand)tasten|[äa]u(?:ß|ss)er\p{L}+ tasten|(?:plus )?(?:grave|basse|premi\p{L}+) et (?:la )?(?:plus )?(?:aigu|haut|derni)\p{L}*|touches extr[êe]mes|laagste en (?:de )?hoogste toets|buitenste toetsen|prim\p{L}+ y (?:la )?[úu]ltim\p{L}+ tecla|teclas extremas|m[áa]s (?:grave|baja) y (?:la )?m[áa]s (?:aguda|alta)|primo e (?:l['’])?ultimo tasto|tasti estremi|pi[ùu] (?:grave|basso) e (?:il )?pi[ùu] (?:acuto|alto)/iu,
    'key_range',
  ],
  [
    /^(?!.*(?<!\p{L})(?:keys?|notes?|pedals?|frames?|seconds?|ms|hz|frequency|taste|filter)(?!\p{L})).*?(?:(?:cut|stop|silence|mute|choke|damp|hush|kill)(?:s|es) (?:(?:it|this|them|these)(?!\p{L})|the \p{L}+ off)|(?:cut(?: off| short)?|stopped|silenced|muted|choked|damped|hushed|killed) by(?!\p{L})|by (?:which|whom) it is (?:cut|stopped|silenced|muted|choked|damped)(?!\p{L})|(?:abgeschnitten|gestoppt|ged\u00e4mpft) (?:von|durch)|(?:von|durch) \p{L}+ (?:\p{L}+ )?(?:abgeschnitten|gestoppt|ged\u00e4mpft)|(?:coup|arr\u00eat|\u00e9touff)\u00e9e?s? par)/iu,
    'off_by',
  ],
  [
    /(?:choke|mute|muting|exclusi(?:ve|on)|cut[- ]?off|hush|silencing)[- ]?(?:group|circle|class|set|ring|family|number|club|pool|party|team|gang|id)(?!\p{L})|(?:group|circle|class|set|ring|family|number|club|pool|team|gang) (?:of|whose) [^,;]{0,30}(?:chok|silenc|mut(?:e|ing)|cut)\p{L}* (?:each other|one another)|(?:stumm|w\u00fcrge)gruppe|groupe d['\u2019](?:exclusion|\u00e9touffement)/iu,
    'choke',
  ],
  [
    /(?:left out|skipped|cut|dropped|omitted) (?:at|from) the (?:beginning|start)|am anfang (?:weg|ausge|über)|(?:saut|ignor)\p{L}+ au d[ée]but|overgeslagen/iu,
    'offset',
  ],
  [velocityOfLevel, 'amp_veltrack'],
  [
    /first (?:frame|sample)\b.{0,20}(?:\bnot\b|n't|no longer).{0,20}(?:play|sound|heard)|(?:frame|sample) (?:right |just )?(?:after|behind|past) the last/iu,
    'end',
  ],
  [
    /last (?:frame|sample)\b.{0,30}play|letzte[rsn]? (?:frame|abtastwert)|derni[eè]re? (?:trame|[ée]chantillon)/iu,
    'end',
  ],
];

const articles =
  /^(?:(?:the|an?|its|their|this|der|die|das|den|le|la|les|l['\u2019]|el|los|las|il|lo|i|gli|o|os|as|de|het|een|en|ett)\s+)+/iu;
/** What stands behind the thing that is explained: its unit, its scale, or whose it is. */
const behindHead =
  /[,;:([]|\s(?:in|as|from|at|of|on|for|that|which|where|counted|given|measured|written|relative|between|en|de|del|della|do|da|des|du|von|ab|zwischen|als|entre|tra|van|tussen|i|w|v|в)\s/iu;
/** Nouns behind a heading that add nothing. */
const whose = /\s+(?:values?|numbers?|position|setting|wert|zahl|nummer)$/iu;

/** What an explanation says that a place holds: `lowest key`, `the key at which it sounds as recorded`. */
export function meaningIn({ says, turn }: ExplainedName): InferredTarget | undefined {
  const text = says.slice(0, 160);
  if (turn) return pairIn(text)?.[turn === 'first' ? 0 : 1];
  const target = ofLoopIn(text, targetIn(text));
  // What is added to a key is none.
  return target && numbered.has(target) && addedTo.test(text) ? undefined : target;
}

/** The end of a loop that an explanation speaks of, where it names a frame of it: `the first frame that is no longer part of the loop`. */
function ofLoopIn(text: string, target: InferredTarget | undefined): InferredTarget | undefined {
  if (!namesLoop(text)) return target;
  if (target === undefined) return startsWithFirst.test(text) && isBehind(text) ? 'loop_end' : undefined;
  if (target !== 'offset' && target !== 'end') return target;
  return target === 'end' || isBehind(text) ? 'loop_end' : 'loop_start';
}

const startsWithFirst = new RegExp(String.raw`^\W*(?:\p{L}+\s)?${writtenWords('first')}(?!\p{L})`, 'iu');

function isBehind(text: string): boolean {
  return endsIn(text)?.are === 'behind';
}

function targetIn(text: string): InferredTarget | undefined {
  // Of a factor `1 (as recorded)` says how it counts.
  const isKey = unchangedAt(text) === undefined && !isSilentAtNone(text);
  if (isKey && recorded.test(text) && (keyWord.test(text) || saysOf(text, 'root'))) return 'pitch_keycenter';
  for (const [pattern, target] of phrases) if (pattern.test(text)) return target;
  // `in cents` and `from 0 at the beginning` say how it counts.
  if (isSmallWord(text.split(' ')[0])) return undefined;
  // Nor do `64ths of a semitone` name what is counted so.
  const isPart = unitPartsIn(text, () => true) !== undefined;
  return headOf(text) ?? (isPart ? undefined : wordsIn(text));
}

const numbered: ReadonlySet<InferredTarget> = new Set(
  'lokey hikey key_range pitch_keycenter lovel hivel velocity_range'.split(' '),
);
/** How an explanation says that a value is added to others (from memory). */
const addedTo =
  /^\W*(?:\p{L}+ )?(?:added|subtracted|summed|addiert|abgezogen|hinzu\p{L}*|dazu\p{L}*|ajout\p{L}*|retranch\p{L}*|sumad[oa]s?|se suman?|aggiunt\p{L}|sommat\p{L}|somad[oa]s?|opgeteld|adderas|l\u00e6gges|dodawan\p{L}*)(?!\p{L})/iu;

/** The thing that an explanation starts with, where all its words are those of one heading. */
function headOf(text: string): InferredTarget | undefined {
  const head = (text.split(behindHead)[0] ?? '').trim().replace(articles, '');
  for (const one of [head, head.replace(whose, '')]) {
    const reading = one.length > 2 ? readHeading(one) : undefined;
    const target = reading && !reading.likeness ? targets[reading.meaning] : undefined;
    if (target) return target;
  }
  return undefined;
}

/** Some words near the start of an explanation that are a heading. */
function wordsIn(text: string): InferredTarget | undefined {
  const words = text.split(/[,;:(]/u)[0]?.match(/[\p{L}%]+/gu) ?? [];
  for (let length = Math.min(4, words.length); length > 1; length--) {
    for (let from = 0; from + length <= Math.min(words.length, 6); from++) {
      const phrase = words.slice(from, from + length);
      // Small words such as `in` and `to` name ends of samples only in headings.
      if (phrase.filter((word) => word.length > 2).length < 2) continue;
      const reading = readHeading(phrase.join(' '));
      const target = reading && !reading.likeness ? targets[reading.meaning] : undefined;
      if (target && !isSmallWord(phrase[0]) && !isArticle(phrase[0])) return target;
    }
  }
  return undefined;
}

function isSmallWord(word: string | undefined): boolean {
  return /^(?:in|to|from|at|on|en|as|is|by|of|zu|ab|von|im|da|it)$/iu.test(word ?? '');
}

function isArticle(word = ''): boolean {
  return /^(?:a|an|el|la|le|de)$/iu.test(word);
}

type Ends = readonly [InferredTarget, InferredTarget];

const highFirst =
  /^\W*(?:the )?(?:high|top|upper|loud|last|greatest|h\u00f6chst|ober|aigu|aguda|alta|acut|hoogst)\p{L}*\s+(?:and|to|und|et|y|e|en)(?!\p{L})/iu;
const lengthWord =
  /(?<!\p{L})(?:length|l\u00e4nge|longueur|longitud|lunghezza|comprimento|lengte|duration)(?!\p{L})/iu;
const sampleWord =
  /(?<!\p{L})(?:first and last|start and end|anfang und ende|erster und letzter|d\u00e9but et fin|inicio y fin(?:al)?|inizio e fine|begin en eind\p{L}*)(?!\p{L}).{0,40}(?<!\p{L})(?:frames?|samples?|recording|file|datei|aufnahme|abtast\p{L}*|fichier|enregistrement|grabaci\p{L}+|registrazione|opname)/iu;

/** How an explanation speaks of takes and of how many there are (from memory). */
const whichOfHowMany =
  /(?<!\p{L})(?:(?:which|number|position|place|index|turn|nr\.?) (?:\p{L}+ )?(?:of|out of|and) (?:how many|the (?:number|count) of) (?:\p{L}+ )?(?:takes?|recordings?|turns?|alternat\p{L}+|variations?|repetitions?)|welche[rs]? von wie ?vielen|quelle? (?:prise )?sur combien|cu[\u00e1a]l de cu[\u00e1a]ntas|quale di quante|welke van hoeveel)(?!\p{L})/iu;

/** What two names hold that one explanation speaks of: the two ends of a range. */
function pairIn(text: string): Ends | undefined {
  const ends = rangeIn(text);
  return ends && highFirst.test(text) ? [ends[1], ends[0]] : ends;
}

function rangeIn(text: string): Ends | undefined {
  if (whichOfHowMany.test(text) || saysInTurn(text)) return ['seq_position', 'seq_length'];
  if (saysOf(text, 'velocities')) return ['lovel', 'hivel'];
  if (namesLoop(text))
    return lengthWord.test(text) ? ['loop_start', 'loop_length'] : ['loop_start', 'loop_end'];
  if (sampleWord.test(text)) return ['offset', 'end'];
  const isOfRoot = recorded.test(text) || saysOf(text, 'root');
  return keyWord.test(text) && !isOfRoot ? ['lokey', 'hikey'] : undefined;
}
