import type { ConversionNote } from '../../model/notes';
import { mainSpan } from '../../model/text/span';
import { doubtfulBelow } from '../../vocabulary/infer/inferredVocabulary';
import type { VocabularyInForce } from './notationFinder';

/** Other readings that a note names at most. */
const mostOthers = 3;

/**
 * What had to be assumed of how a text is written, at an example of each: points with little evidence, and scales that its
 * numbers suggest and its words do not say. Nothing where a file settles how it is read.
 */
export function assumedInVocabulary({ inferred }: VocabularyInForce): ConversionNote[] {
  const guessed = (inferred?.decisions ?? []).filter(
    ({ confidence, isGuess }) => isGuess || confidence < doubtfulBelow,
  );
  return guessed.map(({ message, evidence, choices, span }) => {
    const others = choices.slice(0, mostOthers).map(({ label }) => label);
    const could = others.length > 0 ? [`It could also be: ${others.join(', or ')}.`] : [];
    return {
      kind: 'assumed',
      ...mainSpan(span.start, span.end),
      message: [message, ...evidence, ...could].join(' '),
    };
  });
}
