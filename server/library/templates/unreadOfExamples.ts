import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { examplesOf } from './examples';

/**
 * Notes on what stands in the examples of a template and is not understood, so that each region has it as its example does. They are tied to
 * the first region of the source.
 */
export function unreadOfExamples(
  notation: Notation,
  examples: Instrument,
  source: Instrument,
): ConversionNote[] {
  const [region] = source.regions;
  const stretches = examplesOf(examples, notation).map(({ unit }) => unit);
  if (region === undefined || !notation.unread) return [];
  return notation
    .unread(examples)
    .filter(({ start }) => stretches.some((one) => one.start <= start && start < one.end))
    .map(({ message }) => ({
      kind: 'assumed',
      ...source.headerSpan(region),
      message: `In the template ${lowered(message)} So it stays as in the example.`,
    }));
}

function lowered(message: string): string {
  return message.startsWith('The ') ? `the ${message.slice(4)}` : message;
}
