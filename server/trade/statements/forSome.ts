import { everyWord, zoneWord } from './forAll';

/** A level or a tuning that the text adds to some of the zones, known by a word such as `soft` or the letter of their names. */
export interface ForSome {
  name: string;
  volume: number;
  /** Why it is not to be done, to go on after the sentence; `undefined` where nothing speaks against it. */
  doubt: string | undefined;
  text: string;
}

const longest = 2000;
const rows = String.raw`${zoneWord}|layers?|takes?|lines?|schicht(?:en)?|lagen?|zeilen?|stufen?|couches?|lignes?|prises?|nuances?|capas?|filas?|l\u00edneas?|tomas?|strat[oi]|righe|riga|camadas?|linhas?|rijen|rij|regels?|lager|lagret|r\u00e6kker?|linjer?|kerro\p{L}*|rivi\p{L}*|warstw\p{L}*|wiersz\p{L}*|\u0159\u00e1dk\p{L}*|vrstv\p{L}*|строк\p{L}*|сло[йяеёюи]\p{L}*|sat\u0131r\p{L}*|katman\p{L}*|sor\p{L}*|r\u00e9teg\p{L}*`;
const opening = String.raw`["\u201c\u201e\u00ab'\u2018\u300c\u300e]`;
const closing = String.raw`["\u201d\u201c\u00bb'\u2019\u300d\u300f]`;
const article = String.raw`(?:\s+(?:the|of the|die|der|den|de|les|las|los|le|i|gli|as|os|deze|dessa|disse))?`;
/** `every "s" row`, `alle leisen Zeilen`. */
const before = new RegExp(
  String.raw`(?<!\p{L})(?:${everyWord})${article}\s+${opening}?(?!(?:the|of|les|las|los|le|gli|as|os|die|der|den|de)\s)(\p{L}[\p{L}\d]{0,14})${closing}?[-\s]+(?:${rows})(?!\p{L})`,
  'iu',
);
/** `toutes les lignes douces`, `todas las filas con «s»`. */
const behind = new RegExp(
  String.raw`(?<!\p{L})(?:${everyWord})${article}\s+(?:${rows})\s+(?:(?:with|marked|called|named|ending|in|on|mit|namens|avec|marqu\p{L}+|nomm\p{L}+|con|marcad\p{L}+|com|met|med|z|se|s|с|de|del|della|da|do)\s+){0,2}(?:${opening}\s?(\p{L}[\p{L}\d]{0,14})\s?${closing}|(\p{L}{3,15}))(?!\p{L})`,
  'iu',
);
const ideographic = new RegExp(
  String.raw`${opening}(\p{L}[\p{L}\d]{0,14})${closing}(?:の|的)?\s?(?:行|列|音|サンプル|層|层|采样|样本|행|줄|샘플|레이어)(?:は|を|은|는|을|를|都)?\s?(?:すべて|全て|全部|모두|전부)|(?:すべて|全て|全部|所有|모든)(?:の|的)?\s?${opening}?(\p{L}[\p{L}\d]{0,14}?)${closing}?(?:の|的)?\s?(?:行|サンプル|層|层|采样|样本|행|줄|샘플|레이어)`,
  'iu',
);
const decibels = /(?<![\d.,])([-+\u2212\u2013]?)\s?(\d{1,2}(?:[.,]\d{1,2})?)\s?db(?![a-z])/giu;
const less =
  /(?<!\p{L})(?:quieter|softer|lower\p{L}*|down|less|below|cut|off|subtract\p{L}*|minus|reduce\p{L}*|leiser|weniger|abziehen|ab(?=\s*[.,!]|$)|senken|absenken|moins|baiss\p{L}+|enlev\p{L}+|retir\p{L}+|retranch\p{L}+|ôt\p{L}+|menos|baj\p{L}+|rest\p{L}{1,4}|quit\p{L}+|meno|abbass\p{L}+|togli\p{L}*|sottra\p{L}+|baix\p{L}+|tir\p{L}{1,4}|subtra\p{L}+|diminu\p{L}+|zachter|minder|aftrekk\p{L}+|verlaag\p{L}*|eraf|af|lägre|sänk\p{L}*|dra|träk\p{L}*|træk\p{L}*|trekk\p{L}*|sænk\p{L}*|senk\p{L}*|hiljais\p{L}+|vähen\p{L}+|laske\p{L}*|ciszej|odj\p{L}+|odejm\p{L}+|ścisz\p{L}*|obniż\p{L}*|tišeji|ubrat|uber\p{L}*|odeč\p{L}+|sniž\p{L}*|тише|убав\p{L}+|вычт\p{L}+|вычест\p{L}*|сниз\p{L}+|уменьш\p{L}+|kıs\p{L}*|azalt\p{L}*|düşür\p{L}*|çıkar\p{L}*|halkab\p{L}*|csökkent\p{L}*|levon\p{L}*)(?!\p{L})|下げ|引い|引く|減ら|降低|减|減|빼|낮추|내려|내리/iu;
const more =
  /(?<!\p{L})(?:louder|higher|up|boost\p{L}*|add|plus|raise|increase|lauter|anheben|erh\u00f6hen|dazu|hinzu|addier\p{L}*|plus fort|ajout\p{L}+|augment\p{L}+|mont\p{L}{1,3}|m\u00e1s|sub\p{L}{1,3}|añad\p{L}+|sum\p{L}{1,4}|più|alz\p{L}+|aggiung\p{L}+|aument\p{L}+|mais|adicion\p{L}+|som\p{L}{1,4}|luider|verhoog\p{L}*|erbij|höj\p{L}*|lägg|legg|læg|hæv\p{L}*|hev\p{L}*|lisä\p{L}*|nosta\p{L}*|głośniej|doda\p{L}*|podnie\p{L}+|hlasitěji|přid\p{L}+|přič\p{L}+|zvyš\p{L}+|громче|добав\p{L}+|прибав\p{L}+|повыс\p{L}+|ekle\p{L}*|artır\p{L}*|hozzáad\p{L}*|növel\p{L}*|emel\p{L}*)(?!\p{L})|上げ|足し|加え|提高|增加|加上|더하|올려|올리/iu;
/** Words that tell what has been done, or of exceptions. */
const done =
  /(?<!\p{L})(?:already|have|has|had|was|were|been|did|took|bereits|schon|habe|haben|hatte|wurden?|worden|déjà|avons|ont|été|ya|hemos|fueron|già|abbiamo|stat[oaie]|já|fizemos|foram|tinha|reeds|heb|hebben|werd|redan|har|blev|allerede|jo|olen|już|zosta\p{L}+|jest|již|jsem|byl\p{L}*|уже|был\p{L}*)(?!\p{L})|すでに|既に|ました|已经|已經|이미|했습/iu;
const except =
  /(?<!\p{L})(?:except|but not|unless|not|außer|nicht|ohne|sauf|pas|excepto|salvo|tranne|exceto|behalve|niet|utom|inte|undtagen|unntatt|ikke|paitsi|ei|oprócz|nie|kromě|ne|кроме|не|hariç|kivéve|nem)(?!\p{L})|以外|除く|ない|除了|不|제외|않/iu;

/** Reads what a text changes of the levels of some zones: `take 3 dB off every "s" row`, `alle leisen Zeilen 2 dB leiser`. */
export function forSomeIn(texts: readonly string[]): ForSome[] {
  const found: ForSome[] = [];
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/(?<!\d)[.!?](?=\s|$)|[\n\r;。！]/u)) {
      const one = readSentence(sentence.trim());
      if (!one || found.some(({ text }) => text.includes(one.text))) continue;
      // A sentence that goes over two lines comes once more as a whole.
      const part = found.findIndex(({ text }) => one.text.includes(text));
      if (part >= 0) found.splice(part, 1);
      found.push(one);
    }
  return found;
}

function readSentence(text: string): ForSome | undefined {
  const amounts = Array.from(text.matchAll(decibels));
  const [amount] = amounts;
  const match = amount && (before.exec(text) ?? behind.exec(text) ?? ideographic.exec(text));
  const name = match?.[1] ?? match?.[2];
  if (!amount || !match || name === undefined) return undefined;
  const size = Number((amount[2] ?? '').replace(',', '.'));
  // What names the rows says nothing of the way.
  const rest = text.replace(match[0], ' ');
  const [isLess, isMore] = [less.test(rest), more.test(rest)];
  const sign = amount[1] ?? '';
  const way = sign === '+' ? 1 : sign !== '' ? -1 : isLess === isMore ? 0 : isLess ? -1 : 1;
  const isClash = (sign === '+' && isLess) || (sign !== '' && sign !== '+' && isMore);
  const doubt = done.test(rest)
    ? 'it may tell what has been done already'
    : except.test(rest)
      ? 'it speaks of exceptions'
      : amounts.length > 1 || way === 0 || isClash
        ? 'it does not tell for certain how much is added or taken off'
        : undefined;
  return { name, volume: way * size, doubt, text };
}
