import { english } from './english';
import { french } from './french';
import { german } from './german';
import { italian } from './italian';
import { japanese } from './japanese';
import type { LanguageWords } from './languageWords';
import { portuguese } from './portuguese';
import { spanish } from './spanish';

/** All languages that tables are understood in; where two give a word another meaning, the first counts. */
export const languages: readonly LanguageWords[] = [
  english,
  german,
  french,
  spanish,
  italian,
  portuguese,
  japanese,
];
