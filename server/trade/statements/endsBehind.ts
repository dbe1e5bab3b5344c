/** Words of the languages that zones are told in (common practice), each as the beginning of a word. */
const frame = wordOf(
  'frame|sample|abtast|bild|trame|échantillon|muestra|cuadro|marco|campion|fotogramm|quadro|amostra|monster|ram(?:e|en|a|ar)\\b|rutan?\\b|klatk|ramk|ramek|próbk|sním|vzor|näyte|kehy|кадр|сэмпл',
);
const behind = wordOf(
  'after\\b|behind\\b|beyond\\b|nach\\b|hinter\\b|après\\b|después de|tras\\b|dopo\\b|oltre\\b|depois d|na\\b|achter\\b|voorbij\\b|efter\\b|etter\\b|bag\\b|po\\b|za\\b|jälkeen\\b|после\\b|за\\b',
);
const loop = wordOf(
  'loop|schleife|boucle|bucle|anello|ciclo|laço|lus\\b|slinga|sløjf|sløyf|pętl|zapętl|smyč|silmuk|петл|цикл',
);
const never = wordOf(
  'not\\b|never\\b|nicht\\b|nie\\b|pas\\b|no\\b|non\\b|não\\b|niet\\b|inte\\b|ej\\b|ikke\\b|ei\\b|не\\b',
);
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
export function isEndBehind(clause: string): boolean {
  if (!speaksOfFrame.test(clause) || speaksOfLast.test(clause)) return false;
  return isBehindLoop.test(clause) || isUnplayed.test(clause);
}

/** Words as a part of a pattern; ends of words go by letters of all scripts. */
function wordOf(words: string): string {
  return String.raw`(?<!\p{L})(?:${words.replaceAll('\\b', '(?!\\p{L})')})`;
}
