import { everyWords } from '../../everyWords';
import { rangeEndWords } from '../../rangeWords';
import type { KeyReading } from '../../readings/keyReading';
import { readKey } from '../../readings/keyReading';
import { keyInText } from '../../readings/notePatterns';

/** How the text says that roots share the keys out among them. */
export interface KeySpread {
  /** From each root up to below the next, down to above the one before, or as far as half way to both. */
  is: 'upward' | 'downward' | 'nearest';
  text: string;
}

const longest = 2000;
const next =
  /(?<!\p{L})(?:next|following|n\u00e4chste[rnms]?|folgenden?|suivante?|prochaine?|siguiente|pr\u00f3xim[ao]|prossim[ao]|seguente|successiv[ao]|seguinte|volgende|n\u00e4sta|n\u00e6ste|neste|seuraava\p{L}*|nast\u0119pn\p{L}*|dal\u0161\p{L}*|n\u00e1sleduj\p{L}*|следующ\p{L}*|sonraki\p{L}*|következő\p{L}*|επόμεν\p{L}*)(?!\p{L})|次の|下一|다음/iu;
const before =
  /(?<!\p{L})(?:previous|preceding|one before|vorige[rnms]?|vorherige[rnms]?|pr\u00e9c\u00e9dente?|anterior|precedente|vorige|f\u00f6reg\u00e5ende|f\u00f8reg\u00e5ende|forrige|edellise\p{L}*|poprzedni\p{L}*|p\u0159edchoz\p{L}*|предыдущ\p{L}*|önceki\p{L}*|előző\p{L}*|προηγούμεν\p{L}*)(?!\p{L})|前の|上一|이전/iu;
const upTo = new RegExp(
  String.raw`(?<!\p{L})(?:${rangeEndWords('upTo', 'below')}|up|upwards?|before|aufw\u00e4rts|hinauf|jusqu\p{L}*|avant|sous|antes|debajo|fino|sotto|prima|abaixo|onder|voor|upp|op|ned\u00e4nfor|asti|saakka|alle|pod|a\u017e|ниже|kadar|μέχρι|έως|ως|under)(?!\p{L})|\p{L}{3}ig(?!\p{L})|まで|直到|之前|까지`,
  'iu',
);
const downTo =
  /(?<!\p{L})(?:down|downwards?|above|over|after|hinunter|abw\u00e4rts|\u00fcber|au-dessus|apr\u00e8s|abajo|encima|despu\u00e9s|gi\u00f9|sopra|dopo|abaixo|acima|omlaag|boven|ner|ned|ovanf\u00f6r|yl\u00e4puolelle|nad|powy\u017cej|выше)(?!\p{L})|上まで/iu;
const nearest =
  /(?<!\p{L})(?:half ?-?way|nearest|closest|midway|auf halbem weg\p{L}*|bis zur mitte|zur h\u00e4lfte|n\u00e4chstgelegen\p{L}*|\u00e0 mi-chemin|le plus proche|la plus proche|a mitad|m\u00e1s cercan[ao]|a met\u00e0|pi\u00f9 vicin[ao]|a meio|mais pr\u00f3xim[ao]|halverwege|dichtstbijzijnde|halvv\u00e4gs|n\u00e4rmaste|halvvejs|n\u00e6rmeste)(?!\p{L})/iu;
/** What such a sentence speaks of. */
const plays = new RegExp(
  String.raw`${everyWords}|(?<!\p{L})(?:its|own|takes?|samples?|notes?|keys?|recordings?|tasten?|ton|t\u00f6ne|aufnahmen?|touches?|teclas?|tast[oi]|toets\p{L}*|tangent\p{L}*|her)(?!\p{L})|各|각`,
  'iu',
);

/** Before the key that the outermost zone reaches to. */
const reachingTo = `${rangeEndWords('upTo')}|jusqu\\p{L}*|fino`;
const starts =
  'starts?|begins?|beginnt|commence|d\u00e9bute|empieza|comienza|inizia|comincia|parte|come\u00e7a|begint|b\u00f6rjar|begynder|starter';
const stops =
  'ends?|stops?|endet|finit|se termine|s.arr\u00eate|termina|acaba|finisce|arriva|eindigt|slutar|slutter';
const lowestWord = String.raw`(?<!\p{L})(?:lowest|first|bottom|deepest|tiefste[rnms]?|unterste[rnms]?|erste[rnms]?|premi[e\u00e8]re?|plus (?:grave|bas)\p{L}*|primer[oa]?|prim[oa]|primeir[oa]|m\u00e1s (?:grave|baj[oa])|pi\u00f9 (?:grave|bass[oa])|mais (?:grave|baix[oa])|laagste|eerste|l\u00e4gsta|f\u00f6rsta|laveste|f\u00f8rste)(?!\p{L})`;
const lowest = new RegExp(
  String.raw`${lowestWord}[^.;\n]{0,60}?(?<!\p{L})(?:${reachingTo}|down|from|hinunter|ab|ner|ned|\u00e0 la|${starts})(?!\p{L})['\u2019]?[^.;,\n\d]{0,20}?(${keyInText})`,
  'iu',
);
/** The key that the lowest zone itself starts with. */
const lowestStart = new RegExp(
  String.raw`${lowestWord}[^.;\n\d]{0,30}?(?<!\p{L})(?:${starts}|from|at|is|ab|bei)(?!\p{L})[^.;\n\d]{0,45}?(${keyInText})`,
  'iu',
);
const highest = new RegExp(
  String.raw`(?<!\p{L})(?:highest|last|top|uppermost|h\u00f6chste[rnms]?|oberste[rnms]?|letzte[rnms]?|derni[e\u00e8]re?|plus (?:aigu\u00eb?|haut)\p{L}*|\u00faltim[oa]|m\u00e1s (?:agud[oa]|alt[oa])|ultim[oa]|pi\u00f9 (?:acut[oa]|alt[oa])|mais (?:agud[oa]|alt[oa])|hoogste|laatste|h\u00f6gsta|sista|h\u00f8jeste|sidste)(?!\p{L})[^.;\n]{0,60}?(?<!\p{L})(?:${reachingTo}|up|hinauf|upp|op|${stops})(?!\p{L})['\u2019]?[^.;,\n\d]{0,20}?(${keyInText})`,
  'iu',
);

const utmost = {
  low: String.raw`(?<!\p{L})(?:najni\u017csz\p{L}+|pierwsz\p{L}+|nejni\u017e\u0161\p{L}+|prvn\p{L}+|сам\p{L}+ нижн\p{L}+|нижн\p{L}+|перв\p{L}+|alin|ensimm\u00e4i\p{L}+|ilk\p{L}*|en (?:alt|pes)\p{L}*|els\u0151\p{L}*|legals\u00f3\p{L}*|πρώτ\p{L}+|χαμηλότερ\p{L}+)|最初の|最低の?|第一个|最低|첫|가장 낮은`,
  high: String.raw`(?<!\p{L})(?:najwy\u017csz\p{L}+|ostatni\p{L}*|nejvy\u0161\u0161\p{L}+|posledn\p{L}+|сам\p{L}+ верхн\p{L}+|верхн\p{L}+|последн\p{L}+|ylin|viimei\p{L}+|son\p{L}*|en (?:\u00fcst|tiz)\p{L}*|utols\u00f3\p{L}*|legfels\u0151\p{L}*|τελευταί\p{L}+|ψηλότερ\p{L}+)|最後の?|最高の?|最后|最高|마지막|가장 높은`,
} as const;
const behindKey = String.raw`['\u2019:-]?\p{L}{0,4}\s?(?:kadar|asti|saakka|-?ig(?!\p{L})|まで|까지)`;
const beforeKey = String.raw`(?:(?<!\p{L})(?:do|po|a\u017e|до|μέχρι|έως|ως)(?!\p{L})|直到|到)`;
const fromKey = String.raw`(?:(?<!\p{L})(?:od|от|с|από)(?!\p{L})|从)`;
/** As {@link lowest} and {@link highest} in languages that inflect them, or put the word for an end behind its key. */
const lowestToo = new RegExp(
  String.raw`(?:${utmost.low})[^.;,\n\d]{0,40}?(?:${fromKey}[^.;,\n\d]{0,20}?(${keyInText})|(${keyInText})['\u2019:-]?(?:\s?(?:t[ea]n|d[ea]n|から|부터|[-]?t[oó]l|st[aä])))`,
  'iu',
);
const highestToo = new RegExp(
  String.raw`(?:${utmost.high})[^.;,\n\d]{0,40}?(?:${beforeKey}[^.;,\n\d]{0,20}?(${keyInText})|(${keyInText})${behindKey})`,
  'iu',
);

/** Reads how roots share the keys out: `each take plays from its own key up to the key below the next`. */
export function keySpreadIn(texts: readonly string[]): KeySpread | undefined {
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[.;!?](?=\s|$)|[\n\r。]/u)) {
      const text = sentence.trim();
      if (!plays.test(text)) continue;
      if (nearest.test(text)) return { is: 'nearest', text };
      if (next.test(text) && upTo.test(text)) return { is: 'upward', text };
      if (before.test(text) && downTo.test(text)) return { is: 'downward', text };
    }
  return undefined;
}

/** The keys that the text names for the lowest and for the highest zone to reach to. */
export function outermostKeysIn(texts: readonly string[]): {
  lowest: KeyReading | undefined;
  highest: KeyReading | undefined;
} {
  return { lowest: keyBy(texts, lowest, lowestToo), highest: keyBy(texts, highest, highestToo) };
}

/** The key that the lowest zone starts with by its text, where a table gives the upper ends alone. */
export function lowestKeyIn(texts: readonly string[]): KeyReading | undefined {
  return keyBy(texts, lowestStart, lowest, lowestToo);
}

/** The key that the first of some patterns finds in the first of some texts. */
function keyBy(texts: readonly string[], ...patterns: readonly RegExp[]): KeyReading | undefined {
  for (const text of texts)
    for (const pattern of patterns) {
      const [, before, behind] = pattern.exec(text.slice(0, longest)) ?? [];
      const found =
        before === undefined && behind === undefined ? undefined : readKey(before ?? behind ?? '');
      if (found) return found;
    }
  return undefined;
}
