import type { ConversionNote } from '../../model/notes';
import { mainSpan } from '../../model/text/span';
import { doubtfulBelow } from '../../vocabulary/infer/inferredVocabulary';
import { otherReadings } from '../../vocabulary/infer/otherReadings';
import type { VocabularyInForce } from './notationFinder';

/** Other readings that a note names at most. */
const mostOthers = 3;

/**
 * What had to be assumed of how a text is written, at an example of each: points with little evidence, and scales that its
 * numbers suggest and its words do not say; first what is lost because it makes no sense as what its name says. Nothing where a file settles how it is read.
 */
export function assumedInVocabulary({ inferred }: VocabularyInForce): ConversionNote[] {
  const guessed = (inferred?.decisions ?? []).filter(
    ({ confidence, isGuess }) => isGuess || confidence < doubtfulBelow,
  );
  const lostFirst = [...guessed.filter(({ isLost }) => isLost), ...guessed.filter(({ isLost }) => !isLost)];
  return lostFirst.map(({ message, evidence, choices, span, isLost }) => {
    const others = otherReadings(choices.slice(0, mostOthers).map(({ label }) => label));
    return {
      kind: isLost ? 'dropped' : 'assumed',
      ...mainSpan(span.start, span.end),
      message: `${[message, ...evidence].join(' ')}${others}${others === '' ? '' : ' Choose in a vocabulary file.'}`,
    };
  });
}
