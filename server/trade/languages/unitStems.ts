import type { Unit } from '../meaning';
import { unitOf } from './cellWords';
import { bareWord } from './spelling';

/** Stems of units in the languages of the trade, without accents. */
const unitStems: readonly (readonly [RegExp, Unit])[] = [
  [/^mil+i?se[ckg]/u, 'ms'],
  [/^(?:se[ckg]und|sekunt|second|szekund)/u, 's'],
  [/^(?:pro[cszt]+ent|percent|pourcent|porcent)/u, 'percent'],
  [/^de[cszk]ib[e\u00e9]l/u, 'dB'],
  [/^(?:puolisavel|halvton|halbton|polton|pulton|semiton)/u, 'semitones'],
  [/^(?:fa[ck]t[eo]u?r|fattor|fator|line[ae]r|линеин)/u, 'linear'],
  [
    /^(?:multipli[cek]|moltiplic|vermenigvuldig|vielfach|veelvou|nasob|mnozni|krotnosc|wielokrotn|szorzo|carpan)/u,
    'linear',
  ],
  [
    /^(?:[ck]oeff?i[csz]+i?ent|wspolczynni|kertoim|katsay|множител|коэффициент|кратност|πολλαπλασι|συντελεστ)/u,
    'linear',
  ],
];

/** The unit that an inflected word stands for, as `millisekunteina`, by its stem; for words of sentences, where more than one form occurs. */
export function unitByStem(word: string): Unit | undefined {
  const bare = bareWord(word);
  return unitOf(word) ?? (bare.length < 5 ? undefined : unitStems.find(([stem]) => stem.test(bare))?.[1]);
}
