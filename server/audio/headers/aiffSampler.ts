import type { SampleProblem } from '../../model/samples';
import type { ByteWindow } from './byteWindow';
import type { SamplerFacts } from './wavSampler';

/** Bytes of an `INST` chunk. */
export const aiffInstrumentBytes = 20;

/** What an `INST` chunk says; its loops are complete only with the markers they name. */
export interface AiffInstrument {
  baseNote: number;
  detune: number;
  sustain: MarkedLoop;
  release: MarkedLoop;
}

/** A loop between two markers. */
interface MarkedLoop {
  playMode: number;
  begin: number;
  end: number;
}

/** Positions in frames by marker id: the place before the frame of that number. */
export type Markers = ReadonlyMap<number, number>;

/** Bytes of a marker before the characters of its name. */
const markerBytes = 7;
/** A file may hold 65535 named markers; the ones that loops name stand among the first. */
const longestMarkers = 8192;
const highestKey = 127;
const playModes = ['none', 'forward', 'alternating'] as const;

/**
 * Reads an `INST` chunk held in memory: base note, detune, lowest and highest note and velocity, a byte each; gain, 16
 * bits; sustain and release loop, each a play mode and two marker ids of 16 bits. Layout from memory of Audio
 * Interchange File Format 1.3, Apple, 1989; checked against files that general audio tools read.
 */
export function readAiffInstrument(bytes: ByteWindow, at: number): AiffInstrument {
  const loop = (place: number): MarkedLoop => ({
    playMode: bytes.uint16(place),
    begin: bytes.uint16(place + 2),
    end: bytes.uint16(place + 4),
  });
  return {
    baseNote: bytes.int8(at),
    detune: bytes.int8(at + 1),
    sustain: loop(at + 8),
    release: loop(at + 14),
  };
}

/**
 * Reads a `MARK` chunk: their number, then for each its id (16 bits), its position (32 bits) and its name, one byte of
 * length and the characters, filled up to an even number of bytes. Markers far into a long chunk are left out. Layout
 * from memory of Audio Interchange File Format 1.3, Apple, 1989; checked against files that general audio tools read.
 */
export async function readMarkers(bytes: ByteWindow, body: number, length: number): Promise<Markers> {
  const markers = new Map<number, number>();
  const end = body + Math.min(length, longestMarkers);
  if (length < 2 || !(await bytes.hold(body, 2))) return markers;
  const count = bytes.uint16(body);
  let at = body + 2;
  for (let number = 0; number < count && at + markerBytes <= end; number++) {
    if (!(await bytes.hold(at, markerBytes))) break;
    const id = bytes.uint16(at);
    // Ids are unique; of two that are the same the first counts.
    if (!markers.has(id)) markers.set(id, bytes.uint32(at + 2));
    const name = bytes.uint8(at + 6) + 1;
    at += 6 + name + (name % 2);
  }
  return markers;
}

/**
 * What an `INST` chunk and the markers of its file say to a sampler. Detune says by how many cents to alter the pitch
 * when playing, so that a file which is to be lowered sounds above its base note. A marker stands between two frames:
 * the loop's last frame is the one before the end marker. The sustain loop comes first, then that of the release.
 */
export function aiffSampler(instrument: AiffInstrument, markers: Markers): SamplerFacts {
  const facts: SamplerFacts = { loops: [], rootKey: null, fineTuneCents: null, problems: [] };
  const absurd = (message: string) => facts.problems.push({ kind: 'value-absurd', message });
  const { baseNote, detune } = instrument;
  if (baseNote < 0 || baseNote > highestKey) {
    absurd(`The root key in the file is ${baseNote & 255}; keys go from 0 to 127.`);
  } else {
    facts.rootKey = baseNote;
    if (Math.abs(detune) <= 50) facts.fineTuneCents = 0 - detune;
    else absurd(`The fine tuning in the file is ${detune} cents; it goes from -50 to 50.`);
  }
  addLoop(facts, 'sustain', instrument.sustain, markers);
  addLoop(facts, 'release', instrument.release, markers);
  return facts;
}

function addLoop(facts: SamplerFacts, name: string, loop: MarkedLoop, markers: Markers): void {
  const problem = (kind: SampleProblem['kind'], message: string) => facts.problems.push({ kind, message });
  const mode = playModes[loop.playMode];
  if (mode === 'none') return;
  const start = markers.get(loop.begin);
  const end = markers.get(loop.end);
  if (start === undefined || end === undefined) {
    const missing = start === undefined ? loop.begin : loop.end;
    problem('chunk-broken', `The ${name} loop of the file names marker ${missing}, which is not there.`);
    return;
  }
  if (end <= start) {
    problem(
      'value-absurd',
      `The ${name} loop of the file ends at frame ${end}, not after its start at ${start}.`,
    );
    return;
  }
  if (mode === undefined) {
    problem(
      'value-absurd',
      `The ${name} loop of the file is of the unknown type ${loop.playMode}; it is taken as forward.`,
    );
  }
  facts.loops.push({ start, end: end - 1, type: mode ?? 'forward' });
}
