import { statementsIn } from './statements';

/** A value with its name before it, as a sentence: `note names: C3 is middle C`. */
export function namedStatement(name: string, value: string): string {
  const words = name.replace(/^.*:/, '').replace(/(?<=\p{Ll})(?=\p{Lu})|[-_.]+/gu, ' ');
  return `${words.toLowerCase()}: ${value.trim()}`;
}

const longest = 80;

/**
 * Whether a name and its value say how values elsewhere are to be read: `middleC="C3"`, `key60="C3"`. One word says less than a
 * sentence, so that it has to be one that is understood.
 */
export function tellsHowToRead(statement: string): boolean {
  if (statement.length > longest) return false;
  const { middleC, middleKey, otherOctaves, scales, sampleRate } = statementsIn([statement]);
  return [middleC, middleKey, otherOctaves, sampleRate].some((one) => one !== undefined) || scales.size > 0;
}
