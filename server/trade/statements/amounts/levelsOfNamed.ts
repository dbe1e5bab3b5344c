import { forAllIn } from './forAll';
import type { ForSome } from './levelChange';
import { decibelsIn, levelChangeIn, speaksOfExceptions, withoutWays } from './levelChange';

/** Signs and words that part a sentence into clauses; small words of one language that mean something else in another are not among them. */
const between =
  /([;:\u2014]|\u2013(?!\d)|\s[/|\u00b7]\s|,(?!\d)|\s(?:and|while|whereas|but|und|w\u00e4hrend|aber|tandis que|mientras|mentre|pero|maar|terwijl|och|medan|mens|och|og|ja|oraz|zatímco|и|а|но)\s|\u3001|\uff0c)/iu;
/** So few words before a sign, or before a word that joins, name something and say nothing of it: `the near mics and the far mics`. */
const mostInList = { sign: 2, word: 4 };
/** Words that name what a level is compared with. */
const comparison =
  /(?<!\p{L})(?:than|as|below|under|beneath|above|over|compared|relative|vs|als|unter(?:halb)?|\u00fcber|oberhalb|gegen\u00fcber|que|sous|(?:au-?)?dess[ou]us|par rapport|debajo|encima|respecto|di quell\p{L}*|rispetto|dei|delle|sotto|sopra|do que|abaixo|acima|dan|onder|boven|\u00e4n|j\u00e4mf\u00f6rt|end|enn|kuin|ni\u017c|poni\u017cej|powy\u017cej|od|ne\u017e|pod|nad|\u0447\u0435\u043c|\u043d\u0438\u0436\u0435|\u0432\u044b\u0448\u0435|\u043e\u0442\u043d\u043e\u0441\u0438\u0442\u0435\u043b\u044c\u043d\u043e|mint)(?!\p{L}).*$/iu;
/** The same where it stands before the word that says so, or right behind one for quieter. */
const comparedBefore =
  /[^\s\u306f\u304c\u3092\u3001]{1,20}より|[比较][^低高小大\d]{1,20}|\S{1,20}보다|(?<=(?:тише|громче|ниже|выше) )\p{L}+(?:[ыи]х|[ое]го|ой|ей)(?!\p{L})/giu;
/** Words of how loud something was made or measured, where nothing is to be changed. */
const measured =
  /(?<!\p{L})(?:recorded|made|printed|rendered|bounced|exported|baked|on disk|aufgenommen|enregistr\p{L}+|grabad\p{L}+|registrat\p{L}+|gravad\p{L}+|opgenomen|inspela\p{L}*|optaget|nagran\p{L}+|nahr\u00e1n\p{L}+|\u0437\u0430\u043f\u0438\u0441\p{L}+|peaks?|peaking|normali[sz]\p{L}*|noise|hiss|floor|headroom|threshold|rms|lufs|spitze\p{L}*|rauschen|cr\u00eates?|bruit|picos?|ruido|picchi|picco|rumore|ru\u00eddo|piek\p{L}*|ruis|topp\p{L}*|brus|huippu\p{L}*|szczyt\p{L}*|szum\p{L}*|\u0161pi\u010dk\p{L}*|\u0161um|\u043f\u0438\u043a\p{L}*|\u0448\u0443\u043c\p{L}*|too|zu (?:laut|leise)|trop|demasiado|troppo|demais|\u0441\u043b\u0438\u0448\u043a\u043e\u043c)(?!\p{L})|ピーク|ノイズ|峰值|噪/iu;

/**
 * Reads what a sentence changes of the levels of zones that it names in any of its words: `The room files sit 6 dB lower than the close
 * ones`. Which words name zones, who knows the zones has to say.
 */
export function levelsOfNamed(sentence: string): ForSome[] {
  // What it says of all zones is read as that.
  if (forAllIn([sentence]).some(({ values }) => values.has('volume'))) return [];
  const found: ForSome[] = [];
  let before = '';
  let usual = 0;
  const clauses = clausesOf(sentence);
  for (const [at, clause] of clauses.entries()) {
    const [amount, ...others] = decibelsIn(clause);
    const change = amount && levelChangeIn(clause, clause, others.length > 0 ? 0 : usual);
    if (amount && change && /[1-9]/.test(clause.slice(amount.start, amount.end))) {
      usual = Math.sign(change.volume);
      const behind = clause.slice(amount.end).replace(comparison, ' ');
      const ahead = clause.slice(0, amount.start).replace(comparedBefore, ' ');
      const doubt = measured.test(`${ahead} ${behind}`)
        ? 'it may tell how loud the samples are'
        : change.doubt;
      const among = [`${ahead.replace(comparison, ' ')} ${behind}`, `${ahead} ${behind}`, before];
      const next = clauses[at + 1] ?? '';
      found.push({
        name: undefined,
        among: among.map(withoutWays),
        exceptions: decibelsIn(next).length === 0 && speaksOfExceptions(next) ? next : '',
        volume: change.volume,
        doubt,
        text: sentence,
      });
    }
    before += ` ${clause}`;
  }
  return found;
}

/** The clauses of a sentence; what only lists names belongs to what is said of them. */
function clausesOf(sentence: string): string[] {
  const parts = sentence.split(between);
  const clauses: string[] = [];
  let open = '';
  for (let at = 0; at < parts.length; at += 2) {
    const part = open + (parts[at] ?? '');
    const sign = parts[at + 1];
    const words = part.match(/[\p{L}\p{N}]+/gu)?.length ?? 0;
    const isList =
      sign !== undefined &&
      words <= (/\p{L}/u.test(sign) ? mostInList.word : mostInList.sign) &&
      decibelsIn(part).length === 0;
    open = isList ? part + sign : '';
    if (!isList) clauses.push(part);
  }
  return clauses;
}
