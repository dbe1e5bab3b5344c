import { Generator } from './generators';

/** A generator that modulators and opcodes move in the same straight line, and what the opcodes are called. */
export interface Modulation {
  generator: number;
  /** Units of the generator for one unit of the opcodes. */
  unitsPerOpcode: number;
  velocity?: string;
  /** Moves it by so much a key, from key 60 on where the opcode `center` says nothing else. */
  key?: { track: string; center: string };
  /** The name before the number of a controller. */
  controller?: string;
  pressure?: string;
  keyPressure?: string;
}

/**
 * What both formats move in a straight line. Opcodes give what is added at the greatest value; opcodes of keys what is added
 * by each. (Names: the public documentation of the SFZ format.)
 */
export const modulations: readonly Modulation[] = [
  {
    generator: Generator.filterCutoff,
    unitsPerOpcode: 1,
    velocity: 'fil_veltrack',
    key: { track: 'fil_keytrack', center: 'fil_keycenter' },
    controller: 'cutoff_cc',
    pressure: 'cutoff_chanaft',
    keyPressure: 'cutoff_polyaft',
  },
  { generator: Generator.filterResonance, unitsPerOpcode: 10, controller: 'resonance_oncc' },
  {
    generator: Generator.pan,
    unitsPerOpcode: 5,
    velocity: 'pan_veltrack',
    key: { track: 'pan_keytrack', center: 'pan_keycenter' },
    controller: 'pan_oncc',
  },
  {
    generator: Generator.fineTune,
    unitsPerOpcode: 1,
    velocity: 'pitch_veltrack',
    controller: 'pitch_oncc',
  },
  {
    generator: Generator.coarseTune,
    unitsPerOpcode: 0.01,
    velocity: 'pitch_veltrack',
    controller: 'pitch_oncc',
  },
  {
    generator: Generator.vibratoLfoToPitch,
    unitsPerOpcode: 1,
    controller: 'pitchlfo_depthcc',
    pressure: 'pitchlfo_depthchanaft',
    keyPressure: 'pitchlfo_depthpolyaft',
  },
  { generator: Generator.modulationLfoToPitch, unitsPerOpcode: 1, controller: 'lfo1_pitch_oncc' },
  {
    generator: Generator.modulationLfoToCutoff,
    unitsPerOpcode: 1,
    controller: 'fillfo_depthcc',
    pressure: 'fillfo_depthchanaft',
    keyPressure: 'fillfo_depthpolyaft',
  },
  {
    generator: Generator.modulationLfoToVolume,
    unitsPerOpcode: 10,
    controller: 'amplfo_depthcc',
    pressure: 'amplfo_depthchanaft',
    keyPressure: 'amplfo_depthpolyaft',
  },
  {
    generator: Generator.modulationEnvelopeToCutoff,
    unitsPerOpcode: 1,
    velocity: 'fileg_vel2depth',
    controller: 'fileg_depth_oncc',
  },
  {
    generator: Generator.modulationEnvelopeToPitch,
    unitsPerOpcode: 1,
    velocity: 'pitcheg_vel2depth',
    controller: 'pitcheg_depth_oncc',
  },
  {
    generator: Generator.attenuation,
    unitsPerOpcode: -10,
    key: { track: 'amp_keytrack', center: 'amp_keycenter' },
    controller: 'gain_cc',
  },
];

/** The key that tracking starts from where nothing is said. */
export const usualCenterKey = 60;

/** An envelope of SFZ and the generators of its stages. */
export interface EnvelopeStages {
  delay: number;
  attack: number;
  hold: number;
  decay: number;
  sustain: number;
  release: number;
  keyToHold: number;
  keyToDecay: number;
}

export const volumeEnvelope: EnvelopeStages = {
  delay: Generator.volumeDelay,
  attack: Generator.volumeAttack,
  hold: Generator.volumeHold,
  decay: Generator.volumeDecay,
  sustain: Generator.volumeSustain,
  release: Generator.volumeRelease,
  keyToHold: Generator.keyToVolumeHold,
  keyToDecay: Generator.keyToVolumeDecay,
};

export const modulationEnvelope: EnvelopeStages = {
  delay: Generator.modulationDelay,
  attack: Generator.modulationAttack,
  hold: Generator.modulationHold,
  decay: Generator.modulationDecay,
  sustain: Generator.modulationSustain,
  release: Generator.modulationRelease,
  keyToHold: Generator.keyToModulationHold,
  keyToDecay: Generator.keyToModulationDecay,
};
