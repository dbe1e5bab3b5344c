import { bulgarian } from './bulgarian';
import { catalan } from './catalan';
import { chinese } from './chinese';
import { croatian } from './croatian';
import { czech } from './czech';
import { danish } from './danish';
import { dutch } from './dutch';
import { english } from './english';
import { finnish } from './finnish';
import { french } from './french';
import { german } from './german';
import { greek } from './greek';
import { hungarian } from './hungarian';
import { italian } from './italian';
import { japanese } from './japanese';
import { korean } from './korean';
import type { LanguageWords } from './languageWords';
import { polish } from './polish';
import { portuguese } from './portuguese';
import { romanian } from './romanian';
import { russian } from './russian';
import { spanish } from './spanish';
import { swedish } from './swedish';
import { turkish } from './turkish';
import { ukrainian } from './ukrainian';

/** All languages that tables are understood in; where two give a word another meaning, the first counts. */
export const languages: readonly LanguageWords[] = [
  english,
  german,
  french,
  spanish,
  italian,
  portuguese,
  japanese,
  dutch,
  swedish,
  danish,
  finnish,
  polish,
  czech,
  russian,
  greek,
  chinese,
  korean,
  hungarian,
  turkish,
  catalan,
  ukrainian,
  romanian,
  croatian,
  bulgarian,
];
