import type { GateTable } from '../playable/gateTable';
import { GateSubject } from '../playable/gateTable';
import type { PlayableInstrument } from '../playable/playableInstrument';
import { ConditionMark, Silence, Trigger } from '../playable/playableInstrument';
import type { PlayMemory } from './playMemory';

/** Why a region stays silent, in the order in which the reasons are looked at. */
export const silentReasons = [
  'key',
  'velocity',
  'keyswitch',
  'controller',
  'sequence',
  'random',
  'trigger',
  'bend',
  'pressure',
  'sample',
  'off',
] as const;

export type SilentReason = (typeof silentReasons)[number];

/** What starts regions: a struck key, one that is let go, or a controller. */
export type StartedBy = 'strike' | 'release' | 'controller';

/** The first reason why what the memory has turned to leaves a region silent; `undefined` where it sounds. */
export function silentReason(
  playable: PlayableInstrument,
  memory: PlayMemory,
  region: number,
  by: StartedBy,
): SilentReason | undefined {
  const { key, velocity } = memory;
  const hasKey = by !== 'controller';
  if (hasKey && (key < playable.lowKey[region] || key > playable.highKey[region])) return 'key';
  if (hasKey && (velocity < playable.lowVelocity[region] || velocity > playable.highVelocity[region]))
    return 'velocity';
  return (
    unmetBeforeTurn(playable, memory, region) ??
    (isItsTurn(playable, memory, region) ? undefined : 'sequence') ??
    (isItsChance(playable, memory, region) ? undefined : 'random') ??
    (isTrigger(playable, memory, region, by) ? undefined : 'trigger') ??
    unmetAfterTrigger(playable, memory, region) ??
    silenceReason(playable.silence[region])
  );
}

function isTrigger(playable: PlayableInstrument, memory: PlayMemory, region: number, by: StartedBy): boolean {
  if (by === 'strike') return isPressTrigger(playable, memory, region);
  if (by === 'release') return playable.releasesOnly[region] === 1;
  return playable.startGates.start[region] < playable.startGates.start[region + 1];
}

/** What keyswitches, controllers, channel and program have against a region. */
function unmetBeforeTurn(
  playable: PlayableInstrument,
  memory: PlayMemory,
  region: number,
): 'keyswitch' | 'controller' | undefined {
  if (!switchesHold(playable, memory, region)) return 'keyswitch';
  return failingGate(playable.controllerGates, memory, region, playable.group[region]) < 0
    ? undefined
    : 'controller';
}

function switchesHold(playable: PlayableInstrument, memory: PlayMemory, region: number): boolean {
  const low = playable.switchLow[region];
  if (low >= 0) {
    const pressed = memory.lastSwitch[playable.switchZone[region]];
    const last = pressed >= 0 ? pressed : playable.switchDefault[region];
    if (last < low || last > playable.switchHigh[region]) return false;
  }
  const down = playable.switchDown[region];
  if (down >= 0 && memory.keysDown[down] === 0) return false;
  const up = playable.switchUp[region];
  if (up >= 0 && memory.keysDown[up] === 1) return false;
  const previous = playable.previousKey[region];
  return previous < 0 || memory.previousKey === previous;
}

/** Whether the step of its round robin that comes next is the region's. */
function isItsTurn(playable: PlayableInstrument, memory: PlayMemory, region: number): boolean {
  return memory.stepsGone[playable.turn[region]] === playable.sequencePosition[region] - 1;
}

/** Whether the random number of the strike lies in the region's part. */
export function isItsChance(playable: PlayableInstrument, { random }: PlayMemory, region: number): boolean {
  const high = playable.highRandom[region];
  return random >= playable.lowRandom[region] && (random < high || high >= 1);
}

/** Whether pressing a key, others being held or not, starts the region. */
export function isPressTrigger(playable: PlayableInstrument, memory: PlayMemory, region: number): boolean {
  if (playable.startGates.start[region] !== playable.startGates.start[region + 1]) return false;
  switch (playable.trigger[region]) {
    case Trigger.attack:
      return true;
    case Trigger.first:
      return memory.keysDownCount <= 1;
    case Trigger.legato:
      return memory.keysDownCount > 1;
    default:
      return false;
  }
}

/** What tempo, timer, bend and pressure have against a region. */
function unmetAfterTrigger(
  playable: PlayableInstrument,
  memory: PlayMemory,
  region: number,
): 'trigger' | 'bend' | 'pressure' | undefined {
  const gate = failingGate(playable.otherGates, memory, region, playable.group[region]);
  if (gate < 0) return undefined;
  const subject = playable.otherGates.subject[gate];
  if (subject === GateSubject.bend) return 'bend';
  return subject === GateSubject.tempo || subject === GateSubject.timer ? 'trigger' : 'pressure';
}

/** Whether the keyswitches of a region, if it has any, are met. */
export function meetsSwitches(playable: PlayableInstrument, memory: PlayMemory, region: number): boolean {
  return (
    (playable.conditions[region] & ConditionMark.keyswitch) === 0 || switchesHold(playable, memory, region)
  );
}

/** Whether nothing besides key, velocity, trigger, chance and round robin keeps a region silent. */
export function meetsConditions(playable: PlayableInstrument, memory: PlayMemory, region: number): boolean {
  const marks = playable.conditions[region];
  if (marks === 0) return true;
  const { controllerGates, otherGates, group } = playable;
  return (
    meetsSwitches(playable, memory, region) &&
    ((marks & ConditionMark.controller) === 0 ||
      failingGate(controllerGates, memory, region, group[region]) < 0) &&
    ((marks & ConditionMark.other) === 0 || failingGate(otherGates, memory, region, group[region]) < 0)
  );
}

/** The first range of a region that the present value lies outside of, as its position in the table, or −1. */
export function failingGate(gates: GateTable, memory: PlayMemory, region: number, group: number): number {
  const end = gates.start[region + 1];
  for (let gate = gates.start[region]; gate < end; gate++) {
    const subject = gates.subject[gate];
    const value = gateValue(memory, subject, group);
    const high = gates.high[gate];
    if (value < gates.low[gate] || value > high || (value === high && subject === GateSubject.tempo))
      return gate;
  }
  return -1;
}

/** The present value of what a range looks at. */
export function gateValue(memory: PlayMemory, subject: number, group: number): number {
  if (subject < GateSubject.channel) return memory.controllers[subject] ?? 0;
  switch (subject) {
    case GateSubject.channel:
      return memory.channel;
    case GateSubject.program:
      return memory.program;
    case GateSubject.tempo:
      return memory.tempoBpm;
    case GateSubject.timer:
      return memory.seconds - (memory.groupStartSeconds.get(group) ?? Number.NEGATIVE_INFINITY);
    case GateSubject.bend:
      return memory.bend;
    case GateSubject.channelPressure:
      return memory.channelPressure;
    default:
      return memory.polyPressure[memory.key];
  }
}

/** The reason that a region's {@link Silence} stands for. */
function silenceReason(silence: number): 'sample' | 'off' | undefined {
  if (silence === Silence.none) return undefined;
  return silence === Silence.off ? 'off' : 'sample';
}
