import { isEndBehind } from './endsBehind';

/** Whether the end of a loop or of a sample is the last frame that is played or the one behind it, and the clause that says so. */
export interface StatedEnds {
  are: 'included' | 'behind';
  text: string;
}

/** Words for loops and for ends, in the languages of headings. */
const ends = anyOf(
  String.raw`(?<!\p{L})(?:loops?|ends?|fin|fine|fim|schleife|end(?:e|punkte?|samples?|positionen|position|points?))(?!\p{L})`,
  'schleife|loop-?ende|boucle|bucle|anello|einde|koniec|ko\u0144c|konec|konce|smy\u010dk|p\u0119tl|slut|slinga|sl\u00f8jfe',
  'loppu|silmuk|\u043a\u043e\u043d\u0435\u0446|\u043a\u043e\u043d\u0446|\u043f\u0435\u0442\u043b|\u0446\u0438\u043a\u043b',
  '\u30eb\u30fc\u30d7|\u7d42|\u5faa\u73af|\u7ed3\u675f|\u7ed3\u5c3e|\u7ec8|\ub8e8\ud504|\uc885\ub8cc|\ub05d',
);

/** Says that the frame at the end is not played any more. */
const areBehind = anyOf(
  'exclusiv|exklusiv|exclus|esclus|ausschlie|one past|past the|behind the last|(?:up to|until|till) just before',
  '(?:frame|sample) (?:after|behind)|first (?:frame|sample) (?:after|behind)',
  '(?:is|are|be) (?:not|no longer|never) (?:itself )?(?:played|heard|sounded|part)|(?:isn|aren).t (?:played|heard)|not includ',
  'nicht (?:mehr )?(?:mit)?(?:enthalten|gespielt|abgespielt|wiedergegeben|eingeschlossen)|nicht mehr|bis (?:kurz |direkt |unmittelbar )?vor(?!\\p{L})',
  '(?:pas|plus) (?:jou\u00e9|lu|inclu)|jusque?.? ?(?:juste )?avant|non (?:compris|inclu)',
  'no (?:se (?:reproduce|toca|oye|incluye)|suena|inclui|inclus)|hasta justo antes',
  'non (?:viene |\u00e8 |si )?(?:pi\u00f9 )?(?:suon|riprod|sent|compres|inclu)|fino a (?:subito |appena )?prima',
  'n\u00e3o (?:\u00e9 |s\u00e3o )?(?:mais )?(?:toca|reprodu|inclu)|at\u00e9 (?:logo |imediatamente )?antes',
  'niet (?:meer )?(?:mee)?(?:ge|af)?(?:gespeeld|speeld|inbegrepen|meegerekend)|tot (?:net|vlak) voor(?!\\p{L})',
  '(?:spelas|h\u00f6rs) (?:inte|ej)|(?:inte|ej) (?:med|inr\u00e4kn)|till (?:precis |strax )?f\u00f6re|(?:afspilles|spilles) ikke|ikke med|til lige f\u00f8r',
  'ei (?:soi|toist|kuulu|sis\u00e4lly)',
  'nie (?:jest |s\u0105 )?(?:odtwarzan|gran|wlicz)|wy\u0142\u0105cznie',
  'nep\u0159ehr\u00e1v|nehraj|nezahrnu|nezn\u00ed|a\u017e t\u011bsn\u011b p\u0159ed',
  '\u043d\u0435 (?:\u0432\u043e\u0441\u043f\u0440\u043e\u0438\u0437\u0432|\u0438\u0433\u0440\u0430|\u0437\u0432\u0443\u0447|\u0432\u043a\u043b\u044e\u0447)',
  '\u518d\u751f\u3055\u308c(?:\u307e\u305b\u3093|\u306a\u3044|\u305a)|\u518d\u751f\u3057(?:\u307e\u305b\u3093|\u306a\u3044)|(?:\u76f4\u524d|\u624b\u524d)\u307e\u3067|\u542b(?:\u307e\u306a\u3044|\u307e\u305a|\u307f\u307e\u305b\u3093|\u307e\u308c(?:\u306a\u3044|\u305a|\u307e\u305b\u3093))|\u9664\u304f',
  '\u4e0d(?:\u64ad\u653e|\u5305\u542b|\u5305\u62ec|\u542b)|\u524d\u4e00',
  '\uc7ac\uc0dd\ub418\uc9c0|\uc7ac\uc0dd\ud558\uc9c0|\uc9c1\uc804\uae4c\uc9c0|\ud3ec\ud568(?:\ud558|\ub418)\uc9c0|\ubbf8\ud3ec\ud568|\uc81c\uc678',
);

/** Says that the frame at the end is the last one that is played. */
const areIncluded = anyOf(
  'inclusiv|inklusiv|inclus|einschlie|includ|inclu\u00ed|compris|compreso|inbegrepen|tot en met|last (?:frame|sample)|is (?:still )?played',
  'medr\u00e4kn|medregne|inr\u00e4kn|mukaan lukien|sis\u00e4lty|w\u0142\u0105cznie|wlicza|v\u010detn\u011b|zahrnu',
  '\u0432\u043a\u043b\u044e\u0447\u0438\u0442\u0435\u043b\u044c\u043d\u043e|\u0432\u043a\u043b\u044e\u0447\u0430\u044f|\u542b(?:\u3080|\u307f|\u307e\u308c)|\u518d\u751f\u3055\u308c(?:\u307e\u3059|\u308b)|\u5305\u542b|\u5305\u62ec|\ud3ec\ud568',
);

/** Reads what a clause says of the ends of loops and samples; `undefined` where it says nothing of them. */
export function endsIn(clause: string): StatedEnds | undefined {
  if (!ends.test(clause)) return undefined;
  if (areBehind.test(clause) || isEndBehind(clause)) return { are: 'behind', text: clause };
  return areIncluded.test(clause) ? { are: 'included', text: clause } : undefined;
}

function anyOf(...parts: string[]): RegExp {
  return new RegExp(parts.join('|'), 'iu');
}
