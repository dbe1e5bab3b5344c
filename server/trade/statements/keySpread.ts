import type { KeyReading } from '../readings/keyReading';
import { readKey } from '../readings/keyReading';

/** How the text says that roots share the keys out among them. */
export interface KeySpread {
  /** From each root up to below the next, down to above the one before, or as far as half way to both. */
  is: 'upward' | 'downward' | 'nearest';
  text: string;
}

const longest = 2000;
const next =
  /(?<!\p{L})(?:next|following|n\u00e4chste[rnms]?|folgenden?|suivante?|prochaine?|siguiente|pr\u00f3xim[ao]|prossim[ao]|seguente|successiv[ao]|seguinte|volgende|n\u00e4sta|n\u00e6ste|neste|seuraava\p{L}*|nast\u0119pn\p{L}*|dal\u0161\p{L}*|n\u00e1sleduj\p{L}*|следующ\p{L}*)(?!\p{L})|次の|下一/iu;
const before =
  /(?<!\p{L})(?:previous|preceding|one before|vorige[rnms]?|vorherige[rnms]?|pr\u00e9c\u00e9dente?|anterior|precedente|vorige|f\u00f6reg\u00e5ende|f\u00f8reg\u00e5ende|forrige|edellise\p{L}*|poprzedni\p{L}*|p\u0159edchoz\p{L}*|предыдущ\p{L}*)(?!\p{L})|前の|上一/iu;
const upTo =
  /(?<!\p{L})(?:up|upwards?|until|till|to|below|under|before|bis|unter|aufw\u00e4rts|hinauf|jusqu\p{L}*|avant|sous|hasta|antes|debajo|fino|sotto|prima|at\u00e9|abaixo|tot|onder|voor|upp|under|op|ned\u00e4nfor|asti|saakka|alle|do|pod|a\u017e|до|ниже)(?!\p{L})|まで|直到|之前/iu;
const downTo =
  /(?<!\p{L})(?:down|downwards?|above|over|after|hinunter|abw\u00e4rts|\u00fcber|au-dessus|apr\u00e8s|abajo|encima|despu\u00e9s|gi\u00f9|sopra|dopo|abaixo|acima|omlaag|boven|ner|ned|ovanf\u00f6r|yl\u00e4puolelle|nad|powy\u017cej|выше)(?!\p{L})|上まで/iu;
const nearest =
  /(?<!\p{L})(?:half ?-?way|nearest|closest|midway|auf halbem weg\p{L}*|bis zur mitte|zur h\u00e4lfte|n\u00e4chstgelegen\p{L}*|\u00e0 mi-chemin|le plus proche|la plus proche|a mitad|m\u00e1s cercan[ao]|a met\u00e0|pi\u00f9 vicin[ao]|a meio|mais pr\u00f3xim[ao]|halverwege|dichtstbijzijnde|halvv\u00e4gs|n\u00e4rmaste|halvvejs|n\u00e6rmeste)(?!\p{L})/iu;
/** What such a sentence speaks of. */
const plays =
  /(?<!\p{L})(?:each|every|all|its|own|takes?|samples?|notes?|keys?|recordings?|jede[rsn]?|alle|tasten?|ton|t\u00f6ne|aufnahmen?|chaque|touches?|cada|teclas?|ogni|tast[oi]|elke?|toets\p{L}*|varje|tangent\p{L}*|hver|jokainen|ka\u017cd\p{L}+|ka\u017ed\p{L}+|кажд\p{L}+)(?!\p{L})/iu;

const key = String.raw`((?<!\p{L})[A-Ha-h](?:is|es|[#b\u266f\u266d])?-?\d(?!\d)|(?<![\d.,])\d{1,3}(?![\d.,]\d))`;
const lowest = new RegExp(
  String.raw`(?<!\p{L})(?:lowest|first|bottom|deepest|tiefste[rnms]?|unterste[rnms]?|erste[rnms]?|premi[e\u00e8]re?|plus (?:grave|bas)\p{L}*|primer[oa]?|prim[oa]|primeir[oa]|m\u00e1s (?:grave|baj[oa])|pi\u00f9 (?:grave|bass[oa])|mais (?:grave|baix[oa])|laagste|eerste|l\u00e4gsta|f\u00f6rsta|laveste|f\u00f8rste)(?!\p{L})[^.;\n]{0,60}?(?<!\p{L})(?:down|to|from|bis|hinunter|ab|jusqu\p{L}*|hasta|fino|at\u00e9|tot|till|ner|ned|til)(?!\p{L})['\u2019]?[^.;,\n\d]{0,20}?${key}`,
  'iu',
);
const highest = new RegExp(
  String.raw`(?<!\p{L})(?:highest|last|top|uppermost|h\u00f6chste[rnms]?|oberste[rnms]?|letzte[rnms]?|derni[e\u00e8]re?|plus (?:aigu\u00eb?|haut)\p{L}*|\u00faltim[oa]|m\u00e1s (?:agud[oa]|alt[oa])|ultim[oa]|pi\u00f9 (?:acut[oa]|alt[oa])|mais (?:agud[oa]|alt[oa])|hoogste|laatste|h\u00f6gsta|sista|h\u00f8jeste|sidste)(?!\p{L})[^.;\n]{0,60}?(?<!\p{L})(?:up|to|bis|hinauf|jusqu\p{L}*|hasta|fino|at\u00e9|tot|till|upp|op|til)(?!\p{L})['\u2019]?[^.;,\n\d]{0,20}?${key}`,
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
  const find = (pattern: RegExp) => {
    for (const text of texts) {
      const name = pattern.exec(text.slice(0, longest))?.[1];
      const found = name === undefined ? undefined : readKey(name);
      if (found) return found;
    }
    return undefined;
  };
  return { lowest: find(lowest), highest: find(highest) };
}
