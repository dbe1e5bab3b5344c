import { turningWords } from '../../turningWords';

/** Words for playing in turn, in the languages of the trade. */
const inTurn =
  /(?<!\p{L})(?:take turns|in turns?|alternat(?:e|es|ing|ely)|round[ -]robin|rotat(?:e|es|ing|ion)|cycl(?:e|es|ed|ing) through|one after (?:another|the other)|in a cycle|in rotazione|en rotation|en rotación|em rotação|in rotatie|im wechsel|abwechselnd|wechseln (?:sich )?ab|reihum|(?:\u00e0|a) tour de r\u00f4le|en alternance|(?:s')?alternent|por turnos|se turnan|(?:se )?alternan|alternam(?:-se)?|alternadamente|revezam(?:-se)?|si alternano|alternati|a turno|a rotazione|om de beurt|om beurten|afwisselend|wisselen (?:elkaar )?af|turas om|v\u00e4xelvis|i tur och ordning|skiftevis|p\u00e5 skift|vuorotellen|vuorottelevat|na zmian\u0119|naprzemiennie|zmieniaj\u0105 si\u0119|st\u0159\u00eddav\u011b|st\u0159\u00eddaj\u00ed|\u043f\u043e \u043e\u0447\u0435\u0440\u0435\u0434\u0438|\u0447\u0435\u0440\u0435\u0434\u0443\u044e\u0442\u0441\u044f|\u043f\u043e\u043e\u0447\u0435\u0440\u0451\u0434\u043d\u043e|\u043f\u043e\u043e\u0447\u0435\u0440\u0435\u0434\u043d\u043e)(?!\p{L})|交互に|順番に|轮流|輪流|交替|번갈아|교대로/iu;
const negated = new RegExp(turningWords('not', 'none'), 'iu');

const longest = 400;
/** What is said to be the same, where rows of the same keys are meant. */
const sameKeys =
  /(?<!\p{L})(?:(?:same|identical|equal) (?:midi )?(?:keys?|notes?|ranges?|pitch)|(?:gleiche[rnms]?|selbe[rn]?|derselben|denselben) (?:tasten?|noten?|bereich\p{L}*)|m[eê]mes? (?:touches?|notes?|plages?)|mism[ao]s? (?:teclas?|notas?|rango)|stess[aeoi] (?:tast[oi]|not[ae])|mesm[ao]s? (?:teclas?|notas?)|(?:zelfde|dezelfde) (?:toets\p{L}*|not\p{L}*)|samm?[ae] (?:tangent\p{L}*|ton\p{L}*)|tym samym klawisz\p{L}*|stejn\p{L}+ kláves\p{L}*|одн\p{L}+ клавиш\p{L}*)(?!\p{L})|同じ(?:鍵|キー|音)|同一(?:键|鍵|音)|같은 (?:건반|키|음)/iu;

/** The text that says that the samples of a row play in turn; `undefined` where none does. */
export function turnStatement(texts: readonly string[]): string | undefined {
  return texts.find((text) => text.length <= longest && inTurn.test(text) && !negated.test(text));
}

/** Whether a text says that something plays in turn. */
export function saysInTurn(text: string): boolean {
  return inTurn.test(text) && !negated.test(text);
}

/** The sentence that says that rows of the same keys play in turn: `Files on the same key alternate`. */
export function turnsOfSameKeys(texts: readonly string[]): string | undefined {
  return texts
    .flatMap((text) => text.split(/[.!?](?=\s|$)|[\n\r;。]/u))
    .find((text) => text.length <= longest && sameKeys.test(text) && saysInTurn(text))
    ?.trim();
}
