import type { Stretch } from '../../../model/text/stretch';
import { correctingWord, isHeadedAsCorrection } from '../../../trade/correctingWords';
import type { ToldValue } from '../../../trade/phrases/clause';
import { turningWords } from '../../../trade/turningWords';
import { correctedKey } from './correctedKeys';
import type { TextLine, ToldLine } from './toldLine';
import { givesKeys, toldLineIn } from './toldLine';

const excepting = new RegExp(turningWords('except'), 'iu');
/** Words that take a value back: `not 60`, `instead of 60`. */
const takesBack = new RegExp(`${turningWords('not')}|${correctingWord}`, 'iu');

/** A line with what later lines put right in it. */
export interface CorrectedLine extends TextLine {
  isWithdrawn: boolean;
}

/** A word for a line of a list, and its number. */
const reference =
  /\u7b2c\s*(\d{1,3})\s*[\u6761\u689d\u53f7\u865f\u884c\u9879\u9805\u756a\u4e2a\u500b\uac1c]|(?<!\d)(\d{1,3})\s?(?:\ubc88|\u756a\u76ee)|(?:#|(?<!\p{L})(?:no\.?|nr\.?|n[\u00b0\u00ba]|number|num[e\u00e9]ro|n\u00famero|nummer|entry|item|row|line|zone|eintrag|zeile|punkt|position|ligne|entr\u00e9e|l\u00ednea|entrada|riga|voce|linha|regel|rad|r\u00e6kke|rivi|wiersz|pozycja|\u0159\u00e1dek|polo\u017eka|\u010d\u00edslo|строк\p{L}|пункт\p{L}?|номер\p{L}?|sor|t\u00e9tel|sat\u0131r|madde))\s?(\d{1,3})(?!\d)(?!\s?(?:dB|cent|Hz))/iu;
const withdrawing =
  /(?<!\p{L})(?:drop|remov|delet|skip|ignor|leave out|withdr|forget|entf[a\u00e4]ll|streich|weglass|l\u00f6sch|supprim|enlev|retir|quit|elimin|borr|togli|tolt|scart|apag|vervalt|weglat|schrap|ta bort|stryk|slett|slet|udg\u00e5r|poist|usun|skre\u015bl|pomi[n\u0144]|vynech|smaz|zru\u0161|удал|убра|исключ|t\u00f6r\u00f6l|kihagy|sil|\u00e7\u0131kar|iptal)|\u4e0d\u8981|\u5220|\u522a|\u53bb\u6389|\u53d6\u6d88|\u4f5c\u5e9f|\u524a\u9664|\uc0ad\uc81c|\ube7c/iu;

/**
 * Puts right what later lines say of entries by their numbers or files: `no. 4: root 48, not 47`, `entry 9 is dropped`. A line below the
 * list that names an entry and is not understood is told of, since the entry may be wrong.
 */
export function correct(
  text: string,
  lines: readonly TextLine[],
  legend: (clause: string) => ToldValue | undefined,
): { corrected: CorrectedLine[]; notes: (Stretch & { text: string })[] } {
  const corrected: CorrectedLine[] = [];
  const notes: (Stretch & { text: string })[] = [];
  const byNumber = new Map<string, CorrectedLine>();
  const byFile = new Map<string, CorrectedLine>();
  const tell = ({ start, end }: Stretch, said: string) => notes.push({ start, end, text: said });
  for (const line of lines) {
    const { told, start, end } = line;
    const written = text.slice(start, end);
    const file = told?.file ? text.slice(told.file.start, told.file.end).toLowerCase() : undefined;
    const named = file === undefined ? undefined : byFile.get(file);
    const behind = told?.file
      ? written.slice(0, told.file.start - start) + blanked(written, told.file, start)
      : '';
    const isHeaded = named !== undefined && isHeadedAsCorrection(written);
    const key =
      named?.told && told?.lead === undefined && (isHeaded || takesBack.test(behind))
        ? correctedKey(named.told, behind, start)
        : undefined;
    const isOwn =
      told?.file !== undefined &&
      !isHeaded &&
      key === undefined &&
      (told.lead !== undefined || givesKeys(told) || named === undefined);
    const number = isOwn || byFile.size === 0 ? undefined : reference.exec(written);
    const entry =
      byNumber.get(number?.slice(1).find((one) => one !== undefined) ?? '') ??
      (isOwn || file === undefined ? undefined : byFile.get(file));
    const isCorrection = entry?.told !== undefined;
    const next: CorrectedLine = { ...line, told: isCorrection ? undefined : told, isWithdrawn: false };
    corrected.push(next);
    if (isOwn) {
      byFile.set(file ?? '', next);
      if (told?.lead && !byNumber.has(told.lead.text)) byNumber.set(told.lead.text, next);
    }
    if (!isCorrection || !entry.told) continue;
    const said = written.trim().slice(0, 60);
    const after = start + (number ? number.index + number[0].length : 0);
    // What goes for others but this one is none of its values.
    const isLeftOut = excepting.test(written);
    const values = key
      ? [key]
      : isLeftOut
        ? []
        : told?.file
          ? // Without the old key it stays open which one a key is.
            told.values.filter(({ meaning }) => !isHeaded || meaning !== 'key')
          : toldLineIn(text, { start: after, end }, legend).values;
    if (values.length > 0) {
      entry.told = replaced(entry.told, values);
      tell(
        line,
        `"${said}" is taken for a correction of the entry that it names: ${values.map((one) => one.text).join(', ')}.`,
      );
    } else if (!isLeftOut && withdrawing.test(written)) {
      entry.isWithdrawn = true;
      tell(line, `"${said}" withdraws an entry of the list; its zone is left out.`);
    } else
      tell(
        line,
        `"${said}" speaks of an entry of the list and is not understood; see whether the entry is right.`,
      );
  }
  return { corrected, notes };
}

/** What stands behind the name of a file in a line, with blanks in its place. */
function blanked(written: string, file: Stretch, start: number): string {
  return ' '.repeat(file.end - file.start) + written.slice(file.end - start);
}

/** A line with other values; those of the same meaning give way. */
function replaced(told: ToldLine, values: ToldLine['values']): ToldLine {
  const meanings = new Set(values.map(({ meaning }) => meaning));
  return { ...told, values: [...told.values.filter(({ meaning }) => !meanings.has(meaning)), ...values] };
}
