/** Numbers as words, without accents (general dictionaries); of one word in several languages the value is the same. */
export const numberWords: readonly (readonly [words: string, value: number])[] = [
  ['a|an|one|ein|eine|einen|einem|un|une|uno|una|um|uma|een|en|ett|et|jeden|jedna|один|одну', 1],
  ['two|zwei|deux|dos|due|dois|duas|twee|tva|to|dwa|dva|два|две|kaksi|iki|ket', 2],
  ['three|drei|trois|tres|tre|drie|trzy|tri|три|kolme|uc|harom', 3],
  ['four|vier|quatre|cuatro|quattro|quatro|fyra|fire|cztery|ctyri|четыре|nelja|dort|negy', 4],
  ['five|funf|cinq|cinco|cinque|vijf|fem|piec|pet|пять|viisi|bes|ot', 5],
  ['six|sechs|seis|sei|zes|sex|seks|szesc|sest|шесть|kuusi|alti|hat', 6],
];

/** The value of a number as a word without accents; `undefined` for other words. */
export function numberOfWord(word: string): number | undefined {
  return numberWords.find(([words]) => words.split('|').includes(word))?.[1];
}
