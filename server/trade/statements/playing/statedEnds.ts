import { loopWords } from '../../loopWords';
import { turningWords } from '../../turningWords';

/** Whether the end of a loop or of a sample is the last frame that is played or the one behind it, and the clause that says so. */
export interface StatedEnds {
  are: 'included' | 'behind';
  text: string;
}

/** Words for loops; those for a cycle mean one beside an end. */
const loop = String.raw`(?:${loopWords}|(?<!\p{L})(?:ciclo|цикл))`;
const loops = new RegExp(loop, 'iu');

/** Says where a loop ends without a word for either. */
const jumpsBack =
  /(?<!\p{L})(?:jump|go|fall|spring|wrap)(?:s|es|ing)? back(?!\p{L})|(?<!\p{L})(?:zurück(?:ge)?spr|spr\p{L}+ zurück|saut\p{L}* en arrière|revien\p{L}*|salta (?:atrás|indietro)|springt terug)/iu;

/** Words for their ends. */
const ends = anyOf(
  String.raw`(?<!\p{L})(?:ends?|fin|fine|fim|end(?:e|punkte?|samples?|positionen|position|points?))(?!\p{L})`,
  '(?:loop-?|schleifen)ende|einde|koniec|końc|konec|konce|slut|loppu|конец|конц|終|结束|结尾|终|종료|끝',
);

/** Says so of an end in one word, whether the clause speaks of a loop or of its end. */
const areExclusive = anyOf(
  'exclusiv|exklusiv|exclus|esclus|ausschlie|wyłącznie',
  String.raw`(?<!\p{L})(?:excl|exkl|escl|ausschl|wył)(?!\p{L})`,
);

/** Says that what the clause names is not played: a frame or an end, as a whole loop may be left out for other reasons. */
const areBehind = anyOf(
  'one past|past the|behind the last|(?:up to|until|till) just before',
  '(?:frame|sample) (?:after|behind)(?! which)|(?:first|next) (?:frame|sample) outside',
  '(?:is|are|be) (?:not|no longer|never) (?:itself )?(?:played|heard|sounded|part)|(?:isn|aren).t (?:played|heard)|not includ',
  'nicht (?:mehr )?(?:mit)?(?:enthalten|gespielt|abgespielt|wiedergegeben|eingeschlossen)|nicht mehr|bis (?:kurz |direkt |unmittelbar )?vor(?!\\p{L})',
  '(?:pas|plus) (?:joué|lu|inclu)|jusque?.? ?(?:juste )?avant|non (?:compris|inclu)',
  'no (?:se (?:reproduce|toca|oye|incluye)|suena|inclui|inclus)|hasta justo antes',
  'non (?:viene |è |si )?(?:più )?(?:suon|riprod|sent|compres|inclu)|fino a (?:subito |appena )?prima',
  'não (?:é |são )?(?:mais )?(?:toca|reprodu|inclu)|até (?:logo |imediatamente )?antes',
  'niet (?:meer )?(?:mee)?(?:ge|af)?(?:gespeeld|speeld|inbegrepen|meegerekend)|tot (?:net|vlak) voor(?!\\p{L})',
  '(?:spelas|hörs) (?:inte|ej)|(?:inte|ej) (?:med|inräkn)|till (?:precis |strax )?före|(?:afspilles|spilles) ikke|ikke med|til lige før',
  'ei (?:soi|toist|kuulu|sisälly)',
  'nie (?:jest |są )?(?:odtwarzan|gran|wlicz)',
  'nepřehráv|nehraj|nezahrnu|nezní|až těsně před',
  'не (?:воспроизв|игра|звуч|включ)',
  '再生され(?:ません|ない|ず)|再生し(?:ません|ない)|(?:直前|手前)まで|含(?:まない|まず|みません|まれ(?:ない|ず|ません))|除く',
  '不(?:播放|包含|包括|含)|前一',
  '재생되지|재생하지|직전까지|포함(?:하|되)지|미포함|제외',
);

/** Says that the frame at the end is the last one that is played. */
const areIncluded = anyOf(
  'inclusiv|inklusiv|inclus|einschlie|includ|incluí|compris|compreso|inbegrepen|tot en met|last (?:frame|sample)|is (?:still )?played',
  String.raw`(?<!\p{L})(?:incl|inkl|einschl|wł)(?!\p{L})`,
  'medräkn|medregne|inräkn|mukaan lukien|sisälty|włącznie|wlicza|včetně|zahrnu',
  'включительно|включая|含(?:む|み|まれ)|再生され(?:ます|る)|包含|包括|포함',
);

/** Reads what a clause says of the ends of loops and samples; `undefined` where it says nothing of them. */
export function endsIn(clause: string): StatedEnds | undefined {
  const namesEnd = ends.test(clause);
  if (!namesEnd && !loops.test(clause) && !jumpsBack.test(clause)) return undefined;
  const isUnplayedFrame = (namesEnd || speaksOfFrame.test(clause)) && areBehind.test(clause);
  if (areExclusive.test(clause) || isUnplayedFrame || isEndBehind(clause))
    return { are: 'behind', text: clause };
  return areIncluded.test(clause) ? { are: 'included', text: clause } : undefined;
}

function anyOf(...parts: string[]): RegExp {
  return new RegExp(parts.join('|'), 'iu');
}

/** Words of the languages that zones are told in (common practice), each as the beginning of a word. */
const frame = wordOf(
  'frame|sample|abtast|bild|trame|échantillon|muestra|cuadro|marco|campion|fotogramm|quadro|amostra|monster|ram(?:e|en|a|ar)\\b|rutan?\\b|klatk|ramk|ramek|próbk|sním|vzor|näyte|kehy|кадр|сэмпл',
);
const behind = wordOf(
  'after\\b(?! which)|behind\\b|beyond\\b|nach\\b|hinter\\b|après\\b|después de|tras\\b|dopo\\b|oltre\\b|depois d|na\\b|achter\\b|voorbij\\b|efter\\b|etter\\b|bag\\b|po\\b|za\\b|jälkeen\\b|после\\b|за\\b',
);
const never = turningWords('not', 'none');
const played = wordOf(
  'play|heard|gespiel|erkling|hörbar|joué|enten|toca|suena|reproduc|suona|riprod|gespeeld|klinkt|spela|spille|afspille|hörs|gra(?:n|ć)|odtwarza|hra[jn]|přehr|soi|toist|игра|звуч',
);
const last = wordOf('last\\b|letzt|derni|últim|ultim|laatst|sist[ae]|sidst|ostatni|posledn|viime|последн');
const isBehindLoop = new RegExp(String.raw`${behind}(?:\P{L}+\p{L}+){0,2}?\P{L}+${loop}`, 'iu');
const isUnplayed = new RegExp(
  String.raw`${never}(?:\P{L}+\p{L}+){0,2}?\P{L}+${played}|${played}\p{L}*\P{L}+${never}`,
  'iu',
);
const [speaksOfFrame, speaksOfLast] = [new RegExp(frame, 'iu'), new RegExp(last, 'iu')];

/** Whether a clause about the end of a loop says, in any of these languages, that it is the frame after it, or one that is not played. */
function isEndBehind(clause: string): boolean {
  if (!speaksOfFrame.test(clause) || speaksOfLast.test(clause)) return false;
  return isBehindLoop.test(clause) || isUnplayed.test(clause);
}

/** Words as a part of a pattern; ends of words go by letters of all scripts. */
function wordOf(words: string): string {
  return String.raw`(?<!\p{L})(?:${words.replaceAll('\\b', '(?!\\p{L})')})`;
}
