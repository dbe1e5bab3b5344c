import type { MidiData, MidiEvent } from 'midi-file';
import { parseMidi } from 'midi-file';
import type { Message, TimedMessage } from '../../playing/player/playMessage';
import type { MessagePart } from './messages';

/** What a Standard MIDI File plays, or why it cannot be read. */
export type MidiReading =
  | { kind: 'part'; part: MessagePart /** Channels that notes are on, from 1. */; channels: number[] }
  | { kind: 'unreadable'; reason: string };

/** Microseconds a quarter note where the file does not say (Standard MIDI Files 1.0): 120 beats a minute. */
const usualTempo = 500_000;

/**
 * Reads a Standard MIDI File (MIDI Association, Standard MIDI Files 1.0) of format 0 or 1, all of its tracks and channels
 * as one. Never throws.
 */
export function readMidiPart(bytes: Uint8Array): MidiReading {
  let data: MidiData;
  const fault = chunkFault(bytes);
  if (fault !== undefined) return { kind: 'unreadable', reason: fault };
  try {
    data = parseMidi(bytes);
  } catch {
    return { kind: 'unreadable', reason: 'this is no Standard MIDI File' };
  }
  if (data.header.format === 2) {
    return {
      kind: 'unreadable',
      reason: 'its tracks are patterns of their own (format 2); save it as format 0 or 1',
    };
  }
  const channels = new Set<number>();
  const part: TimedMessage[] = [];
  for (const { seconds, event } of timed(data)) {
    const message = messageOf(event);
    if (!message) continue;
    if (message.kind === 'noteOn' && 'channel' in event) channels.add(event.channel + 1);
    part.push({ seconds, message });
  }
  return { kind: 'part', part, channels: [...channels].sort((a, b) => a - b) };
}

/** What is wrong with the chunks of a file: what is cut off would be silence that nobody asked for. */
function chunkFault(bytes: Uint8Array): string | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const nameAt = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (nameAt(0) !== 'MThd') return 'this is no Standard MIDI File';
  let tracks = 0;
  let at = 0;
  while (at + 8 <= bytes.length) {
    const length = view.getUint32(at + 4);
    const left = bytes.length - at - 8;
    if (length > left)
      return `it is cut short: a part of it should hold ${length} bytes and ends after ${left}; copy or export it again`;
    if (nameAt(at) === 'MTrk') tracks++;
    at += 8 + length;
  }
  return tracks === 0 ? 'it holds no track; copy or export it again' : undefined;
}

/** All events of all tracks in the order of time; those of one time in the order of the tracks. */
function timed({ header, tracks }: MidiData): { seconds: number; event: MidiEvent }[] {
  const all: { ticks: number; event: MidiEvent }[] = [];
  for (const track of tracks) {
    let ticks = 0;
    for (const event of track) {
      ticks += event.deltaTime;
      all.push({ ticks, event });
    }
  }
  all.sort((a, b) => a.ticks - b.ticks);
  const { ticksPerBeat, framesPerSecond, ticksPerFrame } = header;
  let secondsPerTick =
    framesPerSecond && ticksPerFrame
      ? 1 / (framesPerSecond * ticksPerFrame)
      : usualTempo / 1e6 / Math.max(1, ticksPerBeat ?? 480);
  let seconds = 0;
  let before = 0;
  return all.map(({ ticks, event }) => {
    seconds += (ticks - before) * secondsPerTick;
    before = ticks;
    if (event.type === 'setTempo' && ticksPerBeat) {
      secondsPerTick = event.microsecondsPerBeat / 1e6 / ticksPerBeat;
    }
    return { seconds, event };
  });
}

function messageOf(event: MidiEvent): Message | undefined {
  switch (event.type) {
    case 'noteOn':
      return { kind: 'noteOn', key: event.noteNumber, velocity: event.velocity };
    case 'noteOff':
      return { kind: 'noteOff', key: event.noteNumber, velocity: event.velocity };
    case 'controller':
      return { kind: 'controller', number: event.controllerType, value: event.value };
    case 'pitchBend':
      return { kind: 'bend', value: event.value };
    case 'channelAftertouch':
      return { kind: 'channelPressure', value: event.amount };
    case 'noteAftertouch':
      return { kind: 'polyPressure', key: event.noteNumber, value: event.amount };
    case 'programChange':
      return { kind: 'program', number: event.programNumber };
    default:
      return undefined;
  }
}
