import type { SampleLoop, SampleProblem } from '../../model/samples';
import { counted } from '../../model/wording/counted';
import type { ByteWindow } from './byteWindow';

/** Bytes before the loops of a `smpl` chunk. */
export const samplerHeaderBytes = 36;
/** Bytes of one loop in a `smpl` chunk. */
export const samplerLoopBytes = 24;
/** Loops of a file that are kept; an instrument plays the first. */
export const mostLoops = 32;
/** Bytes of an `inst` chunk. */
export const instrumentBytes = 7;

const loopTypes = ['forward', 'alternating', 'backward'] as const;
const highestKey = 127;

/** What a file says about how a sampler should play it. */
export interface SamplerFacts {
  loops: SampleLoop[];
  rootKey: number | null;
  /** Cents above the root key at which the file sounds. */
  fineTuneCents: number | null;
  problems: SampleProblem[];
}

/**
 * Reads a `smpl` chunk whose first `length` bytes are held in memory (as much of it as {@link mostLoops} loops need).
 * The fraction counts upwards from the root key; 0x80000000 is 50 cents. Layout: Microsoft, Multimedia Data Standards
 * Update, revision 3.0, April 15, 1994, new WAVE chunks, `smpl`; section and layout from memory, and checked against files that
 * general audio libraries wrote.
 */
export function readSamplerChunk(bytes: ByteWindow, at: number, length: number): SamplerFacts {
  const facts: SamplerFacts = { loops: [], rootKey: null, fineTuneCents: null, problems: [] };
  const problem = (kind: SampleProblem['kind'], message: string) => facts.problems.push({ kind, message });
  const key = bytes.uint32(at + 12);
  if (key > highestKey) problem('value-absurd', `The root key in the file is ${key}; keys go from 0 to 127.`);
  else {
    facts.rootKey = key;
    facts.fineTuneCents = Math.round((bytes.uint32(at + 16) / 0x80000000) * 50 * 100) / 100;
  }
  const promised = bytes.uint32(at + 28);
  const there = Math.floor((length - samplerHeaderBytes) / samplerLoopBytes);
  const count = Math.min(promised, there, mostLoops);
  if (promised > count) {
    problem(
      count < mostLoops ? 'chunk-broken' : 'value-absurd',
      `The file promises ${counted(promised, 'loop')}; ${count === 0 ? 'none' : `the first ${count}`} can be read.`,
    );
  }
  for (let number = 0; number < count; number++) {
    const place = at + samplerHeaderBytes + number * samplerLoopBytes;
    const type = bytes.uint32(place + 4);
    const start = bytes.uint32(place + 8);
    const end = bytes.uint32(place + 12);
    if (end < start) {
      problem(
        'value-absurd',
        `Loop ${number + 1} of the file ends at frame ${end}, before its start at ${start}.`,
      );
      continue;
    }
    const known = loopTypes[type];
    if (!known) {
      problem(
        'value-absurd',
        `Loop ${number + 1} of the file is of the unknown type ${type}; it is taken as forward.`,
      );
    }
    facts.loops.push({ start, end, type: known ?? 'forward' });
  }
  return facts;
}

/**
 * Reads the root key and fine tuning of an `inst` chunk held in memory: unshifted note, then fine tuning in cents from
 * −50 to 50, which is what the pitch has to be shifted by to be that note's: a file to be lowered sounds above it. Layout: Microsoft,
 * Multimedia Data Standards Update, revision 3.0, April 15, 1994, new WAVE chunks, `inst`; section and layout from memory, and
 * checked by writing and reading bytes alone.
 */
export function readInstrumentChunk(bytes: ByteWindow, at: number): SamplerFacts {
  const facts: SamplerFacts = { loops: [], rootKey: null, fineTuneCents: null, problems: [] };
  const key = bytes.uint8(at);
  const cents = bytes.int8(at + 1);
  if (key > highestKey) {
    facts.problems.push({
      kind: 'value-absurd',
      message: `The root key in the file is ${key}; keys go from 0 to 127.`,
    });
    return facts;
  }
  facts.rootKey = key;
  if (Math.abs(cents) <= 50) facts.fineTuneCents = 0 - cents;
  else {
    facts.problems.push({
      kind: 'value-absurd',
      message: `The fine tuning in the file is ${cents} cents; it goes from -50 to 50.`,
    });
  }
  return facts;
}
