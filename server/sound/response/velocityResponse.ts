import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import { createPlayer } from '../../playing/player/createPlayer';
import type { PlayState } from '../../playing/player/playState';
import type { SoundProgram } from '../program/program';
import { Slot } from '../program/slots';
import { fadeGain, velocityCurveGain, velocityGain } from '../voice/gains';
import { VoiceValues } from '../voice/voiceValues';

/** What sounds at a velocity, and how loudly. */
export interface VelocityResponse {
  velocity: number;
  /** The powers of all regions together in dB; −Infinity for silence. */
  levelDb: number;
  /** Positions among the regions. */
  regions: number[];
}

/**
 * What a note's level does from velocity 1 to 127 on a key as an instrument is at first: the regions that each velocity
 * starts, with their velocity curves, gains, movements and crossfades. `sampleDb` is the level of a region's sample.
 */
export function velocityResponse(
  playable: PlayableInstrument,
  program: SoundProgram,
  key: number,
  sampleDb: (region: number) => number,
): VelocityResponse[] {
  const player = createPlayer(playable);
  const values = new VoiceValues(program.slotCount, program.curves);
  return Array.from({ length: 127 }, (_, at) => {
    const velocity = at + 1;
    const regions: number[] = [];
    player.lookAt({ key, velocity, timeSeconds: 0 }, (region, reason) => {
      if (reason === undefined) regions.push(region);
    });
    let power = 0;
    for (const region of regions) {
      const gain = noteGain(program, values, region, { key, velocity }, player.state);
      power += gain ** 2 * 10 ** (sampleDb(region) / 10);
    }
    return { velocity, levelDb: 10 * Math.log10(power), regions };
  });
}

/** The gain of a region's voice as it starts, its envelope and place in the stereo field aside. */
function noteGain(
  program: SoundProgram,
  values: VoiceValues,
  region: number,
  { key, velocity }: { key: number; velocity: number },
  state: PlayState,
): number {
  const recipe = program.recipes[program.recipe[region]];
  values.begin(recipe, { key, velocity, randomSeed: 0 }, state);
  const { now } = values;
  const curve = velocityCurveGain(velocity, recipe.velocityCurve);
  let gain = 10 ** ((program.volumeDb[region] + now[Slot.volume]) / 20) * now[Slot.amplitude];
  gain *= velocityGain(curve, now[Slot.amp_veltrack]);
  for (const fade of recipe.fades) {
    const subject =
      fade.subject >= 0 ? state.controllers[fade.subject] : fade.subject === -1 ? key : velocity;
    gain *= fadeGain(fade, subject);
  }
  return Math.abs(gain);
}
