import { GateSubject } from '../playable/gateTable';
import type { PlayableInstrument } from '../playable/playableInstrument';
import { Trigger } from '../playable/playableInstrument';
import { defaultTempoBpm, noteControllers } from '../playingChoices';
import type { PlayedNote, PlayedState } from './playedNote';
import { usualTimes } from './playedNote';

/** A range of values, both ends included. */
interface Span {
  low: number;
  high: number;
}

/** Strikes after which a region that chance lets sound has sounded nearly surely, by the width of its part. */
const strikesOfChance = 30;
const mostStrikes = 5000;

/**
 * A note that lets a region sound where one does: its key, velocity, controllers and switches are ones that the region asks
 * for, as near as can be to what is there anyway. Where conditions exclude one another it is a note that lets it stay silent.
 */
export function noteFor(playable: PlayableInstrument, region: number): PlayedNote {
  const spans = spansOf(playable, region);
  const keys = keySpan(playable, region, spans);
  const key = chooseKey(playable, region, keys);
  const velocities = meet(
    { low: playable.lowVelocity[region], high: playable.highVelocity[region] },
    spans.get(noteControllers.velocity),
  );
  const velocity = wholeWithin({ low: Math.max(1, velocities.low), high: Math.min(127, velocities.high) });
  return {
    ...midiState(spans),
    ...pressureState(spans),
    ...switchState(playable, region, isStartedByController(playable, region) ? -1 : key),
    ...timeState(playable, region, spans),
    controllers: controllerValues(playable, region, spans),
    key,
    velocity: Math.max(1, Math.min(127, velocity)),
    ...(isStartedByController(playable, region) && { by: controllerMove(playable, region, spans) }),
  };
}

/** How often a note is to be played at the most until a region has sounded: its round robin comes round, chance has come up. */
export function strikesFor(playable: PlayableInstrument, region: number): number {
  const length = playable.sequenceLength[region];
  const share = Math.min(1, playable.highRandom[region]) - Math.max(0, playable.lowRandom[region]);
  if (playable.sequencePosition[region] > length || share <= 0) return 1;
  const chance = share >= 1 ? 1 : strikesOfChance / share;
  // One more than a round: another region may have moved the counter.
  return Math.min(mostStrikes, Math.ceil((length + 1) * chance));
}

/** By subject what all ranges of a region leave. */
function spansOf({ controllerGates, otherGates }: PlayableInstrument, region: number): Map<number, Span> {
  const spans = new Map<number, Span>();
  for (const gates of [controllerGates, otherGates]) {
    for (let gate = gates.start[region]; gate < gates.start[region + 1]; gate++) {
      const span = { low: gates.low[gate], high: gates.high[gate] };
      spans.set(gates.subject[gate], meet(span, spans.get(gates.subject[gate])));
    }
  }
  return spans;
}

function meet(one: Span, other: Span | undefined): Span {
  return other ? { low: Math.max(one.low, other.low), high: Math.min(one.high, other.high) } : one;
}

/** The value within a span that is nearest to one; a whole one where there is one. */
function nearest({ low, high }: Span, value: number): number {
  if (value >= low && value <= high) return value;
  if (value > high) return Math.floor(high) >= low ? Math.floor(high) : high;
  return Math.ceil(low) <= high ? Math.ceil(low) : low;
}

function wholeWithin({ low, high }: Span): number {
  return Math.max(Math.ceil(low), Math.min(Math.floor(high), Math.round((low + high) / 2)));
}

function keySpan(playable: PlayableInstrument, region: number, spans: ReadonlyMap<number, Span>): Span {
  return meet(
    { low: playable.lowKey[region], high: playable.highKey[region] },
    spans.get(noteControllers.key),
  );
}

/** The key nearest to the root key that does not undo a switch of the region; else the nearest. */
function chooseKey(playable: PlayableInstrument, region: number, { low, high }: Span): number {
  const root = Math.max(0, Math.min(127, nearest({ low, high }, playable.rootKey[region])));
  const down = playable.switchDown[region];
  // A first note has no other key down, so the key that must be held is the one to strike.
  const isHeldItself = playable.trigger[region] === Trigger.first && down >= low && down <= high;
  if (isHeldItself && !undoesSwitch(playable, region, down)) return down;
  for (let away = 0; away < 128; away++) {
    for (const key of [root - away, root + away]) {
      if (key >= low && key <= high && key >= 0 && !undoesSwitch(playable, region, key)) return key;
    }
  }
  return root;
}

/** Whether pressing a key would be the wrong switch for a region. */
function undoesSwitch(playable: PlayableInstrument, region: number, key: number): boolean {
  if (playable.switchUp[region] === key) return true;
  const low = playable.switchLow[region];
  if (low < 0 || (key >= low && key <= playable.switchHigh[region])) return false;
  return playable.switchZones[playable.switchZone[region] * 128 + key] === 1;
}

function midiState(spans: ReadonlyMap<number, Span>): PlayedState {
  const channel = spans.get(GateSubject.channel);
  const program = spans.get(GateSubject.program);
  const tempo = spans.get(GateSubject.tempo);
  return {
    ...(channel && { channel: nearest(channel, 1) }),
    ...(program && { program: nearest(program, 0) }),
    ...(tempo && {
      tempoBpm:
        tempo.high <= defaultTempoBpm ? (tempo.low + tempo.high) / 2 : nearest(tempo, defaultTempoBpm),
    }),
  };
}

function pressureState(spans: ReadonlyMap<number, Span>): PlayedState {
  const bend = spans.get(GateSubject.bend) ?? bendOfController(spans.get(noteControllers.bend));
  const channel = spans.get(GateSubject.channelPressure) ?? spans.get(noteControllers.channelPressure);
  const poly = spans.get(GateSubject.polyPressure) ?? spans.get(noteControllers.polyPressure);
  return {
    ...(bend && { bend: nearest(bend, 0) }),
    ...(channel && { channelPressure: nearest(channel, 0) }),
    ...(poly && { polyPressure: nearest(poly, 0) }),
  };
}

function bendOfController(span: Span | undefined): Span | undefined {
  const bend = (value: number) => (value * 16383) / 127 - 8192;
  return span && { low: bend(span.low), high: bend(span.high) };
}

function switchState(playable: PlayableInstrument, region: number, key: number): PlayedState {
  const down = playable.switchDown[region];
  const isLegato = playable.trigger[region] === Trigger.legato;
  const held = down >= 0 && down !== key ? [down] : [];
  if (isLegato && held.length === 0) held.push(helperKey(playable, region, key));
  const keyswitch = pressableSwitch(playable, region, key);
  const previous = playable.previousKey[region];
  return {
    ...(held.length > 0 && { heldKeys: held }),
    ...(keyswitch >= 0 && !held.includes(keyswitch) && { keyswitch }),
    ...(previous >= 0 && { previousKey: previous }),
  };
}

/** A key to hold that neither is the one to strike nor must be up. */
function helperKey(playable: PlayableInstrument, region: number, key: number): number {
  const isFree = (other: number) => other !== key && other !== playable.switchUp[region];
  return (
    [key - 1, key + 1, key - 2, key + 2].find((other) => other >= 0 && other <= 127 && isFree(other)) ?? -1
  );
}

/** The keyswitch to press for a region, −1 where none has to or can be. */
function pressableSwitch(playable: PlayableInstrument, region: number, key: number): number {
  const low = playable.switchLow[region];
  if (low < 0) return -1;
  const zone = playable.switchZone[region] * 128;
  for (let one = low; one <= playable.switchHigh[region]; one++) {
    if (playable.switchZones[zone + one] === 1) return one === key ? -1 : one;
  }
  return -1;
}

function timeState(
  playable: PlayableInstrument,
  region: number,
  spans: ReadonlyMap<number, Span>,
): Partial<PlayedNote> {
  const timer = spans.get(GateSubject.timer);
  if (!timer) return {};
  if (timer.high === Number.POSITIVE_INFINITY)
    return { everySeconds: Math.max(usualTimes.everySeconds, timer.low * 1.5 + usualTimes.holdSeconds) };
  // The group has to have started a little before: another of its regions is played right before each strike.
  const other = groupNeighbour(playable, region);
  const between = (Math.max(0, timer.low) + timer.high) / 2;
  return {
    ...(other >= 0 && playable.previousKey[region] < 0 && { previousKey: other }),
    everySeconds: between * 2,
    holdSeconds: between / 2,
  };
}

/** A key that starts another region of the group, one without a timer. */
function groupNeighbour(playable: PlayableInstrument, region: number): number {
  const { group, otherGates, pressed, lowKey, rootKey } = playable;
  for (const other of pressed.regions) {
    const isOther = other !== region && group[other] === group[region];
    if (isOther && otherGates.start[other] === otherGates.start[other + 1] && lowKey[other] >= 0)
      return nearest({ low: lowKey[other], high: playable.highKey[other] }, rootKey[other]);
  }
  return -1;
}

/** The controllers of MIDI that have to be moved for a region; pedals are up for release regions that do not ask for them. */
function controllerValues(
  playable: PlayableInstrument,
  region: number,
  spans: ReadonlyMap<number, Span>,
): { controller: number; value: number }[] {
  const values = new Map<number, number>();
  if (playable.releasesOnly[region] === 1) {
    const { sustainController, sostenutoController } = playable.pedals[playable.pedal[region]];
    values.set(sustainController, 0).set(sostenutoController, 0);
  }
  for (const [controller, span] of spans) {
    if (controller >= noteControllers.bend) continue;
    values.set(controller, nearest(span, values.get(controller) ?? playable.firstControllers[controller]));
  }
  return [...values]
    .filter(([controller, value]) => value !== playable.firstControllers[controller])
    .map(([controller, value]) => ({ controller, value }));
}

/** Whether a controller is what starts a region; where its range cannot be entered a release still may. */
function isStartedByController({ startGates, releasesOnly }: PlayableInstrument, region: number): boolean {
  const gate = startGates.start[region];
  if (gate === startGates.start[region + 1]) return false;
  return releasesOnly[region] === 0 || startGates.low[gate] > 0 || startGates.high[gate] < 127;
}

/** The move of the controller that starts a region, from a value outside its range to one inside; the same value twice where there is none outside. */
function controllerMove(
  { startGates }: PlayableInstrument,
  region: number,
  spans: ReadonlyMap<number, Span>,
): { controller: number; from: number; to: number } {
  const gate = startGates.start[region];
  const controller = startGates.subject[gate];
  const span = { low: startGates.low[gate], high: startGates.high[gate] };
  const both = meet(span, spans.get(controller));
  const to = nearest(both.low <= both.high ? both : span, 0);
  if (span.low > 0) return { controller, from: Math.max(0, Math.ceil(span.low) - 1), to };
  return { controller, from: span.high < 127 ? Math.floor(span.high) + 1 : to, to };
}
