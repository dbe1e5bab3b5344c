import { bareWord } from '../../languages/spelling';
import { turningWords } from '../../turningWords';
import type { RowChoice } from '../rows/namedRows';
import { rowClausesIn } from '../rows/namedRows';

/** Rows whose keys are right, as a text says that has others moved. */
export interface RightRows {
  /** The rows by their place; `undefined` where names say which are meant. */
  rows: RowChoice | undefined;
  /** The words that may stand in the names of their samples, bare. */
  words: readonly string[];
  text: string;
}

const longest = 2000;
const longestSentence = 300;
const exceptWord = new RegExp(turningWords('except'), 'iu');
/** Verbs behind what is right, without accents. */
const verbWord =
  /(?<!\p{L})(?:are|is|were|was|sind|ist|stimmen|stimmt|passen|passt|sont|est|son|es|estan|esta|sono|e|sao|estao|zijn|is|kloppen|klopt|ar|er|on|ovat|sa|jsou|som|stemmer|stammer)(?!\p{L})/u;
const alone = /(?<!\p{L})(?:stimmen|stimmt|passen|passt|kloppen|klopt|stemmer|stammer)(?!\p{L})/u;
/** What says that something may stay. */
const rightWord =
  /(?<!\p{L})(?:right|correct|fine|ok(?:ay)?|good|as they (?:stand|are|should be)|in order|richtig|korrekt|justes?|exact\p{L}*|corrects?|bons?|bonnes?|bien|correct[oa]s?|giust[aeio]|corrett[aeio]|certos?|certas?|corret[oa]s?|goed|juist|ratt|riktig\p{L}*|rigtig\p{L}*|oikein|dobrze|poprawn\p{L}*|spravne|верн\p{L}*|правильн\p{L}*)(?!\p{L})/u;
const negated = new RegExp(turningWords('not', 'none'), 'iu');
const ofSide = /(?<!\p{L})(?:left|links|gauche|izquierd\p{L}*|sinistr\p{L}*|pan\p{L}*)(?!\p{L})/u;
/** Words that name nothing by themselves, without accents. */
const small =
  /^(?:the|only|just|and|for|two|three|four|five|rows?|lines?|zones?|samples?|files?|notes?|keys?|ones?|all|both|key|numbers?|these|those|which|that|of|with|in|from|nur|die|der|das|den|und|zwei|drei|zeilen?|reihen?|tasten?|dateien?|noten?|fur|bei|von|les?|seul\p{L}*|deux|trois|lignes?|sauf|pour|los|las|solo|sol[oa]s|dos|tres|filas?|teclas?|notas?|righe?|due|tre|gli|solo|alleen|twee|drie|rijen|regels|bara|kun|endast|ainoastaan|tylko|dva|jen)$/u;

/** A sentence up to where it excepts something, and what that is: `All keys are an octave too low except the bells`. */
export function withoutException(sentence: string): { head: string; except: RightRows[] } {
  const found = exceptWord.exec(sentence);
  const tail = found ? sentence.slice(found.index + found[0].length) : '';
  const head = found ? sentence.slice(0, found.index) : sentence;
  // `All but the last two` stands before what is said of them.
  if (!found || head.trim().split(/\s+/u).length < 5 || tail.trim() === '')
    return { head: sentence, except: [] };
  return { head: head.replace(/[\s,(–-]+$/u, ''), except: [rightRows(tail, sentence)] };
}

/** Sentences that say that rows are right as they stand: `Only the two bell rows are right`, `Die letzten zwei stimmen`. */
export function rightRowsIn(texts: readonly string[]): RightRows[] {
  const found = new Map<string, RightRows>();
  for (const whole of texts)
    for (const sentence of whole
      .slice(0, longest)
      .split(/[.!?](?=\s|$)|[;\n\r。]|,\s(?=only|nur|seul|solo)/u)) {
      const text = sentence.trim();
      const bare = bareWord(text);
      if (text.length > longestSentence || negated.test(text) || ofSide.test(bare)) continue;
      const verb = verbWord.exec(bare);
      if (!verb || !(alone.test(bare) || rightWord.test(bare.slice(verb.index)))) continue;
      const one = rightRows(bare.slice(0, verb.index), text);
      if (one.rows || one.words.length > 0)
        found.set(`${JSON.stringify(one.rows)} ${one.words.join(' ')}`, one);
    }
  return [...found.values()];
}

function rightRows(part: string, text: string): RightRows {
  const [clause] = rowClausesIn(part);
  const parts: readonly string[] = bareWord(part).match(/\p{L}{3,}/gu) ?? [];
  return { rows: clause?.rows, words: parts.filter((word) => !small.test(word)), text };
}
