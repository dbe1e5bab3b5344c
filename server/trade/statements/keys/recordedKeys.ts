import { saysOf } from '../../phrases/toldWords';

const longest = 600;
/** That something was played or recorded on a note. */
const recorded =
  /(?<!\p{L})(?:played|recorded|sampled|sung|struck|plucked|bowed|blown|taken|gespielt|eingespielt|aufgenommen|aufgezeichnet|gesungen|jou[ée]e?s?|enregistr[ée]e?s?|tocad[ao]s?|grabad[ao]s?|gravad[ao]s?|suonat[aoei]|registrat[aoei]|gespeeld|opgenomen|ingespeeld|spelad|inspelad\p{L}*|spelat|spelats|spillet|optaget|indspillet|soitet\p{L}*|äänitet\p{L}*|zagran\p{L}*|nagran\p{L}*|zahr[aá]n\p{L}*|nahr[aá]n\p{L}*|сыгран\p{L}*|записан\p{L}*)(?!\p{L})|録音|録った|录制|錄製|녹음/iu;
/** What it was played on: a note, not a place or a day. */
const onNote =
  /(?<!\p{L})(?:notes?|keys?|pitch(?:es)?|tones?|ton|t[oö]ne|note[ns]?|tasten?|touches?|teclas?|notas?|tast[oi]|toets\p{L}*|noot|noten|toner?|tangent\p{L}*|nuot\p{L}*|säve\p{L}*|nut\p{L}*|dźwięk\p{L}*|tón\p{L}*|нот\p{L}*)(?!\p{L})|音|음|ノート|キー/iu;
/** What speaks of ranges does not mean single notes. */
const ranges =
  /(?<!\p{L})(?:ranges?|zones?|from .{1,20} to|bereich\p{L}*|plages?|rangos?|intervall[oi]?)(?!\p{L})/iu;

/**
 * The clause that says that keys are the notes samples were recorded on: `which note each file was played at`, `die Zahl ist der Grundton`.
 * `undefined` where nothing says so.
 */
export function recordedKeysIn(texts: readonly string[]): string | undefined {
  for (const text of texts)
    for (const sentence of text.slice(0, longest).split(/[.!?](?=\s|$)|[\n\r。]/u)) {
      if (!isSaid.test(sentence) || ranges.test(sentence)) continue;
      if ((recorded.test(sentence) && onNote.test(sentence)) || saysOf(sentence, 'root'))
        return sentence.trim();
    }
  return undefined;
}

/** A sentence that says what the numbers are, rather than a title. */
const isSaid =
  /(?<!\p{L})(?:is|are|gives?|which|what|each|welche[rnms]?|jeweils|jede[rnms]?|quelle?|chaque|cada|qu[eé]|ogni|quale|elke?|welke|vilken|varje|hvilken|hver|numbers?|ist|sind|zahlen?|est|sont|chiffres?|nombres?|es|son|n[uú]meros?|numer[oi]|è|sono|são|is|zijn|getal(?:len)?|nummer)(?!\p{L})|=/iu;
