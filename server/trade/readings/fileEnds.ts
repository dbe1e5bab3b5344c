import { languages } from '../languages/languages';
import { bareWord } from '../languages/spelling';

/** Words for the end of a file as the place that something goes to, in the languages of the trade. */
export const toFileEnd = new RegExp(
  [
    String.raw`(?<!\p{L})(?:to|until|till?|at|with|through to) (?:the |its |their |each |every )?(?:very |actual )?(?:end|last (?:frame|sample)|(?:file|sample|recording)(?:'s|\u2019s)?(?: end)?)(?!\p{L})`,
    String.raw`(?:=|is|ist|est|es|\u00e8|\u00e9|:)\s?(?:always |immer |toujours |siempre |sempre |the )?(?:end of (?:the )?(?:file|sample)|(?:file|sample)(?:'s|\u2019s)? end|eof|dateiende|fin(?:al)? d[eu]l? (?:fichier|archivo)|fine del file)`,
    String.raw`bis (?:ganz )?(?:zum|ans|an das|zur) (?:\p{L}+ )?(?:\p{L}{0,12}ende|\p{L}{0,8}schluss|letzten (?:frame|sample))|(?:mit|an) (?:der datei|dem (?:sample|dateiende))`,
    String.raw`jusqu['\u2019]?\s?(?:\u00e0 la (?:toute )?fin|\u00e0 l['\u2019]extr\u00eame fin|au bout|\u00e0 la derni\u00e8re)`,
    String.raw`hasta (?:el|la) (?:mismo )?(?:fin(?:al)?|\u00faltim\p{L})|fino (?:alla fine|in fondo|all['\u2019]ultim\p{L})|at\u00e9 (?:ao|o|a) (?:fim|final|\u00faltim\p{L})|fins al final`,
    String.raw`tot (?:aan )?het (?:\p{L}+ )?(?:\p{L}{0,9}einde?)|til(?:l)? (?:\p{L}+s )?(?:\p{L}{0,3}slut\p{L}*|enden)|loppuun (?:asti|saakka)|loppuun`,
    String.raw`do (?:samego )?ko\u0144ca|do (?:\p{L}+ )?konce|до (?:самого )?конца|sonuna kadar|v\u00e9g\u00e9ig|(?:ως|έως|μέχρι) (?:το )?τέλ\p{L}+`,
    `(?:最後|末尾|終わり|終端|おわり)まで|(?:到|至)[^。，,]{0,6}(?:结尾|末尾|结束|最后|末端|結尾|結束)|끝까지`,
  ].join('|'),
  'iu',
);
const longest = 40;
const ends: ReadonlySet<string> = new Set([
  ...[
    'eof',
    'end of file',
    'end of sample',
    'file end',
    'sample end',
    'last frame',
    'dateiende',
    'samplende',
  ],
  ...languages.flatMap(({ parts }) => (parts.end ?? []).map(bareWord)),
]);

/** Whether a text names the end of the file in place of a frame: `end`, `EOF`, `bis zum Ende`. */
export function meansFileEnd(text: string): boolean {
  if (text.length > longest || /\d/.test(text)) return false;
  const bare = bareWord(text.replace(/^[<([\s]+|[>)\].\s]+$/gu, ''));
  return ends.has(bare) || toFileEnd.test(bare) || toFileEnd.test(`= ${bare}`);
}
