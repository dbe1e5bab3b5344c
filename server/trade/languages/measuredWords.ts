import { bareWord } from './spelling';

/** Units of how loud a sound is, which nothing is set in (ITU-R BS.1770-5, EBU R 128, common practice). */
const absoluteUnit =
  /lu ?fs|lkfs|db ?fs|db ?tp|(?<!\p{L})db(?: ?(?:spl|rms|peak)|[uva]|\([ac]\))(?!\p{L})|(?<=[([{（]\s?)lu(?=\s?[)\]}）])/iu;
/** Words of what is measured in a sample, by language and without accents, some of them stems. */
const byLanguage: readonly string[] = [
  '(?:true)?peaks?|peaking|rms|r128|spl|lra|plr|psr|crest|noise|hiss|snr|dr|headroom|threshold|dynamic range|measured|normali[sz]ed|average|avg|mean|integrated|momentary|short ?term',
  String.raw`spitze\p{L}*|scheitel\p{L}*|rausch\p{L}*|storabstand|gemessen\p{L}*|messwert\p{L}*|normalisiert|mittelwert\p{L}*|mittelungspegel|mittlerer? (?:pegel|lautstarke|lautheit)|durchschnitt\p{L}*|dynamikumfang|aussteuerung\p{L}*`,
  'cretes?|bruit|mesuree?s?|normalisee?s?|moyenne|(?:niveau|volume) moyen|plage dynamique',
  'picos?|ruido|medid[oa]s?|normalizad[oa]s?|promedios?|(?:nivel|valor|volumen|volume) medio|(?:rango|gama|margen|faixa) dinamic[oa]',
  'picc(?:o|hi)|rumore|misurat[oa]|normalizzat[oa]|(?:livello|valore|volume) medio|gamma dinamica|medicao',
  String.raw`piek\p{L}*|ruis\p{L}*|gemeten|genormaliseerd|gemiddelde?|dynamisch bereik`,
  String.raw`topp\p{L}*|brus\p{L}*|uppmatt|matt|medel\p{L}*|stoj|malt|gennemsnit\p{L}*|spids\p{L}*`,
  String.raw`huippu\p{L}*|kohina\p{L}*|mitattu|keski(?:arvo|taso)\p{L}*|szczyt\p{L}*|szum\p{L}*|zmierzon\p{L}*|sredni[ae]?`,
  String.raw`spick\p{L}*|sum|namereno|prumer\p{L}*|vrsn\p{L}*|izmjeren\p{L}*|csucs\p{L}*|zaj\p{L}*|mert|atlag\p{L}*`,
  String.raw`tepe|gurultu|olculen|ortalama|varf|zgomot|masurat\p{L}*|pic|soroll|mesurat`,
  String.raw`пик\p{L}*|шум\p{L}*|измерен\p{L}*|средн(?:ее|ий уровень|яя громкость)|пік\p{L}*|виміря\p{L}*|върх\p{L}*|κορυφη\p{L}*|αιχμη\p{L}*|θορυβο\p{L}*`,
];
const words = new RegExp(
  String.raw`(?<!\p{L})(?:${byLanguage.join('|')})(?!\p{L})|ピーク|ノイズ|実測|平均|峰值|噪|测得|測得|피크|노이즈|평균`,
  'u',
);

/** A level that something is compared with: `peak -1 dBFS`. */
const reference = /(?:\p{L}{1,15} )?[-\u2212]?\d{1,3}(?:[.,]\d)? ?(?:lufs|lkfs|dbfs|dbtp)/giu;

/** A text without the levels that something is compared with, as in `Gain (dB, peak -1 dBFS)`. */
export function withoutReference(text: string): string {
  return text.replace(reference, ' ');
}

/** Whether a text gives a unit in which levels are measured and never set: `LUFS`, `dBFS`, `dB SPL`. */
export function givesMeasuredUnit(text: string): boolean {
  return absoluteUnit.test(text);
}

/** Whether a text has a word for what is measured in a sample, as its peak or its noise. */
export function namesMeasure(text: string): boolean {
  return words.test(bareWord(text.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')).replaceAll('_', ' '));
}
