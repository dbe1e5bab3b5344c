import { turningWords } from '../../../trade/turningWords';

/** What a document says of values of elements that stand in one another. */
export interface OuterValues {
  /** Whether values of outer elements are added to those of inner ones, or stand for those that are missing. */
  is: 'adds' | 'replaces';
  /** The sentence that says so. */
  text: string;
}

// Words from memory.
const adds =
  /(?<!\p{L})(?:add(?:s|ed|itive)?|sum(?:s|med)?|plus|cumulat\w+|accumulat\w+|relative|on top|multipl(?:y|ies|ied)|stack(?:s|ed)?|addier\w*|summ\w*|(?:zusammen|hinzu|dazu)(?:ge|zu)?z[äa]hl\w*|additionn\w+|(?:s['’])?ajout\w+|sum[ae]n?|somm\w+|som(?:a|am|ad\w+)|opgeteld|bij elkaar|adder\w*|l[äæ]gge?s (?:ihop|till|sammen|til)|sumuj\w+|doda[jw]\p{L}*|sč[íi]t\p{L}*|lasketaan yhteen|складыва\p{L}*|суммир\p{L}*|прибавл\p{L}*|toplan\p{L}*|eklen\p{L}*|összead\p{L}*|hozzáad\p{L}*|προστίθ\p{L}*|αθροίζ\p{L}*)(?!\p{L})|相加|累加|叠加|加算|足し|더해|더한/iu;
const negatedBefore = new RegExp(
  String.raw`${turningWords('not', 'none')}\s+(?:(?!${turningWords('only')}|just\s)\p{L}+\s+){0,2}$`,
  'iu',
);
const nothing =
  /(?<!\p{L})(?:nothing|nichts|rien|nada|niente|nulla|niets|ingenting|inget|intet|mitään|nic|nico|ничего|ничто|hiçbir şey|semmi|τίποτα|res)\s+(?:\p{L}+\s+){0,3}$|(?:什么都|何も|아무것도)\s*$/iu;
const negatedBehind = new RegExp(String.raw`^\s+(?:\p{L}+\s+)?${turningWords('not')}`, 'iu');
const replaces =
  /(?<!\p{L})(?:replac\w+|overrid\w+|overwrit\w+|instead|ersetz\w*|remplac\w+|reemplaz\w+|sostitu\w+|substitu\w+|vervang\w*|ers[äa]tter|erstatter|zast[ęe]puj\p{L}*|nahra[zď]\p{L}*|korva\p{L}*|замен\p{L}*|yerine geç\p{L}*|felülír\p{L}*|helyettesít\p{L}*|αντικαθιστ\p{L}*)(?!\p{L})|为准|覆盖|取代|代替|優先|上書き|置き換|대신|우선/iu;
/** What takes all over from another element, … */
const takesOver =
  /(?<!\p{L})(?:tak(?:e|es|en|ing) over|takes?|inherit\w*|cop(?:y|ies)|borrows?|starts? (?:from|with)|übern(?:immt|ehmen)|erb(?:t|en)|hérit\w+|reprend\p{L}*|hered\w+|toman?|eredit\w+|prend(?:e|ono)|herd(?:a|am)|erft|erven|neemt|nemen|ärver|arver|dziedzicz\p{L}*|dědí|наследу\p{L}*)(?!\p{L})/iu;
const allOfIt =
  /(?<!\p{L})(?:everything|all|anything|whatever|attributes?|settings?|alles?|tout(?:es)?|todos?|tutt[oi]|tudo|alla?|wszystk\p{L}*|všech\p{L}*|вс[её])(?!\p{L})/iu;
/** … and may have it otherwise. */
const mayChange =
  /(?<!\p{L})(?:(?:may|can|might|could)\s+(?:also\s+|then\s+|itself\s+)?(?:change|alter|vary|redefine|have|give|set|say)|ändern|abändern|abweichen|changer|modifier|cambiar|modificar|cambiare|modificare|alterar|wijzigen|veranderen|ändra|ændre|endre|zmieni\p{L}*|změnit|измен\p{L}*)(?!\p{L})/iu;
/** How the nearer of two values is said to count. */
const goesBefore =
  /(?<!\p{L})(?:own|inner\p{L}*|nearest|closest|eigene[rnms]?|innere[rnms]?|propres?|propi[oa]s?|propri[oa]|própri[oa]s?|eigen|egna?|egen|egne)(?!\p{L})[^.;]{0,60}(?<!\p{L})(?:wins?|prevails?|precedence|priority|(?:go(?:es)?|comes?|counts?|is taken) (?:first|before)|vorrang|geht vor|gehen vor|gewinn(?:t|en)|l['’]emporte(?:nt)?|prime(?:nt)?|priorité|prevalecen?|prioridad|prioridade|prevale|prevalgono|vincono|vince|priorità|gaat voor|gaan voor|voorrang|företräde|forrang)(?!\p{L})/iu;
const ofLevels =
  /(?<!\p{L})(?:level|gain|volume|db|decibel|trim|tun\w+|cents?|value|pegel|lautst|wert|niveau|nivel|livell|valor|valeur|waarde|v[äæ]rd|poziom|warto[śs]|hodnot|arvo|voimakkuu|уровен|уровн|громкост|значени|seviye|değer|szint|hangerő|érték|στάθμ|ένταση|τιμ)|音量|电平|增益|レベル|値|值|음량|레벨|값/iu;
/** Two units of one value, which is no matter of nesting. */
const semitones =
  /semi(?:tone|ton)|halbt[oö]n|demi-ton|halve to|halvton|p[óo][łl]ton|puoliask|полутон|yarım ses|félhang|ημιτόν|半音|반음/iu;
const cents = /cents?(?!\p{L})|centesim|sentti|цент|σεντ|音分|セント|센트/iu;
const sentences = /[.!?;](?=\s|$)|[。；！？]|[\n\r]{2,}/u;
const longest = 1000;

/** What a word says of values of outer elements, as that of an attribute named so: `add`, `sum`, `override`. */
export function combiningWord(text: string): OuterValues['is'] | undefined {
  const word = text.trim();
  if (word.length > longestWord || !/^\p{L}[\p{L}_-]*$/u.test(word)) return undefined;
  const adding = adds.exec(word);
  if (adding?.index === 0) return 'adds';
  return replacing.test(word) || replaces.exec(word)?.index === 0 ? 'replaces' : undefined;
}

const longestWord = 16;
/** Words that say so of a value alone: in a sentence they mean more. */
const replacing = /^(?:inner(?:most)?|own|nearest|closest|default|fallback|set|region|zone)$/iu;

/** What texts say of values of outer elements beside those of inner ones; `undefined` where they say nothing. */
export function nestingIn(texts: readonly string[]): OuterValues | undefined {
  for (const text of texts) {
    const inherited = inheritedIn(text);
    if (inherited !== undefined) return { is: 'replaces', text: inherited };
    if (!ofLevels.test(text)) continue;
    for (const sentence of text.slice(0, longest).split(sentences)) {
      const said = sentence.replace(/\s+/g, ' ').trim();
      const isOfUnits = semitones.test(said) && cents.test(said);
      const isAdded = addsIn(said);
      if (isAdded === true && !isOfUnits) return { is: 'adds', text: said };
      if (isAdded === false || replaces.test(said) || goesBefore.test(said))
        return { is: 'replaces', text: said };
    }
  }
  return undefined;
}

/** The sentence by which an element takes all over from another one and may change it. */
function inheritedIn(text: string): string | undefined {
  const said = text
    .slice(0, longest)
    .split(sentences)
    .find((one) => takesOver.test(one) && allOfIt.test(one) && mayChange.test(one) && addsIn(one) !== true);
  return said?.replace(/\s+/g, ' ').trim();
}

/** Whether a sentence says that values are added, or that they are not; `undefined` where it says neither. */
function addsIn(said: string): boolean | undefined {
  const found = adds.exec(said);
  if (!found) return undefined;
  const behind = said.slice(found.index + found[0].length);
  const before = said.slice(0, found.index);
  return !negatedBefore.test(before) && !nothing.test(before) && !negatedBehind.test(behind);
}
