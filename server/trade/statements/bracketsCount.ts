import { turningWords } from '../turningWords';

/** Brackets in the languages of the trade, by the beginnings of their words. */
export const brackets: RegExp =
  /(?<!\p{L})(?:brackets?|parenthes[ie]s|klammer\p{L}*|parenth[eè]se\p{L}*|crochets?|par[eé]ntesis|corchetes?|parentesi|par[eê]nteses?|haakjes|parentes(?:er|en)?|parente[sz]\p{L}*|suluis\p{L}*|sulkei\p{L}*|sulut|hakasul\p{L}*|nawias\p{L}*|závor\p{L}*|скобк\p{L}*|παρ[εέ]νθεσ\p{L}*|παρενθέσε\p{L}*|zárójel\p{L}*)(?!\p{L})|括弧|かっこ|カッコ|括号|괄호/iu;
/** Words that make a value the one that counts. */
const counts =
  /(?<!\p{L})(?:counts?|applies|apply|(?:is|are) (?:the )?(?:right|correct|valid|new|true)\p{L}*|use (?:that|this|the|those)|takes? precedence|corrections?|corrected|gilt|gelten|zählt|zählen|stimmt|stimmen|richtig\p{L}*|korrig\p{L}*|korrektur\p{L}*|vaut|valent|compten?t?|fait foi|font foi|corrig\p{L}*|correg\p{L}*|corre[cçt]+\p{L}*|correz\p{L}*|vale[mn]?|cuentan?|contam?|contano|valid[aeiou]s?|válid[oa]s?|geldt|gelden|telt|tellen|juist\p{L}*|verbeter\p{L}*|gäller|räknas|rättel?s?e?r?|rättad\p{L}*|gælder|rettels\p{L}*|rettet|pätee|pätevät|korja\p{L}*|oikea|oikeat|obowiązuj\p{L}*|liczy się|liczą się|popraw\p{L}*|platí|oprav\p{L}*|správn\p{L}*|верн\p{L}*|действ\p{L}*|исправ\p{L}*|считается|ισχύ\p{L}*|σωστ\p{L}*|διορθωμέν\p{L}*|érvényes\p{L}*|javít\p{L}*)(?!\p{L})|正しい|有効|訂正|優先|正确|更正|为准|為準|有效|맞|정정|유효/iu;
/** Words that make it the one that does not. */
const former = new RegExp(
  String.raw`${turningWords('not', 'none')}|(?<!\p{L})(?:old|former\p{L}*|previous\p{L}*|earlier|before|original\p{L}*|alt|alte[nrs]?|früher\p{L}*|vorher\p{L}*|ancien\p{L}*|précéd\p{L}*|antes|antigu\p{L}*|anterior\p{L}*|vecchi\p{L}*|precedent\p{L}*|antig\p{L}*|oude?|vorige|gamla|gammal\p{L}*|gamle|vanha\p{L}*|stary|stare|star[áéý]\p{L}*|стар\p{L}*|παλι\p{L}*)(?!\p{L})|古い|元の|旧|原来|이전`,
  'iu',
);
/** Units and kinds of values: what stands in the brackets is then of another column. */
const otherValue =
  /(?<!\p{L})(?:db|decibels?|dezibel|cents?|hz|khz|ms|velocit\p{L}*|anschlag\p{L}*|pan\p{L}*|seconds?|sekund\p{L}*)(?!\p{L})|%/iu;
const longest = 2000;
/** So far from the word for brackets it is said that they count. */
const reach = { before: 60, behind: 130 };

/** The text that says that of two values the one in brackets counts; `undefined` where none does. */
export function bracketsCountIn(texts: readonly string[]): string | undefined {
  return texts.find((whole) => {
    const text = whole.slice(0, longest);
    const found = brackets.exec(text);
    if (!found) return false;
    const end = found.index + found[0].length + reach.behind;
    const around = text.slice(Math.max(0, found.index - reach.before), end);
    return counts.test(around) && !former.test(around) && !otherValue.test(around);
  });
}
