import { keysText, keyText, velocitiesText } from '../../model/wording/rangeWords';
import type { GateTable } from '../playable/gateTable';
import { GateSubject } from '../playable/gateTable';
import type { PlayableInstrument } from '../playable/playableInstrument';
import { Silence, Trigger } from '../playable/playableInstrument';
import type { SilentReason } from '../player/conditions';
import { failingGate, gateValue } from '../player/conditions';
import type { PlayMemory } from '../player/playMemory';

/** Says in a sentence or two why a struck key, which the memory has turned to, leaves a region silent for a reason. */
export function silentMessage(
  playable: PlayableInstrument,
  memory: PlayMemory,
  region: number,
  reason: SilentReason,
): string {
  switch (reason) {
    case 'key':
      return keyMessage(playable, memory, region);
    case 'velocity':
      return `It answers ${velocitiesText(playable.lowVelocity[region], playable.highVelocity[region])}, not ${memory.velocity}.`;
    case 'keyswitch':
      return keyswitchMessage(playable, memory, region);
    case 'controller':
      return gateMessage(playable.controllerGates, playable, memory, region);
    case 'sequence':
      return sequenceMessage(playable, memory, region);
    case 'random':
      return `It sounds for random numbers from ${decimal(playable.lowRandom[region])} to ${decimal(playable.highRandom[region])}; this strike drew ${decimal(memory.random)}.`;
    case 'trigger':
      return triggerMessage(playable, memory, region);
    case 'bend':
    case 'pressure':
      return gateMessage(playable.otherGates, playable, memory, region);
    default:
      return silenceMessage(playable.silence[region]);
  }
}

function keyMessage(playable: PlayableInstrument, { key }: PlayMemory, region: number): string {
  const low = playable.lowKey[region];
  const high = playable.highKey[region];
  if (low >= 0 && high >= low) return `It answers ${keysText(low, high)}, not ${keyText(key)}.`;
  if (low >= 0)
    return `Its lowest key ${keyText(low)} lies above its highest, ${keyText(high)}, so no key starts it.`;
  const starts = startText(playable, region);
  return starts === ''
    ? 'Keys are turned off for it (-1), and nothing else starts it.'
    : `It is started not by a key but by ${starts}.`;
}

function keyswitchMessage(playable: PlayableInstrument, memory: PlayMemory, region: number): string {
  const low = playable.switchLow[region];
  const high = playable.switchHigh[region];
  if (low >= 0) {
    const pressed = memory.lastSwitch[playable.switchZone[region]];
    const last = pressed >= 0 ? pressed : playable.switchDefault[region];
    if (last < low || last > high) {
      const wanted = low === high ? `the keyswitch ${keyText(low)}` : `a keyswitch of ${keysText(low, high)}`;
      const now =
        pressed >= 0
          ? `the last one pressed is ${keyText(last)}`
          : last >= 0
            ? `until one is pressed ${keyText(last)} counts`
            : 'none was pressed yet';
      return `It sounds after ${wanted}; ${now}.`;
    }
  }
  const down = playable.switchDown[region];
  if (down >= 0 && memory.keysDown[down] === 0) return `It sounds while ${keyText(down)} is held; it is not.`;
  const up = playable.switchUp[region];
  if (up >= 0 && memory.keysDown[up] === 1) return `It sounds while ${keyText(up)} is not held; it is.`;
  const before = memory.previousKey;
  const now = before < 0 ? 'there was no note before' : `the note before was ${keyText(before)}`;
  return `It sounds after the note ${keyText(playable.previousKey[region])}; ${now}.`;
}

function sequenceMessage(playable: PlayableInstrument, memory: PlayMemory, region: number): string {
  const length = playable.sequenceLength[region];
  const position = playable.sequencePosition[region];
  if (position > length)
    return `It is step ${position} of a round robin of ${length}, so its turn never comes.`;
  return `It is step ${position} of ${length} in its round robin; this is step ${memory.stepsGone[playable.turn[region]] + 1}.`;
}

function triggerMessage(playable: PlayableInstrument, memory: PlayMemory, region: number): string {
  const starts = startText(playable, region);
  if (starts !== '') return `It is started not by a key but by ${starts}.`;
  switch (playable.trigger[region]) {
    case Trigger.release:
      return 'It sounds when the key is let go, or the pedal that holds the note.';
    case Trigger.releaseKey:
      return 'It sounds when the key is let go, whether or not a pedal holds the note.';
    case Trigger.first:
      if (memory.keysDownCount > 1)
        return 'It sounds for a first note, with no other key held; another one is.';
      break;
    case Trigger.legato:
      if (memory.keysDownCount <= 1) return 'It sounds for a legato note, with another key held; none is.';
      break;
  }
  return gateMessage(playable.otherGates, playable, memory, region);
}

/** What starts a region in place of a key: `controller 64, going from 64 to 127,`; empty where nothing does. */
function startText({ startGates }: PlayableInstrument, region: number): string {
  const starts: string[] = [];
  for (let gate = startGates.start[region]; gate < startGates.start[region + 1]; gate++) {
    const range = between(startGates.low[gate], startGates.high[gate]);
    starts.push(`controller ${startGates.subject[gate]} when it reaches ${range}`);
  }
  return starts.join(' or ');
}

function gateMessage(
  gates: GateTable,
  playable: PlayableInstrument,
  memory: PlayMemory,
  region: number,
): string {
  const gate = failingGate(gates, memory, region, playable.group[region]);
  const subject = gates.subject[gate];
  const value = gateValue(memory, subject, playable.group[region]);
  const [low, high] = [gates.low[gate], gates.high[gate]];
  const range = between(low, high);
  switch (subject) {
    case GateSubject.channel:
      return `It answers MIDI channel ${range}; the note is on ${value}.`;
    case GateSubject.program:
      return `It sounds under program ${range}; it is ${value}.`;
    case GateSubject.tempo:
      return `It sounds at a tempo from ${decimal(low)} to below ${decimal(high)}; it is ${decimal(value)}.`;
    case GateSubject.timer:
      return `It sounds if its group last started ${secondsText(low, high)} before; ${value === Number.POSITIVE_INFINITY ? 'it has not started yet' : `that was ${decimal(value)} s ago`}.`;
    case GateSubject.bend:
      return `It sounds with the pitch wheel at ${range}; it is at ${decimal(value)}.`;
    case GateSubject.channelPressure:
      return `It sounds at a channel aftertouch of ${range}; it is ${decimal(value)}.`;
    case GateSubject.polyPressure:
      return `It sounds at a key aftertouch of ${range}; it is ${decimal(value)}.`;
    default:
      return `It sounds with controller ${subject} at ${range}; it is at ${decimal(value)}.`;
  }
}

function silenceMessage(silence: number): string {
  switch (silence) {
    case Silence.noSample:
      return 'No sample is set for it.';
    case Silence.sampleMissing:
      return 'Its sample file is missing.';
    case Silence.sampleUnreadable:
      return 'Its sample cannot be read as audio.';
    default:
      return 'Its end is below 0, which turns its sound off; it can still silence others.';
  }
}

function secondsText(low: number, high: number): string {
  if (high === Number.POSITIVE_INFINITY) return `${decimal(low)} s or more`;
  return low <= 0 ? `${decimal(high)} s or less` : `${decimal(low)} to ${decimal(high)} s`;
}

function between(low: number, high: number): string {
  return low === high ? decimal(low) : `${decimal(low)} to ${decimal(high)}`;
}

/** A number with three decimals at the most. */
function decimal(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
