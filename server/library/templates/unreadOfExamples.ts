import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import type { Span } from '../../model/text/span';
import type { ExampleSlot } from './examples';
import { examplesOf } from './examples';

/**
 * Notes on what stands in the examples of a template and is not understood: what they have in common each region has as they do, and what
 * they differ in is left out. They are tied to the first region of the source.
 */
export function unreadOfExamples(
  notation: Notation,
  examples: Instrument,
  source: Instrument,
): ConversionNote[] {
  const [region] = source.regions;
  const stretches = stretchesOf(examplesOf(examples, notation));
  if (region === undefined || !notation.unread) return [];
  const span = source.headerSpan(region);
  const differing = notation.differing?.(examples, stretches);
  const stays = notation
    .unread(examples, differing?.starts)
    .filter(({ start }) => stretches.some((one) => one.start <= start && start < one.end))
    .map(
      ({ message }): ConversionNote => ({
        kind: 'assumed',
        ...span,
        message: `In the template ${lowered(message)} So it stays as in the example.`,
      }),
    );
  const goes = differing?.told.map((one): ConversionNote => ({ ...span, ...one }));
  return [...stays, ...(goes ?? [])];
}

/** The stretches of a template that are repeated. */
export function stretchesOf(slots: readonly ExampleSlot[]): Span[] {
  return slots.map(({ unit, outer }) => outer?.unit ?? unit);
}

function lowered(message: string): string {
  return message.startsWith('The ') ? `the ${message.slice(4)}` : message;
}
