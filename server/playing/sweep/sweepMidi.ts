import type { MidiEvent } from 'midi-file';
import { writeMidi } from 'midi-file';
import { noteNameOf } from '../../model/keys';
import { counted } from '../../model/wording/counted';
import type { Message } from '../player/playMessage';
import { defaultTempoBpm } from '../playingChoices';
import type { Sweep, SweepMessage } from './sweep';

/** Steps of time in a quarter note: 960 a second at 120 beats a minute. */
const ticksPerBeat = 480;

/**
 * A sweep as a Standard MIDI File of format 0 (MIDI Association, Standard MIDI Files 1.0), with a marker at each strike
 * that says the key, the velocity and how many regions it is for.
 */
export function sweepMidi(sweep: Sweep, title: string): Uint8Array {
  const track: MidiEvent[] = [
    { deltaTime: 0, meta: true, type: 'trackName', text: ascii(title) },
    { deltaTime: 0, ...tempo(defaultTempoBpm) },
  ];
  const clock = new Clock();
  let strike = 0;
  for (const message of sweep.messages) {
    for (; strike < sweep.strikes.length && sweep.strikes[strike].seconds <= message.seconds; strike++) {
      const { key, velocity, regions, seconds } = sweep.strikes[strike];
      const what = key === null ? 'controller' : `${noteNameOf(key)} velocity ${velocity}`;
      const text = `${what}: ${counted(regions.length, 'region')}`;
      track.push({ deltaTime: clock.to(seconds), meta: true, type: 'marker', text });
    }
    track.push({ deltaTime: clock.to(message.seconds), ...eventOf(message) } as MidiEvent);
    if (message.message.kind === 'tempo') clock.microsecondsPerBeat = microsecondsOf(message.message.bpm);
  }
  track.push({ deltaTime: clock.to(sweep.lengthSeconds), meta: true, type: 'endOfTrack' });
  return Uint8Array.from(writeMidi({ header: { format: 0, numTracks: 1, ticksPerBeat }, tracks: [track] }));
}

/** Turns seconds into steps from one event to the next; each event is as near to its time as a step allows. */
class Clock {
  microsecondsPerBeat = microsecondsOf(defaultTempoBpm);
  #seconds = 0;

  to(seconds: number): number {
    const ticksPerSecond = (ticksPerBeat * 1e6) / this.microsecondsPerBeat;
    const ticks = Math.max(0, Math.round((seconds - this.#seconds) * ticksPerSecond));
    this.#seconds += ticks / ticksPerSecond;
    return ticks;
  }
}

function tempo(bpm: number): { meta: true; type: 'setTempo'; microsecondsPerBeat: number } {
  return { meta: true, type: 'setTempo', microsecondsPerBeat: microsecondsOf(bpm) };
}

/** A quarter note at a tempo, as a MIDI file says it: in whole microseconds. */
function microsecondsOf(bpm: number): number {
  return Math.round(60e6 / bpm);
}

type Untimed<Event> = Event extends MidiEvent ? Omit<Event, 'deltaTime'> : never;

function eventOf({ channel, message }: SweepMessage): Untimed<MidiEvent> {
  if (message.kind === 'tempo') return tempo(message.bpm);
  return { channel: channel - 1, ...channelEvent(message) };
}

function channelEvent(message: Message) {
  switch (message.kind) {
    case 'noteOn':
      return { type: 'noteOn', noteNumber: message.key, velocity: message.velocity } as const;
    case 'noteOff':
      return { type: 'noteOff', noteNumber: message.key, velocity: message.velocity } as const;
    case 'controller':
      return { type: 'controller', controllerType: message.number, value: message.value } as const;
    case 'bend':
      return { type: 'pitchBend', value: message.value } as const;
    case 'channelPressure':
      return { type: 'channelAftertouch', amount: message.value } as const;
    case 'polyPressure':
      return { type: 'noteAftertouch', noteNumber: message.key, amount: message.value } as const;
    case 'program':
      return { type: 'programChange', programNumber: message.number } as const;
  }
}

/** Texts of MIDI files are ASCII. */
function ascii(text: string): string {
  return text.replace(/[^ -~]/g, '?');
}
