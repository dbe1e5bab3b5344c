import { languages } from '../languages/languages';
import { wordsOf } from '../languages/spelling';

const release =
  /^(?:releas|lett?ing|let$|lift|loslass|losgelass|loslat|losgelat|relach|lach|solt|suelt|levant|rilasc|slapp|slipp?|slupp|vapaut|irrot|puszcz|zwoln|pusten|pusti|uvoln|отпус|отпущ|отжат)/u;
const press =
  /^(?:press|depress|druck|gedruckt|niederdruck|anschl|anslag|appu|enfonc|puls|presion|premi|premer|premut|premo|indruk|ingedruk|aansla|nedtryck|tryck|trykk?|paina|wcisn|nacis|stisk|нажат|нажим)/u;
const releaseSigns =
  /離|放|松开|鬆開|リリース|뗄|뗌|뗀|놓|(?:キー|ノート|鍵|键|音符|건반|키|노트)[ ・･-]?(?:オフ|アップ|关|關|오프|업)/u;
const pressSigns =
  /押|按|打鍵|弾|누를|누름|누르|(?:キー|ノート|鍵|键|音符|건반|키|노트)[ ・･-]?(?:オン|ダウン|开|開|온|다운)/u;
const keySigns = /キー|鍵|键|건반/u;
/** What a key goes, or its note is, when it is let go and when it is pressed: beside a word for a key only. */
const goneUp =
  /^(?:off|aus|av|fra|uit|wyl|vyp|pois|выкл|up|hoch|oben|haut|arriba|su|acima|cima|omhoog|upp|op|ylos|gora|gore|nahoru|вверх)$/u;
const goneDown =
  /^(?:on|an|ein|pa|til|aan|wl|zap|paalle|вкл|down|unten|bas|abajo|giu|baixo|omlaag|ner|ned|alas|dol|dolu|вниз)$/u;
/** Words for a key in all languages. */
const keyWords: ReadonlySet<string> = new Set(
  languages.flatMap(({ parts }) => (parts.key ?? []).flatMap(wordsOf)),
);
/** Forms of these, as they stand in sentences. */
const inflectedKeys: ReadonlySet<string> = new Set(
  'koskettimen kosketin klawisza klavesy klavesu klavesa клавиши клавишу клавиша tangenten tasten tangent toetsen keys touches teclas tasti taster billentyut billentyu tusa tusu tecles πληκτρο πληκτρου'.split(
    ' ',
  ),
);
/** Small words beside, besides words for a key in all languages. */
const small: ReadonlySet<string> = new Set([
  ...'a ao aos o os as da do de del della dell des du la le les il lo l el al alla au aux un une uma una the on at when while after upon of off go gone is are be being up by'.split(
    ' ',
  ),
  ...'beim bei der die das dem den nach wenn wird bij het een van na nar nar vid efter i et en ved nar kun kun przy po pri se quando cuando quand lorsque dopo despues depois apres tras en je est es e si wordt als bliver blir ar при после на по'.split(
    ' ',
  ),
  ...inflectedKeys,
  'just',
  ...languages.flatMap(({ turning }) => turning.only.flatMap(wordsOf)),
  ...keyWords,
]);
/** Words for what a sample does, which say nothing of when. */
const playing =
  /^(?:plays?|played|playing|sounds?|sounded|sounding|triggers?|triggered|starts?|started|fires?|fired|heard|spielt?|spielend|gespielt|abgespielt|klingt|klingend|erklingt|ertont|ausgelost|startet|gestartet|joue|jouee|jouer|jouent|sonne|declenche|declenchee|demarre|toca|tocado|tocada|suena|sonado|dispara|disparado|disparada|reproduce|reproducido|reproducida|suona|suonato|suonata|parte|avviato|attivato|eseguito|eseguita|soa|tocar|reproduzido|reproduzida|toquem|speelt|gespeeld|afgespeeld|klinkt|spelas?|spelad|spelar|ljuder|klingar|utlost|spilles?|spiller|spillet|spilt|avspilles|afspilles|lyder|klinger|utlost|soi|soitetaan|soittaa|kuuluu|gra|grany|grana|grane|odtwarzany|odtwarzana|odtwarzane|wyzwalany|wyzwalana|brzmi|hraje|hrano|hran|prehrava|prehraje|zni|zazni|spousti|звучит|играет|играется|воспроизводится|запускается|szol|megszolal|lejatszik|lejatszva|calinir|calar|caliyor|sona)$/u;
const mostWords = 9;
const longest = 60;

/**
 * What starts a zone by a phrase about a key: `ao soltar a tecla`, `when the key is released`. `undefined` where other words stand
 * in it, or both are named.
 */
export function triggerPhrase(text: string): 'press' | 'release' | undefined {
  if (text.length > longest) return undefined;
  const [isReleased, isPressed] = [releaseSigns.test(text), pressSigns.test(text)];
  if (isReleased || isPressed)
    return isReleased === isPressed || text.length > 12 ? undefined : isReleased ? 'release' : 'press';
  const words = wordsOf(text);
  if (words.length < 2 || words.length > mostWords) return undefined;
  const ends = words.filter((word) => !keyWords.has(word));
  if (ends.length === 1 && words.length === 2) {
    if (goneUp.test(ends[0])) return 'release';
    if (goneDown.test(ends[0])) return 'press';
  }
  const telling = words.filter((word) => !small.has(word) && !playing.test(word));
  if (telling.length === 0 || telling.length > 2) return undefined;
  if (telling.every((word) => release.test(word))) return 'release';
  return telling.every((word) => press.test(word)) ? 'press' : undefined;
}

/** Whether a text speaks of a key, in any language. */
export function namesKey(text: string): boolean {
  return keySigns.test(text) || wordsOf(text).some((word) => keyWords.has(word) || inflectedKeys.has(word));
}

/** Whether a text has a word for what a sample does, in any language. */
export function speaksOfPlaying(text: string): boolean {
  return wordsOf(text).some((word) => playing.test(word));
}

/** What starts a zone by an explanation of any length: `means the sound is played when the key is let go`. */
export function startInWords(explanation: string): 'attack' | 'release' | undefined {
  const says = explanation.slice(0, 160).split(/[;,]/u)[0] ?? '';
  const words = wordsOf(says);
  const isReleased =
    words.some((word) => release.test(word) && !/^let$/.test(word)) ||
    /\blet(?:s|ting)? (?:it )?go\b|\bkey[- ]?up\b|\b(?:key|note) (?:is |goes |comes )?(?:up|off)\b/i.test(
      says,
    ) ||
    releaseSigns.test(says);
  const isPressed =
    words.some((word) => press.test(word)) ||
    /\b(?:key|note) (?:is |goes |comes )?(?:down|on|struck)\b/i.test(says) ||
    pressSigns.test(says);
  if (isReleased === isPressed) return undefined;
  return isReleased ? 'release' : 'attack';
}
