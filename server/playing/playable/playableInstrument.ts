import type { SampleLookup } from '../../model/samples';
import type { GateTable } from './gateTable';
import type { KeyIndex } from './keyIndex';
import type { Asked, PressIndex } from './pressIndex';

/** What starts a region; the positions of the words of `trigger`. */
export const Trigger = { attack: 0, release: 1, first: 2, legato: 3, releaseKey: 4 } as const;

/** The words of `trigger`; their positions are those of {@link Trigger}. */
export const triggerWords = ['attack', 'release', 'first', 'legato', 'release_key'] as const;

/** `loop_mode`; `unset` is `loop_continuous` where the sample file has a loop, else `no_loop`. */
export const LoopMode = { noLoop: 0, oneShot: 1, loopContinuous: 2, loopSustain: 3, unset: 4 } as const;

/** `off_mode`: how a region ends when another one silences it. */
export const OffMode = { fast: 0, normal: 1, time: 2 } as const;

/** Why a region never makes a sound, whatever is played. */
export const Silence = {
  none: 0,
  /** No sample is set. */
  noSample: 1,
  /** Its sample is not there. */
  sampleMissing: 2,
  /** Its sample is there and is no audio that can be read. */
  sampleUnreadable: 3,
  /** `end=-1`. */
  off: 4,
} as const;

/** Kinds of conditions, as bits, so that a region without one costs no more than a look. */
export const ConditionMark = { keyswitch: 1, controller: 2, random: 4, other: 8 } as const;

/** How the pedals work for some regions. */
export interface PedalSetting {
  /** Numbers of the controllers, and the least values at which they count as down; `Infinity` where the pedal is not followed. */
  sustainController: number;
  sustainFrom: number;
  sostenutoController: number;
  sostenutoFrom: number;
}

/** Voices that `polyphony` counts together: those of a group number, or those of regions under the header that sets it. */
export interface PolyphonyScope {
  regions: 'group' | 'header';
  /** The group number, or the header of the instrument. */
  number: number;
}

/** Stages of the decay of release regions, those of region r at `start[r]`..`start[r + 1] − 1`, in the order of time. */
export interface DecayStages {
  start: Int32Array;
  /** dB for each second of the stage. */
  decayDb: Float64Array;
  /** Seconds of holding at which the stage ends; the last one goes on. */
  endSeconds: Float64Array;
}

/** Controllers that add to a value, those of region r at `start[r]`..`start[r + 1] − 1`. */
export interface ControllerDepths {
  start: Int32Array;
  controller: Int32Array;
  /** What is added with the controller fully up. */
  depth: Float64Array;
}

/**
 * What decides when the regions of an instrument sound and end, as plain data that a worker can be sent as it is. All
 * lists have an entry a region, in the order of `Instrument.regions`, unless they say otherwise.
 */
export interface PlayableInstrument extends Asked {
  regionCount: number;
  /** The region's header in the instrument. */
  header: Int32Array;

  /** Root key, 0..127. */
  rootKey: Int16Array;
  /** Which of the conditions a region has: the sum of its {@link ConditionMark}. */
  conditions: Uint8Array;
  /** Ranges of controllers that start the region on being entered, and that stop it. */
  startGates: GateTable;
  stopGates: GateTable;

  /** `off_by`, 0 where not set. */
  offBy: Int32Array;
  /** 1 where some region is silenced by the region's group. */
  silencesOthers: Uint8Array;
  /** {@link OffMode}. */
  offMode: Uint8Array;
  offTimeSeconds: Float64Array;
  /** Most voices, 0 for no bound. */
  polyphony: Int32Array;
  /** The position in {@link polyphonyScopes}, −1 for regions that no `polyphony` counts. */
  polyphonyScope: Int32Array;
  polyphonyScopes: PolyphonyScope[];
  notePolyphony: Int32Array;
  /** 1 where only notes of equal or lower velocity are ended by `note_polyphony`. */
  isSelfMasking: Uint8Array;

  /** {@link LoopMode} as written; a `count` makes it `one_shot`. */
  loopMode: Uint8Array;
  /** 1 where the note being let go does not end the region. */
  ignoresNoteOff: Uint8Array;
  /** 1 where the region sounds when a key is let go. */
  releasesOnly: Uint8Array;
  /** 1 where a release region also plays when its note has died away. */
  playsDead: Uint8Array;
  /** dB that each second of holding takes from a release region, and stages with decays of their own (`rt_decayN`). */
  releaseDecayDb: Float64Array;
  releaseStages: DecayStages;
  /** 1 where the sound takes the velocity of the note before. */
  usesPreviousVelocity: Uint8Array;
  delaySeconds: Float64Array;
  delayRandomSeconds: Float64Array;
  delayControllers: ControllerDepths;
  /** {@link Silence}. */
  silence: Uint8Array;

  /** The position in {@link pedals}. */
  pedal: Uint16Array;
  pedals: PedalSetting[];
  /** Values that controllers have at first, by number; see `PlayState.controllers`. */
  firstControllers: Float64Array;
  /** Regions that a pressed key can start, by key; those that a released one can. */
  pressed: PressIndex;
  released: KeyIndex;
  /** What the region counts the steps of its round robin by: a number below that of the regions, the same for those that count together. */
  turn: Int32Array;
}

/** What is known of samples when an instrument is made playable. */
export interface PlayableOptions {
  /** Tells which samples are missing or cannot be read; without it all count as there. */
  samples?: Pick<SampleLookup, 'state'>;
}
