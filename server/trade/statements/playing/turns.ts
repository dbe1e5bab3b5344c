import { playInTurn, sameKeysWords } from '../../languages/inTurnWords';
import { turningWords } from '../../turningWords';

const negated = new RegExp(turningWords('not', 'none'), 'iu');

const longest = 400;

/** The text that says that the samples of a row play in turn; `undefined` where none does. */
export function turnStatement(texts: readonly string[]): string | undefined {
  return texts.find((text) => text.length <= longest && playInTurn.test(text) && !negated.test(text));
}

/** Whether a text says that something plays in turn. */
export function saysInTurn(text: string): boolean {
  return playInTurn.test(text) && !negated.test(text);
}

/** The sentence that says that rows of the same keys play in turn: `Files on the same key alternate`. */
export function turnsOfSameKeys(texts: readonly string[]): string | undefined {
  return texts
    .flatMap((text) => text.split(/[.!?](?=\s|$)|[\n\r;。]/u))
    .find((text) => text.length <= longest && sameKeysWords.test(text) && saysInTurn(text))
    ?.trim();
}
