import { everyWords } from '../../everyWords';
import { loopWord } from '../../languages/cellWords';
import { readNumber } from '../../readings/numberReading';
import { readPan } from '../../readings/panReading';
import { turningWords } from '../../turningWords';
import { playsOutIn } from '../playing/playsOut';
import { allButIn, clausesOfEverything } from './allBut';
import { zoneWord } from './zoneWord';

/** Parameters that many zones may share. */
export type SharedName = 'volume' | 'transpose' | 'tune' | 'pan' | 'loop_mode';

/** Values that the text gives for all zones: parameters of the open SFZ format, and the sentence that says so. */
export interface ForAll {
  values: ReadonlyMap<SharedName, number | string>;
  text: string;
  /** Files that are left out, and the values that go for them instead. */
  except?: { names: readonly string[]; values: ReadonlyMap<SharedName, number | string> };
}

const longest = 2000;
const allZones = new RegExp(
  String.raw`(?:${everyWords}\s+(?:(?:the|of the|of them|die|de|les|los|las|os|as|le|i|gli)\s+)?(?:${zoneWord})(?!\p{L})|(?:すべて|全て|全部|全)の?(?:ゾーン|サンプル|音)|(?:所有|全部)的?(?:区域|區域|采样|樣本|样本|音区)|모든\s?(?:존|샘플|영역|구역))([^.;。\n\r]{0,160}|(?<=one[- ]?shots?))`,
  'giu',
);
const excepts = new RegExp(
  String.raw`${turningWords('except', 'only')}|\b(?:but|ohne|menos|mostly|meist|usually|about)\b|만\s`,
  'iu',
);
const decibels = /([-+\u2212\u2013]?)\s?(\d+(?:[.,]\d+)?)\s*dB\b/iu;
const quieter =
  /\b(?:quieter|softer|lower|down|less|below|cut|leiser|weniger|tiefer|moins|plus bas|menos|m\u00e1s baj[oa]s?|meno|pi\u00f9 (?:bass[aeio]|piano)|mais baix[oa]s?|plus bass?es?|plus faibles?|zachter|minder|l\u00e4gre|svagare|ciszej|tišeji)\b|тише/iu;
const louder =
  /\b(?:louder|higher|up|boost\p{L}*|hotter|lauter|mehr|plus fort|m\u00e1s alto|pi\u00f9 (?:alto|forte)|mais alto|harder|luider|h\u00f6gre|starkare|gło\u015bniej)\b|громче/iu;
/** Words behind the zones that make them some of all. */
const someOnly =
  /^(?:of|in|with|from|that|which|whose|above|below|under|over|der|des|in der|mit|von|\u00fcber|unter|de|du|des|avec|del|de la|con|que|della|che|do|da|van(?! [-+\d])|met|av|i|med)\b(?! (?:the |this |diese[rmns]? |ce |cette |este |esta |questo |dit |deze )?(?:instrument|set|kit|list|table|folder|map|library))/iu;
const semitones =
  /(?:transpos\p{L}*|semitones?|halbt(?:\u00f6ne?|on)|demi-tons?|semitonos?|semitoni)\W{1,3}(?:by\s|um\s|de\s|di\s|=\s?)?([-+\u2212\u2013]\s?\d{1,3})(?![\d.,]\d)|([-+\u2212\u2013]\s?\d{1,3})\s*(?:semitones?|st\b|halbt(?:\u00f6ne?|on)|demi-tons?|semitonos?|semitoni)/iu;
const octave = /\b(?:an?|one)\s+octave\s+(lower|down|higher|up)\b/iu;
const cents =
  /([-+\u2212\u2013]?)\s?(\d+(?:[.,]\d+)?)\s*(?:(?:cent(?:s|y|i|u|\u016f|\u00f3w|imos|esimi|ia|ti\u00e4)?|sentti\p{L}*|ct|цент\p{L}*)(?!\p{L})|¢|セント|音分|센트)/iu;
/** Words for tuning: without one, a sample may be said to be so much off. */
const tuning =
  /tun(?:e|ing)|rais|lower(?:ed)? (?:by|all)|shift|stimm|stem|st\u00e4m|accord|afin|intona|alz(?:a|are)|abbass|virit|stro[ij]|lad[i\u011b]|настр|строй|チューニ|調律|調整|上げ|下げ|调|調|升|降|튜닝|조율|올려|내려/iu;
const off =
  /(?<!\p{L})(?:too|zu|trop|demasiado|troppo|demais|te|för|for|liian|za|příliš|слишком|off|out of tune)(?!\p{L})(?! (?:all|the))|すぎ|过|過|너무/iu;
/** Words for up and down, of tunings, in the languages of the trade. */
const tunedUp =
  /(?<!\p{L})(?:up|higher|raised?|hoch|h\u00f6her|hinauf|nach oben|upp|uppåt|opp|oppover|op|opad|h\u00f8jere|h\u00f6gre|hoger|omhoog|plus haut|vers le haut|hacia arriba|m\u00e1s alt\p{L}+|pi\u00f9 alt\p{L}+|in su|verso l'alto|para cima|mais alt\p{L}+|ylös|ylöspäin|korkeammaksi|korkeammalle|w górę|wyżej|nahoru|výše?|вверх|выше)(?!\p{L})|上げ|高く|高め|升高|调高|調高|올려|올린|높/iu;
const tunedDown =
  /(?<!\p{L})(?:down|lower(?:ed)?|tiefer|runter|herunter|nach unten|ner|nedåt|ned|nedover|nedad|lavere|l\u00e4gre|lager|omlaag|plus bas|vers le bas|hacia abajo|m\u00e1s baj\p{L}+|pi\u00f9 bass\p{L}+|in gi\u00f9|verso il basso|para baixo|mais baix\p{L}+|alas|alaspäin|matalammaksi|matalammalle|w dół|niżej|dolů|níže?|вниз|ниже)(?!\p{L})|下げ|低く|低め|降低|调低|調低|내려|내린|낮/iu;
const pan = /\bpan(?:ned)?\W{1,3}(?:to\s|hard\s|at\s)*([\p{L}\d+-]+)/iu;
const once =
  /\bone[- ]?shots?\b|\bplay(?:ed|s)? (?:once|to the(?:ir)? end)\b|\beinmal\b|\bune fois\b|\buna vez\b|\buna volta\b/iu;
const unlooped =
  /\b(?:no loops?|not looped|unlooped|without loops?|ohne schleifen?|sans boucles?|sin bucles?|senza loop)\b/iu;
const looped = /\b(?:are |is |be )?looped(?! (?:from|at|between))\b|\bloop forever\b/iu;

/** Sounds of keys that are let go may play out alone. */
const ofReleases = /\brelease (?:samples?|sounds?|noises?|layers?|groups?)\b/iu;

/** Reads what a text says of all zones: `All zones -3 dB and transpose -12`, `all samples are one-shots`. */
export function forAllIn(texts: readonly string[]): ForAll[] {
  const found: ForAll[] = [];
  for (const whole of texts) {
    const text = whole.slice(0, longest);
    for (const match of text.matchAll(allZones)) {
      const rest = match[0];
      if (excepts.test(rest) || someOnly.test((match[1] ?? '').trim())) continue;
      const values = valuesForAll(rest);
      if (values.size === 0) continue;
      const said = rest.trim();
      // A sentence that goes over two lines comes once more as a whole.
      const part = found.findIndex((one) => said.startsWith(one.text));
      if (part >= 0) found.splice(part, 1);
      found.push({ values, text: said });
    }
  }
  for (const whole of texts) {
    const text = whole.slice(0, longest);
    for (const said of clausesOfEverything(text)) addTo(found, { values: valuesForAll(said), text: said });
    for (const sentence of text.split(/(?<!\d)[.!?](?=\s|$)|[\n\r;。！]/u)) {
      const said = allButIn(sentence);
      if (!said) continue;
      const [values, own] = [valuesForAll(said.all), valuesForAll(said.rest)];
      // Other values than those of all are no exception to them.
      if ([...own].some(([name, value]) => !values.has(name) || typeof value === 'string')) continue;
      const except = { names: said.names, values: own };
      // An amount that is not understood may be that of the files.
      if (except.values.size === 0 && /\d/.test(said.rest)) continue;
      addTo(found, { values, text: sentence.trim(), except });
    }
  }
  const played = found.some(({ values }) => values.has('loop_mode')) ? undefined : playsOutIn(texts);
  if (played !== undefined && !ofReleases.test(played))
    found.push({ values: new Map([['loop_mode', 'one_shot']]), text: played });
  return found;
}

/** Adds what is said once, though a line and what it goes on in may say it both. */
function addTo(found: ForAll[], one: ForAll): void {
  if (one.values.size > 0 && !found.some(({ text }) => text.includes(one.text) || one.text.includes(text)))
    found.push(one);
}

/** A level in dB with a sign, or with a word that says which way it goes. */
function levelIn(text: string): number | undefined {
  const [, sign = '', digits = ''] = decibels.exec(text) ?? [];
  if (digits === '') return undefined;
  const size = Number(digits.replace(',', '.'));
  const amounts = Array.from(text.matchAll(new RegExp(decibels, 'giu')));
  // The same amount may stand once more with its sign: `2 dB lower: volume -2 dB`.
  if (amounts.some(({ 2: other }) => Number(other.replace(',', '.')) !== size)) return undefined;
  if (sign !== '') return sign === '+' ? size : 0 - size;
  if (amounts.some(({ 1: other }) => other === '+') && quieter.test(text)) return undefined;
  if (quieter.test(text)) return 0 - size;
  return louder.test(text) || size === 0 ? size : undefined;
}

/** A number of cents with a sign, or with a word that says which way it goes. */
function centsIn(text: string): number | undefined {
  const [, sign = '', digits = ''] = cents.exec(text) ?? [];
  if (digits === '') return undefined;
  const size = Number(digits.replace(',', '.'));
  if (sign !== '') return sign === '+' ? size : 0 - size;
  if (!tuning.test(text) || off.test(text)) return undefined;
  const [isUp, isDown] = [tunedUp.test(text), tunedDown.test(text)];
  return isUp === isDown ? undefined : isUp ? size : 0 - size;
}

/** The values that a text gives for the zones it speaks of. */
export function valuesForAll(text: string): Map<SharedName, number | string> {
  const values = new Map<SharedName, number | string>();
  const number = (one: string | undefined) =>
    one === undefined ? undefined : readNumber(one.replace(/\s/g, '').replace('\u2013', '-'))?.number;
  const set = (name: 'volume' | 'transpose' | 'tune', value: number | undefined) => {
    if (value !== undefined && Number.isFinite(value)) values.set(name, value);
  };
  set('volume', levelIn(text));
  const [, behind, before] = semitones.exec(text) ?? [];
  set('transpose', number(behind ?? before));
  const way = octave.exec(text)?.[1];
  if (way && !values.has('transpose')) set('transpose', /lower|down/i.test(way) ? -12 : 12);
  set('tune', centsIn(text));
  const side = pan.exec(text)?.[1];
  const position = side === undefined ? undefined : readPan(side);
  if (typeof position === 'number') values.set('pan', position);
  if (once.test(text)) values.set('loop_mode', 'one_shot');
  else if (unlooped.test(text)) values.set('loop_mode', 'no_loop');
  else if (looped.test(text)) values.set('loop_mode', loopWord('looped') ?? 'loop_continuous');
  return values;
}
