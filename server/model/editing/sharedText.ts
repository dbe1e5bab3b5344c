import type { Instrument } from '../instrument';
import type { Change, Edited } from '../notation';
import { nameOf } from '../paths';

/**
 * Why a change cannot be made where it would have to be: in a file that several includes bring in, where it would change
 * others too, or in a header whose opcodes stand in several files. `undefined` where nothing of that is so.
 */
export function sharedTextRefusal(instrument: Instrument, change: Change): Edited | undefined {
  switch (change.kind) {
    case 'set':
      return shared(instrument, change.header, ownNamed(instrument, change.header, [change.name]));
    case 'remove':
      return shared(instrument, instrument.headerOfParameter(change.parameter), [change.parameter]);
    case 'removeHeader':
      return instrument.isInOneFile(change.header)
        ? shared(instrument, change.header, [])
        : refused(
            instrument,
            change.header,
            'What belongs to this header stands in several files, so it was left as it is.',
          );
    case 'revise':
      return revision(instrument, change);
    default:
      return undefined;
  }
}

/** The source whose text a change is made in, as far as the change says: that of its header or parameter, else the main file. */
export function touchedSource(instrument: Instrument, change: Change): number {
  switch (change.kind) {
    case 'set': {
      const [own = -1] = ownNamed(instrument, change.header, [change.name]);
      return own < 0 ? instrument.headerSource(change.header) : instrument.parameterSource(own);
    }
    case 'remove':
    case 'rename':
      return instrument.parameterSource(change.parameter);
    case 'removeHeader':
    case 'revise':
      return instrument.headerSource(change.header);
    default:
      return 0;
  }
}

function revision(
  instrument: Instrument,
  { header, remove, add }: Change & { kind: 'revise' },
): Edited | undefined {
  const own = ownNamed(
    instrument,
    header,
    add.map(({ name }) => name),
  );
  const touched = [...remove, ...own];
  const source = instrument.headerSource(header);
  const elsewhere = touched.find((one) => instrument.parameterSource(one) !== source);
  if (elsewhere === undefined) return shared(instrument, header, touched);
  const file = nameOf(instrument.sources[instrument.parameterSource(elsewhere)]?.path ?? '');
  return refused(
    instrument,
    header,
    `A part of this header stands in another file, "${file}", so it was left as it is.`,
  );
}

function ownNamed(instrument: Instrument, header: number, names: readonly string[]): number[] {
  const { names: known } = instrument;
  return names
    .map((name) => instrument.own(header, known.canonical(known.idOf(name))))
    .filter((one) => one >= 0);
}

/** A change of a header through its parameters, or where it has none of a name yet, of its own text. */
function shared(instrument: Instrument, header: number, parameters: readonly number[]): Edited | undefined {
  if (instrument.readOften.size === 0) return undefined;
  const sources = [
    instrument.headerSource(header),
    ...parameters.map((one) => instrument.parameterSource(one)),
  ];
  const often = sources.find((source) => instrument.readOften.has(source));
  if (often === undefined) return undefined;
  const file = nameOf(instrument.sources[often]?.path ?? '');
  return refused(
    instrument,
    header,
    `Several includes bring "${file}" in, so a change in it would change more than this; it was left as it is.`,
  );
}

function refused(instrument: Instrument, header: number, message: string): Edited {
  return { edits: [], notes: [{ kind: 'dropped', ...instrument.headerSpan(header), message }] };
}
