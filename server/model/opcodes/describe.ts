/** What a sentence about a modulating opcode is made from. */
export interface ModulationPhrase {
  readonly pattern: string;
  /** What is moved, as a noun phrase: `the cutoff frequency`. */
  readonly target: string;
  readonly unit?: string;
}

const unitWords: Readonly<Record<string, string>> = {
  '%': 'percent',
  '°': 'degrees',
  'sample units': 'sample frames',
  ms: 'milliseconds',
  bpm: 'beats per minute',
};

/** `, in cents` for a unit, nothing without one. */
function inUnit(unit: string | undefined): string {
  return unit ? `, in ${unitWords[unit] ?? unit}` : '';
}

/**
 * One sentence for an opcode by which a controller, aftertouch or velocity moves another, made from its name.
 * `undefined` when the name follows none of these patterns.
 */
export function describeModulation({ pattern, target, unit }: ModulationPhrase): string | undefined {
  const controller = /_?(curve|smooth|step|on)?cc([NXYZ])$/.exec(pattern);
  if (controller) {
    const number = controller[2];
    switch (controller[1]) {
      case 'curve':
        return `Number of the curve that shapes how controller ${number} moves ${target}.`;
      case 'smooth':
        return `How slowly ${target} follows controller ${number}${inUnit(unit)}; 0 follows at once.`;
      case 'step':
        return `Size of the steps in which controller ${number} moves ${target}${inUnit(unit)}; 0 moves smoothly.`;
      default:
        return `How far controller ${number}, fully up, moves ${target}${inUnit(unit)}.`;
    }
  }
  if (pattern.endsWith('chanaft')) return `How far full channel aftertouch moves ${target}${inUnit(unit)}.`;
  if (pattern.endsWith('polyaft')) return `How far full key aftertouch moves ${target}${inUnit(unit)}.`;
  if (/_vel2[a-z]+$/.test(pattern)) return `How far the highest velocity moves ${target}${inUnit(unit)}.`;
  return undefined;
}

const targets: Readonly<Record<string, string>> = {
  volume: 'the volume, in decibels',
  amplitude: 'the amplitude, in percent',
  pan: 'the pan position, in percent',
  width: 'the stereo width, in percent',
  pitch: 'the pitch, in cents',
  cutoff: 'the cutoff frequency, in cents',
  cutoff2: "the second filter's cutoff frequency, in cents",
  resonance: 'the resonance, in decibels',
  resonance2: "the second filter's resonance, in decibels",
  eqXfreq: 'the frequency of equaliser band X, in hertz',
  eqXbw: 'the bandwidth of equaliser band X, in octaves',
  eqXgain: 'the gain of equaliser band X, in decibels',
  decim: 'the sample-rate reduction',
  bitred: 'the bit reduction',
  rectify: 'the rectifier',
  ringmod: 'the ring modulator',
  noiselevel: 'the level of the noise generator, in decibels',
  noisestep: 'the step size of the noise generator',
  noisetone: 'the tone of the noise generator',
  driveshape: 'the shape of the distortion',
  drive: 'the distortion',
  sample_dyn_paramX: 'numbered sample parameter X',
};

const sources: Readonly<Record<string, string>> = { eg: 'envelope N', lfo: 'LFO N' };

/** The part of a target's phrase before its unit. */
function withoutUnit(phrase: string): string {
  return phrase.replace(/, in [a-z]+$/, '');
}

/**
 * The sentence and the noun phrase for an opcode that sends a numbered envelope or LFO to a target, such as
 * `lfoN_cutoff`. `undefined` for any other pattern.
 */
export function describeRouting(pattern: string): { description: string; subject: string } | undefined {
  const cut = pattern.indexOf('N_');
  const source = sources[pattern.slice(0, cut)];
  const target = source && targets[pattern.slice(cut + 2)];
  if (!source || !target) return undefined;
  return {
    description: `How far ${source} moves ${target}.`,
    subject: `the depth of ${source} on ${withoutUnit(target)}`,
  };
}
