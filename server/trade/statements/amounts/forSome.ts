import { everyWords } from '../../everyWords';
import type { ForSome } from './levelChange';
import { hasDecibels, levelChangeIn } from './levelChange';
import { levelsOfNamed } from './levelsOfNamed';
import { zoneWord } from './zoneWord';

const longest = 2000;
/** Words for what a table is made of, as a part of a pattern that goes by `i` and `u`. */
const rowWord: string = String.raw`${zoneWord}|layers?|takes?|lines?|schicht(?:en)?|lagen?|zeilen?|stufen?|couches?|lignes?|prises?|nuances?|capas?|filas?|l\u00edneas?|tomas?|strat[oi]|righe|riga|camadas?|linhas?|rijen|rij|regels?|lager|lagret|r\u00e6kker?|linjer?|kerro\p{L}*|rivi\p{L}*|warstw\p{L}*|wiersz\p{L}*|\u0159\u00e1dk\p{L}*|vrstv\p{L}*|строк\p{L}*|сло[йяеёюи]\p{L}*|sat\u0131r\p{L}*|katman\p{L}*|sor\p{L}*|r\u00e9teg\p{L}*`;
const opening = String.raw`["\u201c\u201e\u00ab'\u2018\u300c\u300e]`;
const closing = String.raw`["\u201d\u201c\u00bb'\u2019\u300d\u300f]`;
const article = String.raw`(?:\s+(?:the|of the|die|der|den|de|les|las|los|le|i|gli|as|os|deze|dessa|disse))?`;
/** `every "s" row`, `alle leisen Zeilen`. */
const before = new RegExp(
  String.raw`${everyWords}${article}\s+${opening}?(?!(?:the|of|les|las|los|le|gli|as|os|die|der|den|de)\s)(\p{L}[\p{L}\d]{0,14})${closing}?[-\s]+(?:${rowWord})(?!\p{L})`,
  'iu',
);
/** `toutes les lignes douces`, `todas las filas con «s»`. */
const behind = new RegExp(
  String.raw`${everyWords}${article}\s+(?:${rowWord})\s+(?:(?:with|marked|called|named|ending|in|on|mit|namens|avec|marqu\p{L}+|nomm\p{L}+|con|marcad\p{L}+|com|met|med|z|se|s|с|de|del|della|da|do)\s+){0,2}(?:${opening}\s?(\p{L}[\p{L}\d]{0,14})\s?${closing}|(\p{L}{3,15}))(?!\p{L})`,
  'iu',
);
const ideographic = new RegExp(
  String.raw`${opening}(\p{L}[\p{L}\d]{0,14})${closing}(?:の|的)?\s?(?:行|列|音|サンプル|層|层|采样|样本|행|줄|샘플|레이어)(?:は|を|은|는|을|를|都)?\s?(?:すべて|全て|全部|모두|전부)|(?:すべて|全て|全部|所有|모든)(?:の|的)?\s?${opening}?(\p{L}[\p{L}\d]{0,14}?)${closing}?(?:の|的)?\s?(?:行|サンプル|層|层|采样|样本|행|줄|샘플|레이어)`,
  'iu',
);
/** Reads what a text changes of the levels of some zones: `take 3 dB off every "s" row`, `alle leisen Zeilen 2 dB leiser`. */
export function forSomeIn(texts: readonly string[]): ForSome[] {
  const found: ForSome[] = [];
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/(?<!\d)[.!?](?=\s|$)|[\n\r;。！]/u)) {
      const text = sentence.trim();
      if (!hasDecibels(text) || found.some((one) => one.text.includes(text))) continue;
      const read = readSentence(text);
      if (read.length === 0) continue;
      // A sentence that goes over two lines comes once more as a whole.
      const others = found.filter((one) => !text.includes(one.text));
      found.splice(0, found.length, ...others, ...read);
    }
  return found;
}

function readSentence(text: string): ForSome[] {
  const match = before.exec(text) ?? behind.exec(text) ?? ideographic.exec(text);
  const name = match?.[1] ?? match?.[2];
  if (!match || name === undefined) return levelsOfNamed(text);
  // What names the rows says nothing of the way.
  const change = levelChangeIn(text, text.replace(match[0], ' '));
  return change ? [{ name, among: [], exceptions: '', ...change, text }] : [];
}

const microphoneWord = String.raw`mic(?:rophone)?s?|mikr?os?|mikrofon\p{L}*|micros?|microfon\p{L}*|микрофон\p{L}*`;
const beforeRows = new RegExp(
  String.raw`(?<!\p{L})(\p{L}{3,20})["\u201d\u201c\u00bb'\u2019]?[-\s]+(?=(?:${rowWord}|${microphoneWord}|ones)(?!\p{L}))`,
  'giu',
);
const behindRows = new RegExp(
  String.raw`(?<!\p{L})(?:${rowWord}|${microphoneWord})\s+(?:(?:of|with|in|on|de|del|della|do|da|dos|das|des|du|di|con|com|avec|mit|med|met|van|der|från|fra|z|s|с)\s+){0,1}(?:(?:the|la|le|les|el|los|las|il|i|gli|den|det|de)\s+)?(?:[dl]['\u2019])?["\u201c\u201e\u00ab'\u2018]?(\p{L}{3,20})(?!\p{L})`,
  'giu',
);

const count = String.raw`\d{1,2}|two|three|four|five|six|eight|zwei|beiden|drei|vier|f\u00fcnf|sechs|deux|trois|quatre|dos|tres|cuatro|due|tre|quattro|dois|duas|tr\u00eas|quatro|twee|drie|tv\u00e5|fyra`;
/** A letter or two behind an article or a count: `the h files`, `all three h files`. */
const lettersBefore = new RegExp(
  String.raw`(?<!\p{L})(?:the|die|der|den|les|los|las|gli|os|as|de|both|beide|(?:all|alle|alla)(?=\s+(?:${count})\s))\s+(?:(?:${count})\s+)?(\p{L}{1,2})[-\s]+(?=(?:${rowWord})(?!\p{L}))`,
  'giu',
);
/** What is written as a part of a name, between quotes or behind the sign that parts names: `"hall"`, `_h`, `*_hall.wav`. */
const quoted = new RegExp(String.raw`${opening}\s?_?([\p{L}\d]{1,20})\s?${closing}`, 'giu');
const behindSign = /(?<![\p{L}\d])_([\p{L}\d]{1,20})(?![\p{L}\d_])/giu;
/** The same between words of scripts that write no blanks. */
const behindSignUnspaced =
  /(?<![\p{Script=Latin}\d])_([\p{Script=Latin}\d]{1,20})(?=[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}])/giu;

/** Words that may be parts of the names of samples: beside words for rows, samples or microphones, in quotes or behind `_`. */
export function namesOfRows(text: string): string[] {
  const patterns = [beforeRows, behindRows, lettersBefore, quoted, behindSign, behindSignUnspaced];
  const found = patterns.flatMap((pattern) => Array.from(text.matchAll(pattern), ([, name = '']) => name));
  return [...new Set(found)];
}
