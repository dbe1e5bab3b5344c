import { bareWord } from '../../languages/spelling';
import { saysOf } from '../../phrases/toldWords';

/** Words for a number, without accents. */
const number =
  /(?<!\p{L})(?:numbers?|digits?|zahl|zahlen|nummern?|ziffern?|nombres?|numeros?|chiffres?|numer[oi]|cifr|getal|getallen|nummers?|cijfer|tal|siffr|tall|numero|luku|liczb|cisl|число|цифр|номер|szam|sayi|αριθμ)|数字|番号|数値|숫자|번호/u;
/** Words for a name or a file, without accents. */
const name =
  /(?<!\p{L})(?:names?|files?|filenames?|namen?|dateinam|datei|noms?|fichiers?|nombre|archivos?|nome|file|ficheiro|arquivo|naam|bestand|filnamn|filnavn|nimi|tiedosto|nazw|plik|nazv|nazev|soubor|имен|имя|файл|nev|fajl|ad|dosya|ονομα|αρχει)|ファイル名|名前|文件名|파일/u;
const sentences = /[.!?;\u3002](?=\s|$)|[\n\r]/u;
const longest = 300;

/** The sentence that says that a number in the names of files is the root; `undefined` where none does. */
export function rootNumbersIn(texts: readonly string[]): string | undefined {
  for (const text of texts) {
    for (const sentence of text.slice(0, 2000).split(sentences)) {
      if (sentence.length > longest || !saysOf(sentence, 'root')) continue;
      const bare = bareWord(sentence);
      if (number.test(bare) && name.test(bare)) return sentence.trim();
    }
  }
  return undefined;
}
