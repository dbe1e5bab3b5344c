import { languages } from '../languages/languages';
import { bareWord } from '../languages/spelling';
import { oneOfWords } from '../languages/wordPattern';
import { saysNotUsed } from './notUsed';

const words = languages.flatMap(({ leaveOut }) => leaveOut.flatMap((word) => [word, bareWord(word)]));
/** What stands around such words where they speak of a named file, in the words of articles, rows and courtesy. */
const around =
  /(?<!\p{L})(?:the|this|that|row|line|entry|zone|sample|file|recording|take|last|first|please|and|also|is|are|should be|can be|die|der|das|den|bitte|und|auch|zeile|reihe|datei|eintrag|aufnahme|letzte|erste|ist|sind|wird|werden|la|le|les|el|los|las|il|lo|o|a|os|ligne|fichier|entrée|dernière|dernier|première|est|sont|et|aussi|merci de|fila|línea|archivo|muestra|entrada|última|último|primera|primer|es|está|hay que|y|también|por favor|riga|voce|ultima|ultimo|prima|primo|è|sono|e|anche|per favore|linha|ficheiro|arquivo|é|também|de|het|rij|regel|bestand|laatste|eerste|wordt|en|ook|raden|filen|sista|första|och|också|rækken|filen|sidste|første|og|også|skal|ska|wiersz|plik|ostatni|pierwszy|jest|i|także|řádek|soubor|poslední|první|je|také|строка|строку|файл|последняя|последнюю|последний|первая|и|тоже|это)(?!\p{L})|最後の行|最後の|行|は|を|ファイル|最后一行|这一行|请|마지막 행|행|은|는|을|를/giu;
const told = new RegExp(`^${oneOfWords(words)}$`, 'iu');

/**
 * Whether a sentence, without the names of files in it, says that these are not to be used: a clause of it says so and nothing else,
 * or all of it where it names several.
 */
export function leavesOut(sentence: string, isOfSeveral: boolean): boolean {
  const clauses = isOfSeveral
    ? [sentence.replace(/[,;:()"'\u201c\u201d`*]/g, ' ')]
    : sentence.split(/[,;:.()!"\u201c\u201d`*、，。：（）–—]|\s-\s/u);
  return clauses.some((clause) => {
    const own = clause.trim().replace(/^[-•\s]+/, '');
    const bare = own.replace(around, ' ').replace(/\s+/g, ' ').trim();
    return [own, bare].some((text) => text !== '' && (told.test(text) || saysNotUsed(text)));
  });
}
