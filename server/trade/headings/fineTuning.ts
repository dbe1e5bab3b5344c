import { wordsOf } from '../languages/spelling';

const fineWord =
  /^(?:fine?s?|fino|fina|fein\p{L}*|fijn\p{L}*|fin(?:t|tuning|stemning|stamning)?|micro\p{L}*|mikro\p{L}*|detune|cents?|ct|afinacion|desaccord|jemn\p{L}*|dokladn\p{L}*|precyzyjn\p{L}*|hieno\p{L}*|finom\p{L}*|ince\p{L}*|тонк\p{L}*|точн\p{L}*|λεπτ\p{L}*)$|^(?:fine|fein|micro)|微|미세/u;

/** Whether a heading of a tuning says that it is the fine one. */
export function isFineTuning(heading: string): boolean {
  return wordsOf(heading).some((word) => fineWord.test(word));
}
