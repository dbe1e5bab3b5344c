import { bareWord, wordsOf } from '../languages/spelling';

/** `Name` in the languages of the trade, without accents. */
const nameAlone =
  /^(?:names?|namen?|naam|namen|noms?|nombres?|nomes?|nomi|namn|navn|nimi|nazwa|nazev|naziv|nume|nev|isim|ad|adi|имя|название|наименование|име|ім я|назва|ονομα|名前|名称|名稱|이름)$/u;

/** Whether a heading says `Name` and no more, which may be the name of anything. */
export function isNameAlone(heading: string): boolean {
  return nameAlone.test(wordsOf(heading).map(bareWord).join(' '));
}
