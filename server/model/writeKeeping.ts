import type { Instrument } from './instrument';
import type { Included, ReadOptions, WriteOptions, Written } from './notation';
import { sameRegions } from './sameRegions';
import type { DirectiveForms, Keeping, WritingPlan } from './writingPlan';
import { planWriting } from './writingPlan';

/** What is needed to write an instrument with its variables and includes. */
export interface DirectiveWriter {
  forms: DirectiveForms;
  write(plan: WritingPlan): Written;
  /** Reads the notation that is written. */
  read(text: string, options: ReadOptions): Instrument;
}

/**
 * Writes an instrument with as many of its variables and includes as `options` ask for and as leave all regions the
 * same: what was written is read again, and where it says something else than a text with all written out, less is kept.
 */
export function writeKeeping(
  instrument: Instrument,
  options: WriteOptions,
  { forms, write, read }: DirectiveWriter,
): Written {
  const plain = write(planWriting(instrument, options, forms, 'nothing'));
  const hasDirectives = instrument.directives.some(({ kind }) => kind !== 'comment');
  if (options.directives !== 'keep' || !hasDirectives) return plain;
  const main = instrument.sources[0]?.path ?? '';
  const path = options.move ? `${options.move.to}/written` : main;
  const include = (wanted: string): Included => {
    const found = instrument.sources.find((source) => source.path === wanted);
    return found && found.path !== main ? { kind: 'text', text: found.text } : { kind: 'missing' };
  };
  const wanted = read(plain.text, { path });
  for (const keeping of ['all', 'defines'] satisfies Keeping[]) {
    const written = write(planWriting(instrument, options, forms, keeping));
    if (sameRegions(wanted, read(written.text, { path, include }))) return written;
  }
  return plain;
}
