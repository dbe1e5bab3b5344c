import { turningWords } from '../../turningWords';
/** How a sentence changes a level. */
export interface LevelChange {
  /** In dB; below 0 where it is lowered. */
  volume: number;
  /** Why it is not to be done, to go on after the sentence; `undefined` where nothing speaks against it. */
  doubt: string | undefined;
}

/** A level that the text adds to some of the zones, which it names: by a word such as `soft`, the letter of their names, their group. */
export interface ForSome extends LevelChange {
  /** The word; `undefined` where the sentence may name zones by any of its words. */
  name: string | undefined;
  /** Parts of the sentence that may name zones, the most telling first, where there is no `name`. */
  among: readonly string[];
  /** What the sentence leaves out besides, which may be zones that it does not mean anyway; empty where it does not. */
  exceptions: string;
  text: string;
}

const decibels =
  /(?<![\d.,])([-+\u2212\u2013]?)\s?(\d{1,2}(?:[.,]\d{1,2})?)\s?(?:db|дб|decib[eè]l\p{L}*|dezibel|децибел\p{L}*|デシベル|分贝|分貝|데시벨)(?![a-zа-я])/giu;
const less =
  /(?<!\p{L})(?:beneath|under|drop\p{L}*|duck\p{L}*|unter(?:halb)?|tiefer|herunter|runter|sous|dessous|(?:plus|en) bas|debajo|sotto|abaixo|onder|omlaag|ner|ned|under|alas|poniżej|niżej|pod|níže|ниже|altında|alatt|quieter|softer|lower\p{L}*|down|less|below|cut|off|subtract\p{L}*|minus|reduce\p{L}*|leiser|weniger|abziehen|ab(?=\s*[.,!]|$)|abgesenk\p{L}*|gesenkt|reduziert\p{L}*|gedämpft|senken|absenken|moins|baiss\p{L}+|enlev\p{L}+|retir\p{L}+|retranch\p{L}+|ôt\p{L}+|menos|baj\p{L}+|rest\p{L}{1,4}|quit\p{L}+|meno|abbass\p{L}+|togli\p{L}*|sottra\p{L}+|baix\p{L}+|tir\p{L}{1,4}|subtra\p{L}+|diminu\p{L}+|zachter|minder|aftrekk\p{L}+|verlaag\p{L}*|eraf|af|lägre|svag\p{L}*|sänk\p{L}*|dra|träk\p{L}*|træk\p{L}*|trekk\p{L}*|sænk\p{L}*|senk\p{L}*|hiljais\p{L}+|vähen\p{L}+|laske\p{L}*|ciszej|odj\p{L}+|odejm\p{L}+|ścisz\p{L}*|obniż\p{L}*|tišeji|ubrat|uber\p{L}*|odeč\p{L}+|sniž\p{L}*|тише|убав\p{L}+|вычт\p{L}+|вычест\p{L}*|сниз\p{L}+|уменьш\p{L}+|kıs\p{L}*|azalt\p{L}*|düşür\p{L}*|çıkar\p{L}*|halkab\p{L}*|csökkent\p{L}*|levon\p{L}*)(?!\p{L})|下げ|下が|低|小さ|引い|引く|減ら|降低|低于|低|减|減|小|빼|낮추|내려|내리/iu;
const more =
  /(?<!\p{L})(?:above|over|über|oberhalb|höher|rauf|dessus|encima|sopra|acima|boven|omhoog|upp|opp|över|powyżej|wyżej|nad|výš\p{L}*|выше|fölött|louder|higher|up|boost\p{L}*|add|plus|raise|increase|lauter|anheben|erh\u00f6hen|dazu|hinzu|addier\p{L}*|plus fort|ajout\p{L}+|augment\p{L}+|mont\p{L}{1,3}|m\u00e1s|sub\p{L}{1,3}|añad\p{L}+|sum\p{L}{1,4}|più|alz\p{L}+|aggiung\p{L}+|aument\p{L}+|mais|adicion\p{L}+|som\p{L}{1,4}|luider|verhoog\p{L}*|erbij|höj\p{L}*|lägg|legg|læg|hæv\p{L}*|hev\p{L}*|lisä\p{L}*|nosta\p{L}*|głośniej|doda\p{L}*|podnie\p{L}+|hlasitěji|přid\p{L}+|přič\p{L}+|zvyš\p{L}+|громче|добав\p{L}+|прибав\p{L}+|повыс\p{L}+|ekle\p{L}*|artır\p{L}*|hozzáad\p{L}*|növel\p{L}*|emel\p{L}*)(?!\p{L})|上げ|上が|大き|足し|加え|提高|增加|加上|더하|올려|올리/iu;
/** `plus bas`, `más bajo`: words for more that make up those for less. */
const lower =
  /(?<!\p{L})(?:plus|más|mas|mais|più|piu)\s+(?:bas|faibl|dou[cx]|discr|baj|suav|débil|baix|frac|pian|debol)\p{L}*/giu;
/** Words that tell what has been done, or of exceptions. */
const done = new RegExp(
  String.raw`${turningWords('already')}|(?<!\p{L})(?:have|has|had|was|were|been|did|took|habe|haben|hatte|wurden?|worden|avons|ont|été|hemos|fueron|abbiamo|stat[oaie]|fizemos|foram|tinha|heb|hebben|werd|har|blev|olen|zosta\p{L}+|jsem|byl\p{L}*|был\p{L}*)(?!\p{L})|ました|했습`,
  'iu',
);
const except = new RegExp(turningWords('not', 'except', 'without'), 'iu');

const [lessWords, moreWords] = [new RegExp(less.source, 'giu'), new RegExp(more.source, 'giu')];

/** Whether a text gives an amount in dB. */
export function hasDecibels(text: string): boolean {
  return text.search(decibels) >= 0;
}

/** The amounts in dB that a text gives, and where each stands. */
export function decibelsIn(text: string): { start: number; end: number }[] {
  return Array.from(text.matchAll(decibels), ({ 0: found, index }) => ({
    start: index,
    end: index + found.length,
  }));
}

/**
 * The change of level that a text gives by one amount in dB; its sign, or a word in `rest`, says which way it goes, else `usual`: −1, 1, or 0
 * for neither. `undefined` where it gives no amount.
 */
export function levelChangeIn(text: string, rest = text, usual = 0): LevelChange | undefined {
  const amounts = Array.from(text.matchAll(decibels));
  const [amount] = amounts;
  if (!amount) return undefined;
  const size = Number((amount[2] ?? '').replace(',', '.'));
  const ways = waysIn(rest);
  // What a level is compared with may name a place, as `above` does in `quieter than it says above`.
  const { isLess, isMore } = ways.isLess && ways.isMore ? waysIn(rest.replace(compared, ' ')) : ways;
  const sign = amounts.find(({ 1: one }) => one !== '')?.[1] ?? '';
  const way = sign === '+' ? 1 : sign !== '' ? -1 : isLess && isMore ? 0 : isLess ? -1 : isMore ? 1 : usual;
  const isOne = areOne(text, amounts);
  const isClash = (sign === '+' && isLess) || (sign !== '' && sign !== '+' && isMore);
  const doubt = done.test(rest)
    ? 'it may tell what has been done already'
    : except.test(rest)
      ? 'it speaks of exceptions'
      : !isOne || way === 0 || isClash
        ? 'it does not tell for certain how much is added or taken off'
        : undefined;
  return { volume: way * size, doubt };
}

/** Words that stand before what something is compared with, and what follows. */
const compared =
  /(?<!\p{L})(?:than|als|que|di (?:quanto|quello|come)|rispetto|dan|\u00e4n|end|enn|kuin|ni\u017c|ne\u017e|nego|dec\u00e2t|\u0447\u0435\u043c|\u043d\u0456\u0436|\u043e\u0442\u043a\u043e\u043b\u043a\u043e\u0442\u043e|mint|par rapport|compared (?:to|with))(?!\p{L}).*$/iu;

/** Which ways a text names. */
function waysIn(text: string): { isLess: boolean; isMore: boolean } {
  const plain = text.replace(lower, ' ');
  return { isLess: plain !== text || less.test(plain), isMore: more.test(plain) };
}

/** What stands between two ways to write one amount: `6 dB lower (-6 dB)`. */
const inOtherWords =
  /[([=:\u2248\uff08]|\b(?:i\.? ?e\b|that is|so|meaning|d\. ?h\b|also|c['\u2019]est|es decir|cio\u00e8|ou seja|dus|tj|czyli|alts\u00e5|eli)/iu;

/** Whether amounts are the same: one may stand once more with another spelling of its unit, or behind a word for its way with its sign. */
function areOne(text: string, amounts: readonly RegExpExecArray[]): boolean {
  const [first] = amounts;
  return amounts.every(({ 1: sign, 2: digits, index }, at) => {
    const before = amounts[at - 1];
    if (!before || !first) return true;
    if (Number(digits.replace(',', '.')) !== Number(first[2].replace(',', '.'))) return false;
    if (sign === before[1]) return true;
    if (sign !== '' && before[1] !== '') return false;
    return inOtherWords.test(text.slice(before.index + before[0].length, index));
  });
}

/** Whether a text speaks of exceptions. */
export function speaksOfExceptions(text: string): boolean {
  return except.test(text);
}

/** A text without its words for quieter and louder. */
export function withoutWays(text: string): string {
  return text.replace(lower, ' ').replace(lessWords, ' ').replace(moreWords, ' ');
}
