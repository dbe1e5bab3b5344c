import type { Instrument } from '../instrument';
import type { Directive } from '../instrumentParts';
import type { Included, ReadOptions, WriteOptions, Written } from '../notation';
import type { ConversionNote } from '../notes';
import { regionDifference } from '../overlaps/regionDifference';
import type { Steps } from '../steps';
import { spanIn } from '../text/span';
import type { DirectiveForms, Keeping, WritingPlan } from './writingPlan';
import { planWriting } from './writingPlan';

/** What is needed to write an instrument with its variables and includes. */
export interface DirectiveWriter {
  forms: DirectiveForms;
  write(plan: WritingPlan): Steps<Written>;
  /** Reads the notation that is written. */
  read(text: string, options: ReadOptions): Steps<Instrument>;
}

/**
 * Writes an instrument with as many of its variables and includes as `options` ask for and as leave all regions the
 * same: what was written is read again, and where it says something else than a text with all written out, less is kept
 * and a note says why.
 */
export function* writeKeeping(
  instrument: Instrument,
  options: WriteOptions,
  { forms, write, read }: DirectiveWriter,
): Steps<Written> {
  const plain = yield* write(planWriting(instrument, options, forms, 'nothing'));
  const hasDirectives = instrument.directives.some(({ kind }) => kind !== 'comment');
  if (options.directives !== 'keep' || !hasDirectives) return plain;
  const main = instrument.sources[0]?.path ?? '';
  const path = options.move ? `${options.move.to}/written` : main;
  const include = (wanted: string): Included => {
    const found = instrument.sourceOf(wanted);
    return found && found.path !== main ? { kind: 'text', text: found.text } : { kind: 'missing' };
  };
  const wanted = yield* read(plain.text, { path });
  let reason: string | undefined;
  for (const keeping of ['all', 'defines'] satisfies Keeping[]) {
    const written = yield* write(planWriting(instrument, options, forms, keeping));
    const difference = regionDifference(wanted, yield* read(written.text, { path, include }));
    if (difference === undefined) return withReason(instrument, written, reason, ['include']);
    reason = difference;
  }
  return withReason(instrument, plain, reason, ['define', 'include']);
}

/** What was written with a note why directives of some kinds are not kept, where there is a reason. */
function withReason(
  { directives }: Instrument,
  written: Written,
  reason: string | undefined,
  kinds: readonly Directive['kind'][],
): Written {
  const lost = directives.filter(({ kind }) => kinds.includes(kind));
  const [first] = lost;
  if (reason === undefined || !first) return written;
  const what = [
    ...(lost.some(({ kind }) => kind === 'define') ? ['variables'] : []),
    ...(lost.some(({ kind }) => kind === 'include') ? ['includes'] : []),
  ].join(' and ');
  const message = `No ${what} are kept: with them, ${reason}.`;
  const { source, start, end } = first;
  const isAboutIt = (note: ConversionNote) =>
    note.source === source && note.start === start && note.end === end;
  const place = written.notes.find(isAboutIt)?.written ?? { start: 0, end: 0 };
  const note: ConversionNote = {
    kind: 'approximated',
    ...spanIn(source, start, end),
    message,
    written: place,
  };
  return { ...written, notes: [note, ...written.notes] };
}
