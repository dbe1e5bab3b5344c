import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { InstrumentBuilder, plainNumber } from '../model/instrumentBuilder';
import type { ConversionNote } from '../model/notes';
import { mainSpan } from '../model/text/span';
import { counted } from '../model/wording/counted';
import type { Placed } from './placed';
import { grouped } from './placed';
import { readRecordings } from './readRecordings';
import type { Recording } from './recording';

/** An instrument that was made of recordings. */
export interface RecordedInstrument {
  instrument: Instrument;
  /** What was decided, and what was left out; the spans are in the list of paths, one a line. */
  notes: ConversionNote[];
  /** What became of each recording, in the order of the instrument; those that are left out last. */
  decisions: RecordingDecision[];
}

/** What was decided of a recording, with the reasons. */
export interface RecordingDecision {
  path: string;
  /** Its place in the instrument; missing where it is left out. */
  place?: Pick<
    Placed,
    | 'root'
    | 'lowKey'
    | 'highKey'
    | 'lowVelocity'
    | 'highVelocity'
    | 'tuneCents'
    | 'position'
    | 'length'
    | 'section'
  >;
  /** Sentences. */
  because: string[];
}

/**
 * Makes an instrument of recordings; `samplePath` gives the path that a region writes. The text of the instrument's source is the
 * list of paths, so that every value leads to its file.
 */
export function recordedInstrument(
  path: string,
  recordings: readonly Recording[],
  samplePath: (path: string) => string,
): RecordedInstrument {
  const { placed, leftOut, notes } = readRecordings(recordings);
  const { instrument, lines } = placedInstrument(path, recordings, placed, { samplePath, isApart: false });
  return {
    decisions: [
      ...sectionsOf(placed).flatMap(([, members]) => members.map(decisionOf)),
      ...leftOut.map(({ path: left, because }) => ({ path: left, because: [`Left out: ${because}.`] })),
    ],
    instrument,
    notes: [
      ...notes.map((message): ConversionNote => ({ kind: 'assumed', ...mainSpan(0, 0), message })),
      ...placed.flatMap(({ recording }) => loopNote(recording, lines)),
      ...leftOut.map(({ path: left, because }): ConversionNote => {
        const { start, end } = lines.get(left) ?? { start: 0, end: 0 };
        return { kind: 'ignored', ...mainSpan(start, end), message: `"${left}" is left out: ${because}.` };
      }),
      ...(placed.length === 0
        ? []
        : [
            {
              kind: 'assumed' as const,
              ...mainSpan(0, 0),
              message: `Made of ${counted(placed.length, 'recording')} alone. Play it and listen to each key.`,
            },
          ]),
    ],
  };
}

function decisionOf(one: Placed): RecordingDecision {
  const { root, lowKey, highKey, lowVelocity, highVelocity, tuneCents, position, length, section } = one;
  return {
    path: one.recording.path,
    place: { root, lowKey, highKey, lowVelocity, highVelocity, tuneCents, position, length, section },
    because: usableLoop(one.recording) ? [...one.because, 'Its loop is that of the file.'] : one.because,
  };
}

/** How an instrument of recordings is written. */
export interface RecordedStyle {
  /** The path that a region writes. */
  samplePath(path: string): string;
  /** A key as the value of an opcode; a number where nothing is said. */
  keyText?(key: number): string;
  /** Whether regions without a group of their own get one without a name, apart from what stands before them. */
  isApart: boolean;
}

/**
 * An instrument of recordings with their places. The text of its source is the list of paths, one a line, and `lines` says where
 * each stands in it.
 */
export function placedInstrument(
  path: string,
  recordings: readonly Recording[],
  placed: readonly Placed[],
  style: RecordedStyle,
): { instrument: Instrument; lines: ReadonlyMap<string, { start: number; end: number }> } {
  const text = recordings.map((one) => `${one.path}\n`).join('');
  const lines = new Map<string, { start: number; end: number }>();
  let at = 0;
  for (const one of recordings) {
    lines.set(one.path, { start: at, end: at + one.path.length });
    at += one.path.length + 1;
  }
  const builder = new InstrumentBuilder('table', text.length);
  builder.enterSource(path, text);
  for (const [name, members] of sectionsOf(placed)) {
    const span = lines.get(members[0]?.recording.path ?? '') ?? { start: 0, end: 0 };
    if (name !== '' || style.isApart) builder.openHeader(HeaderKind.group, span.start, span.end);
    if (name !== '') addValue(builder, 'group_label', name, span);
    for (const one of members) {
      const own = lines.get(one.recording.path) ?? span;
      builder.openHeader(HeaderKind.region, own.start, own.end);
      for (const [opcode, value] of valuesOf(one, style)) addValue(builder, opcode, value, own);
    }
  }
  return { instrument: builder.finish(), lines };
}

function usableLoop({ loop, frames }: Recording): { start: number; end: number } | undefined {
  if (!loop || loop.start >= loop.end || loop.start >= frames) return undefined;
  return { start: loop.start, end: Math.min(loop.end, frames - 1) };
}

function loopNote(
  recording: Recording,
  lines: ReadonlyMap<string, { start: number; end: number }>,
): ConversionNote[] {
  const { loop, path } = recording;
  const used = usableLoop(recording);
  if (!loop || (used && used.end === loop.end)) return [];
  const { start, end } = lines.get(path) ?? { start: 0, end: 0 };
  const message = used
    ? `The loop in "${path}" ends at frame ${loop.end}, past the end of the file; it is written up to frame ${used.end}.`
    : `The loop in "${path}" makes no sense; it is left out.`;
  return [{ kind: used ? 'approximated' : 'dropped', ...mainSpan(start, end), message }];
}

/** The groups by name, those without one first, each from the lowest key up. */
function sectionsOf(placed: readonly Placed[]): [string, Placed[]][] {
  return [...grouped(placed, ({ section }) => section)]
    .sort(([one], [other]) => (one === '' ? -1 : other === '' ? 1 : 0))
    .map(([name, members]) => [
      name,
      [...members].sort(
        (a, b) => a.root - b.root || a.lowVelocity - b.lowVelocity || a.position - b.position,
      ),
    ]);
}

function addValue(
  builder: InstrumentBuilder,
  name: string,
  value: string | number,
  { start, end }: { start: number; end: number },
): void {
  const number = typeof value === 'number' ? value : plainNumber(value);
  const parameter = builder.addParameter(builder.names.idOf(name), start, start, end, number);
  builder.setValue(parameter, String(value));
}

function valuesOf(one: Placed, { samplePath, keyText = String }: RecordedStyle): [string, string | number][] {
  const values: [string, string | number][] = [
    ['sample', samplePath(one.recording.path)],
    ['lokey', keyText(one.lowKey)],
    ['hikey', keyText(one.highKey)],
    ['pitch_keycenter', keyText(one.root)],
  ];
  if (one.lowVelocity !== 1) values.push(['lovel', one.lowVelocity]);
  if (one.highVelocity !== 127) values.push(['hivel', one.highVelocity]);
  if (one.tuneCents !== 0) values.push(['tune', one.tuneCents]);
  if (one.pan !== undefined) values.push(['pan', one.pan]);
  if (one.isRelease) values.push(['trigger', 'release']);
  if (one.length > 1) values.push(['seq_length', one.length], ['seq_position', one.position]);
  const loop = usableLoop(one.recording);
  if (loop) values.push(['loop_mode', 'loop_continuous'], ['loop_start', loop.start], ['loop_end', loop.end]);
  return values;
}
