import { keysOff } from '../../model/inForce/headerRanges';
import type { Instrument } from '../../model/instrument';
import { controllerCount } from '../player/playState';
import { filled } from './filled';
import { indexByKey } from './keyIndex';
import type {
  ControllerDepths,
  DecayStages,
  PlayableInstrument,
  PlayableOptions,
} from './playableInstrument';
import { ConditionMark, LoopMode, OffMode, Trigger, triggerWords } from './playableInstrument';
import { type Asked, indexPressed } from './pressIndex';
import { readFirstControllers } from './readFirstControllers';
import type { RegionGates } from './readGates';
import { readGates } from './readGates';
import { readPedals } from './readPedals';
import { readPolyphony } from './readPolyphony';
import { readSilence } from './readSilence';
import type { RegionSwitches } from './readSwitches';
import { readSwitches } from './readSwitches';
import { RegionLists } from './regionLists';
import { ValuesInForce } from './valuesInForce';

const loopModes = ['no_loop', 'one_shot', 'loop_continuous', 'loop_sustain'];
const offModes = ['fast', 'normal', 'time'];

/** Seconds of the fade of `off_mode=time` where `off_time` does not say (public documentation of the open SFZ format). */
const defaultOffTimeSeconds = 0.006;

/** Takes from an instrument what decides when its regions sound and end; values that make no sense count as not set. */
export function playableInstrument(
  instrument: Instrument,
  options: PlayableOptions = {},
): PlayableInstrument {
  const values = new ValuesInForce(instrument);
  const { regions } = instrument;
  const count = regions.length;
  const whole = (name: string) => values.numbers(name, new Int32Array(count), 0);
  const real = (name: string, without: number) => values.numbers(name, new Float64Array(count), without);
  const word = (name: string, words: readonly string[], without: number) =>
    values.words(name, words, new Uint8Array(count), without);
  const group = whole('group');
  const offBy = whole('off_by');
  const trigger = word('trigger', triggerWords, Trigger.attack);
  const gates = readGates(values);
  const loopMode = readLoopMode(values);
  const switches = readSwitches(values);
  const random = { lowRandom: real('lorand', 0), highRandom: real('hirand', 1) };
  const steps = {
    sequenceLength: stepColumn(values, 'seq_length'),
    sequencePosition: stepColumn(values, 'seq_position'),
  };
  const ranges = readRanges(instrument);
  return {
    regionCount: count,
    header: regions.slice(),
    ...ranges,
    rootKey: filled(new Int16Array(count), (at) => instrument.rootKey(regions[at])),
    trigger,
    conditions: conditionColumn(switches, gates, random),
    ...switches,
    ...steps,
    ...random,
    controllerGates: gates.controllers,
    otherGates: gates.others,
    startGates: gates.starts,
    stopGates: gates.stops,
    group,
    offBy,
    silencesOthers: silencing(group, offBy),
    offMode: word('off_mode', offModes, OffMode.fast),
    offTimeSeconds: real('off_time', defaultOffTimeSeconds),
    ...readPolyphony(values, group),
    notePolyphony: whole('note_polyphony'),
    isSelfMasking: word('note_selfmask', ['off', 'on'], 1),
    loopMode,
    ...readReleases(values, trigger, loopMode),
    usesPreviousVelocity: word('sw_vel', ['current', 'previous'], 0),
    ...readDelays(values),
    silence: readSilence(values, options),
    ...readPedals(values),
    firstControllers: readFirstControllers(values),
    ...indexRegions(gates, { trigger, group, ...switches, ...steps, ...random, ...ranges }),
  };
}

/** The keys and velocities of regions; a region that no key starts has none. */
function readRanges({
  regions,
  lowKey,
  highKey,
  lowVelocity,
  highVelocity,
}: Instrument): Pick<PlayableInstrument, 'lowKey' | 'highKey' | 'lowVelocity' | 'highVelocity'> {
  const count = regions.length;
  const keyOf = (ends: Int16Array) => (at: number) =>
    lowKey[regions[at]] >= 0 && highKey[regions[at]] >= 0 ? ends[regions[at]] : keysOff;
  return {
    lowKey: filled(new Int16Array(count), keyOf(lowKey)),
    highKey: filled(new Int16Array(count), keyOf(highKey)),
    lowVelocity: filled(new Float64Array(count), (at) => lowVelocity[regions[at]]),
    highVelocity: filled(new Float64Array(count), (at) => highVelocity[regions[at]]),
  };
}

/** What becomes of regions when a key is let go. */
function readReleases(
  values: ValuesInForce,
  trigger: Uint8Array,
  loopMode: Uint8Array,
): Pick<
  PlayableInstrument,
  'ignoresNoteOff' | 'releasesOnly' | 'playsDead' | 'releaseDecayDb' | 'releaseStages'
> {
  const count = trigger.length;
  return {
    ignoresNoteOff: loopMode.map((mode, at) => (mode === LoopMode.oneShot || isRelease(trigger[at]) ? 1 : 0)),
    releasesOnly: trigger.map((one) => (isRelease(one) ? 1 : 0)),
    playsDead: values.words('rt_dead', ['off', 'on'], new Uint8Array(count), 0),
    releaseDecayDb: values.numbers('rt_decay', new Float64Array(count), 0),
    releaseStages: readReleaseStages(values),
  };
}

/** How long regions wait before they sound. */
function readDelays(
  values: ValuesInForce,
): Pick<PlayableInstrument, 'delaySeconds' | 'delayRandomSeconds' | 'delayControllers'> {
  const seconds = () => new Float64Array(values.instrument.regions.length);
  return {
    delaySeconds: values.numbers('delay', seconds(), 0),
    delayRandomSeconds: values.numbers('delay_random', seconds(), 0),
    delayControllers: readDelayControllers(values),
  };
}

/** Whether a region sounds when a key is let go. */
function isRelease(trigger: number | undefined): boolean {
  return trigger === Trigger.release || trigger === Trigger.releaseKey;
}

function conditionColumn(
  { switchLow, switchDown, switchUp, previousKey }: RegionSwitches,
  { controllers, others }: RegionGates,
  { lowRandom, highRandom }: Pick<PlayableInstrument, 'lowRandom' | 'highRandom'>,
): Uint8Array {
  const marks = new Uint8Array(switchLow.length);
  for (let region = 0; region < marks.length; region++) {
    const hasSwitch =
      switchLow[region] >= 0 || switchDown[region] >= 0 || switchUp[region] >= 0 || previousKey[region] >= 0;
    marks[region] =
      (hasSwitch ? ConditionMark.keyswitch : 0) |
      (controllers.start[region] < controllers.start[region + 1] ? ConditionMark.controller : 0) |
      (lowRandom[region] > 0 || highRandom[region] < 1 ? ConditionMark.random : 0) |
      (others.start[region] < others.start[region + 1] ? ConditionMark.other : 0);
  }
  return marks;
}

function silencing(group: Int32Array, offBy: Int32Array): Uint8Array {
  const groups = new Set(offBy);
  return filled(new Uint8Array(group.length), (at) => (group[at] !== 0 && groups.has(group[at]) ? 1 : 0));
}

function indexRegions(
  { starts, controllers, others }: RegionGates,
  asked: Omit<Asked, 'controllerGates' | 'otherGates'>,
): Pick<PlayableInstrument, 'pressed' | 'released' | 'turn'> {
  const { trigger, lowKey, highKey } = asked;
  const pressed: number[] = [];
  const released: number[] = [];
  for (let region = 0; region < trigger.length; region++) {
    if (isRelease(trigger[region])) released.push(region);
    else if (starts.start[region] === starts.start[region + 1]) pressed.push(region);
  }
  return {
    ...indexPressed(pressed, { ...asked, controllerGates: controllers, otherGates: others }),
    released: indexByKey(released, lowKey, highKey),
  };
}

/** Steps of round robins: whole numbers from 1. */
function stepColumn(values: ValuesInForce, name: string): Uint16Array {
  const steps = values.numbers(name, new Float64Array(values.instrument.regions.length), 1);
  return filled(new Uint16Array(steps.length), (at) =>
    steps[at] >= 1 ? Math.min(65535, Math.floor(steps[at])) : 1,
  );
}

/** `count` plays the sample that many times whatever the key does, as `one_shot` does. */
function readLoopMode(values: ValuesInForce): Uint8Array {
  const count = values.instrument.regions.length;
  const modes = values.words('loop_mode', loopModes, new Uint8Array(count), LoopMode.unset);
  const counts = values.numbers('count', new Float64Array(count), 0);
  return modes.map((mode, at) => (counts[at] > 0 ? LoopMode.oneShot : mode));
}

/** Stages of `rt_decayN`, each up to its `rt_decayN_time`. */
function readReleaseStages(values: ValuesInForce): DecayStages {
  const lists = new RegionLists<{ decayDb: number; endSeconds: number }>();
  const count = values.instrument.regions.length;
  const { names } = values.instrument;
  const stages: number[] = [];
  for (const name of values.namesUsed()) {
    const stage = /^rt_decay(\d+)$/.exec(names.text(name));
    if (stage) stages.push(Number(stage[1]));
  }
  for (const stage of stages.sort((a, b) => a - b)) {
    const decay = values.numbers(`rt_decay${stage}`, new Float64Array(count), Number.NaN);
    const end = values.numbers(`rt_decay${stage}_time`, new Float64Array(count), Number.POSITIVE_INFINITY);
    for (let region = 0; region < count; region++) {
      const decayDb = decay[region];
      if (!Number.isNaN(decayDb)) lists.add(region, { decayDb, endSeconds: end[region] });
    }
  }
  const { start, items } = lists.finish(count);
  return {
    start,
    decayDb: Float64Array.from(items, ({ decayDb }) => decayDb),
    endSeconds: Float64Array.from(items, ({ endSeconds }) => endSeconds),
  };
}

function readDelayControllers(values: ValuesInForce): ControllerDepths {
  const lists = new RegionLists<{ controller: number; depth: number }>();
  const count = values.instrument.regions.length;
  for (const name of values.namesUsed()) {
    const text = values.instrument.names.text(name);
    const controller = Number(/^delay_cc(\d+)$/.exec(text)?.[1] ?? controllerCount);
    if (controller >= controllerCount) continue;
    const depths = values.numbers(text, new Float64Array(count), 0);
    for (const [region, depth] of depths.entries()) if (depth !== 0) lists.add(region, { controller, depth });
  }
  const { start, items } = lists.finish(count);
  return {
    start,
    controller: Int32Array.from(items, ({ controller }) => controller),
    depth: Float64Array.from(items, ({ depth }) => depth),
  };
}
