import type { KeyReading } from '../../readings/keyReading';
import { readKey } from '../../readings/keyReading';
import { keyInText } from '../../readings/notePatterns';

/** What a text says of sounds that lie on one key each, in the order in which they stand. */
export interface StatedKeyOrder {
  /** The key that the first one lies on, where the text gives it itself. */
  first: KeyReading | undefined;
  text: string;
}

const longest = 1000;
// Words from memory.
const inOrder =
  /(?<!\p{L})(?:in (?:the )?(?:(?:same |given |written )?order|sequence|turn)|one after (?:the other|another)|consecutive\p{L}*|successive(?:ly)?|sequential\p{L}*|der reihe nach|in (?:der|dieser) reihenfolge|nacheinander|aufeinander ?folg\p{L}*|fortlaufend|dans (?:l['\u2019]|cet )ordre|l['\u2019]une? apr\u00e8s l['\u2019]autre|(?:se )?suivent|\u00e0 la suite|successi\p{L}*|en (?:el )?(?:mismo )?orden|un[oa] tras otr[oa]|consecutiv\p{L}*|seguid[oa]s?|(?:nell['\u2019]|in )ordine|un[oa] dopo l['\u2019]altr[oa]|por ordem|(?:pela|na) ordem|op volgorde|in (?:deze |de )?volgorde|na elkaar|achter elkaar|opeenvolgend\p{L}*|i ordning|i (?:denne )?r\u00e6kkef\u00f8lge|efter varandra|efter hinanden|po kolei|kolejno|w kolejno\u015bci|postupn\u011b|v po\u0159ad\u00ed|по порядку|подряд)(?!\p{L})/iu;
const keyEach =
  /(?<!\p{L})(?:(?:one|a|single) (?:key|note)s? (?:each|per)|(?:each|every|per)(?: \p{L}+){0,3} (?:one|a|its|own|next) (?:key|note)|one per (?:key|note)|(?:je|jeweils|jede[rsn]?)(?: \p{L}+){0,2} (?:eine[rn]?|einzelne) tasten?|(?:une|chacune?)(?: \p{L}+){0,1} (?:touche|note)(?:,? (?:chacune?|par))|(?:touche|note) (?:chacune?|par)|cada(?: \p{L}+){0,3} (?:una|un|su) (?:tecla|nota)|una (?:tecla|nota) (?:cada|por)|(?:un tasto|una nota) (?:ciascun[oa]|ognun[oa]|per)|ogni(?: \p{L}+){0,3} (?:un tasto|una nota)|uma tecla (?:cada|por)|(?:elk|ieder|per)\p{L}*(?: \p{L}+){0,3} (?:\u00e9\u00e9n|een) toets|(?:\u00e9\u00e9n|een) toets (?:elk|per|ieder)\p{L}*|(?:en|\u00e9n) tangent (?:var|hver|per)|(?:ka\u017cd\p{L}+|po)(?: \p{L}+){0,2} jed\p{L}+ klawisz\p{L}*)(?!\p{L})/iu;
const from = new RegExp(
  String.raw`(?<!\p{L})(?:from|at|with|ab|bei|von|\u00e0 partir|depuis|d\u00e8s|desde|a partir|dal?|dalla|a partire|vanaf|van|fr\u00e5n|fra|od)(?!\p{L})[^.;,\n\d]{0,24}?(${keyInText})`,
  'iu',
);

/** Reads that sounds lie on one key each in their order: `one key each, in the order in which they stand, from key 36 on`. */
export function keyOrderIn(texts: readonly string[]): StatedKeyOrder | undefined {
  for (const whole of texts) {
    const text = whole.slice(0, longest).replace(/\s+/g, ' ').trim();
    if (!inOrder.test(text) || !keyEach.test(text)) continue;
    return { first: readKey(from.exec(text)?.[1] ?? ''), text };
  }
  return undefined;
}
