import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { choicesTable } from '../../../server/playing/choicesTable';
import { type choice, choices } from '../../../server/sound/choices';
import { heardTable } from './heard/heardTable';

/** What shows each choice: an opcode whose test hears it, or the title of a test. */
const shown: Readonly<Record<keyof typeof choice, string>> = {
  envelopeFallDb: 'falls by 90 dB in the stated time, evenly in dB, and is then silent',
  attackCurve: 'waits for its delay, attacks in a straight line, holds, falls and stays',
  shapeFormula: 'ampeg_attack_shape',
  sustainVelocity: 'ampeg_vel2sustain',
  velocityTracking: 'amp_veltrack',
  randomLevel: 'amp_random',
  randomPitch: 'pitch_random',
  monoPan: 'pans a mono sample alike at %i',
  stereoPan: 'pans a stereo sample by turning the far side down',
  stereoOrder: 'takes width first, then position, then pan',
  balanceLaw: 'pan_law',
  position: 'moves a stereo sample alike at position %i',
  amplitudeMoves: 'amplitude_onccN',
  rootUnknown: 'takes 60 for a root key that the file does not name, and the fraction of one that it names',
  cutoffZero: 'says as JSON what was played and what is not rendered',
  lowestCutoffHz: 'keeps cutoff frequencies where filters are what they are named',
  highestCutoffShare: 'keeps cutoff frequencies where filters are what they are named',
  flatResonanceDb: 'resonance',
  steepFilters: 'fil_type',
  stateVariableFilters: 'fil_type',
  filterQuality: 'filters alike: %s',
  bandsFollow: 'eqN_dynamic',
  sampleFadeOut: 'sample_fadeout',
  firstLfoWave: 'amplfo_depth',
  lfoFade: 'lfoN_fade',
  lfoWaves: 'lfoN_wave',
  lfoAmplitude: 'lfoN_amplitude',
  lfoSteps: 'lfoN_steps',
  crossfadePower: 'xfin_loccN',
  loopCrossfade: 'loop_crossfade',
  alternateLoop: 'plays counted loops of all types to their end',
  backwardLoop: 'plays counted loops of all types to their end',
  reverseDirection: 'plays the stretch between offset and end backwards, its loop too',
  sampleCount: 'count',
  generatorPitch: '%s in tune, its harmonic %i at its level',
  generatorLevel: '*noise is white, of the level of evenly spread numbers, and the same for a seed',
  generatorSeconds: 'end by themselves where the key cannot end them',
  curveNumbers: 'numbers curves without an index on from 7',
  smoothing: 'pan_smoothccN',
  stepping: 'pan_stepccN',
  fastEndSeconds: 'off_mode=fast',
  declickSeconds: 'starts and ends within a millisecond without a step, in live quality alone',
  firstGainDb: 'starts at −12 dB, fades in over 20 ms and leaves what is quiet as it is',
  ceilingDb: 'keeps volume=60 on a noise of full scale below −1 dB true peak',
  mostRatioUp: 'plays samples of any rate at their pitch',
  controlFramesReference: 'moves what is moved in straight lines of 8 frames, of 32 in live quality',
  controlFramesLive: 'moves what is moved in straight lines of 8 frames, of 32 in live quality',
  liveArithmetic: 'sounds alike within −120 dB of full scale: %s',
  loopCrossfadeLength: 'mixes no more than there is before the loop',
};

const root = join(__dirname, '../../..');

describe('the choices where documents leave something open', () => {
  const folders = ['test/unit/sound', 'test/standards', 'test/unit/commandLine'];
  const tests = folders
    .flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.test.ts') && !name.startsWith('choices'))
        .map((name) => readFileSync(join(root, folder, name), 'utf8')),
    )
    .join('\n');
  const heard = heardTable();

  it.each(Object.entries(shown))('%s is shown by a test', (_, title) => {
    expect(Object.hasOwn(heard, title) || tests.includes(`'${title}`)).toBe(true);
  });

  it('stand in the documentation', () => {
    const rows = choices.map(({ what, value, why, source }) => ({
      about: what,
      choice: String(value),
      reason: why,
      source,
    }));
    expect(readFileSync(join(root, 'docs/choices.md'), 'utf8')).toContain(choicesTable(rows));
  });
});
