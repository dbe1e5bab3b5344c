/** A question that the documents of the format leave open, and how this voice answers it. */
export interface Choice {
  /** What is decided. */
  readonly what: string;
  readonly value: number | string;
  readonly why: string;
  /** A published source, or `common practice`, or `our choice`. */
  readonly source: string;
}

const documents = 'public SFZ documentation';

/**
 * Every choice that the documents of the format leave open, by name. The code reads its constants from here, and reports
 * and documentation print the list, so that what is said is what is done.
 */
export const choice = {
  envelopeFallDb: {
    what: 'How far decay and release of the amplitude envelope fall in their stated time, in dB',
    value: 90,
    why: 'The default shape of −10.3616 is −ln 10^4.5; other pages estimate 70 and 80 dB.',
    source: `${documents}, ampeg_decay_shape`,
  },
  attackCurve: {
    what: 'Attack of the amplitude envelope',
    value: 'linear in amplitude',
    why: 'The default attack shape is 0.',
    source: `${documents}, ampeg_attack_shape`,
  },
  shapeFormula: {
    what: 'Curve of an envelope stage with shape k from a to b, x from 0 to 1',
    value: 'a + (b − a) · (e^(k·x) − 1) / (e^k − 1)',
    why: 'It is straight at 0 and falls by 90 dB at −10.3616, as described.',
    source: 'common practice',
  },
  sustainVelocity: {
    what: 'Share of vel2sustain that a velocity v adds',
    value: 'v / 127',
    why: 'So do the other stages; the page of this one prints no share.',
    source: 'common practice',
  },
  velocityTracking: {
    what: 'Gain for amp_veltrack t between −1 and 1, with the curve c',
    value: '1 − t + t·c, or 1 − |t|·c below 0',
    why: 'It fits the three documented points: 100 is the curve, 0 is flat, −100 is silent at velocity 127.',
    source: 'common practice',
  },
  randomLevel: {
    what: 'Random level, delay, offset and resonance',
    value: 'from 0 to the value',
    why: 'Engines differ; a level that is only raised keeps to what the text says.',
    source: 'common practice',
  },
  randomPitch: {
    what: 'Random pitch, cutoff, pan and position',
    value: 'from minus the value to the value',
    why: 'The first version of the format centres random pitch.',
    source: `${documents}, pitch_random`,
  },
  monoPan: {
    what: 'Pan of a mono sample',
    value: 'cosine and sine, −3.01 dB at the centre',
    why: 'Equal power; Web Audio and the MIDI Association name it, the format names two laws without formulas.',
    source: 'W3C Web Audio API, StereoPannerNode; MIDI Association RP-036',
  },
  stereoPan: {
    what: 'Pan of a stereo sample',
    value: 'cosine on the far channel, the near one unchanged, no mixing',
    why: 'Pan is documented as the relative level of the two channels.',
    source: 'common practice',
  },
  stereoOrder: {
    what: 'Order of width, position and pan of a stereo sample',
    value: 'width, then position, then pan; mono samples take pan alone',
    why: 'A sample that width has made mono can then be panned.',
    source: 'our choice',
  },
  balanceLaw: {
    what: 'pan_law=balance',
    value: 'a mono sample is panned as a stereo one: 0 dB at the centre',
    why: 'The documents name the law without a formula.',
    source: 'our choice',
  },
  position: {
    what: 'Position',
    value: 'the far channel is mixed into the near one with cosine and sine',
    why: 'Nothing of the sound is lost.',
    source: 'W3C Web Audio API, StereoPannerNode',
  },
  amplitudeMoves: {
    what: 'How controllers and envelopes move amplitude',
    value: 'each multiplies',
    why: 'Instruments use amplitude_onccN=100 as a fader, which has to be silent at 0; amplitude_mod=add adds.',
    source: 'common practice, from memory',
  },
  rootUnknown: {
    what: 'Root key where pitch_keycenter=sample and the file names none',
    value: 60,
    why: 'It is the default root key; key 0 would sound five octaves up.',
    source: 'common practice',
  },
  cutoffZero: {
    what: 'cutoff=0',
    value: 'no filter',
    why: 'Five behaviours are documented.',
    source: 'our choice',
  },
  lowestCutoffHz: {
    what: 'Lowest cutoff frequency in Hz',
    value: 20,
    why: 'The lowest frequency of hearing.',
    source: 'common practice',
  },
  highestCutoffShare: {
    what: 'Highest cutoff frequency as a share of the sample rate',
    value: 0.45,
    why: 'Nearer to half of the rate the filters are no longer what they are named.',
    source: 'common practice',
  },
  flatResonanceDb: {
    what: 'Gain at the cutoff frequency for resonance=0, in dB',
    value: -3.0102999566398116,
    why: 'That is the flat Butterworth response, and what measured players of SoundFont files do.',
    source: 'common practice',
  },
  steepFilters: {
    what: 'Filters of 24 and 36 dB an octave',
    value: 'Butterworth filters of order 4 and 6; resonance raises the stage of the highest quality',
    why: 'Resonance 0 is then flat, as in the filters of 12 dB.',
    source: 'our choice',
  },
  stateVariableFilters: {
    what: 'lpf_2p_sv, hpf_2p_sv, bpf_2p_sv, brf_2p_sv',
    value: 'as the filters without _sv',
    why: 'A state-variable filter is a way to compute the same response.',
    source: 'our choice',
  },
  filterQuality: {
    what: 'Quality of band filters and of the peaking filter',
    value: '10^(resonance / 20)',
    why: 'Resonance is in dB, quality is a ratio.',
    source: 'W3C Web Audio API, BiquadFilterNode',
  },
  bandsFollow: {
    what: 'eqN_dynamic',
    value: 'bands of the equaliser follow their controllers whatever it says',
    why: 'A controller that is moved is meant to be heard.',
    source: 'our choice',
  },
  sampleFadeOut: {
    what: 'sample_fadeout',
    value: 'straight fall of the amplitude over the last seconds of the sample, at its own pitch',
    why: 'Only the unit is documented.',
    source: 'our choice',
  },
  firstLfoWave: {
    what: 'Wave of amplfo, fillfo and pitchlfo',
    value: 'sine, from 0 upwards',
    why: 'The numbered LFOs are sines where nothing else is set.',
    source: `${documents}, lfoN_wave`,
  },
  lfoFade: {
    what: 'Growth of an LFO over its fade',
    value: 'linear',
    why: 'No curve is documented.',
    source: 'common practice',
  },
  lfoWaves: {
    what: 'Waves of numbered LFOs',
    value:
      '0 triangle, 1 sine, 2 pulse of 75 %, 3 square, 4 pulse of 25 %, 5 pulse of 12.5 %, 6 saw up, 7 saw down, 12 random steps',
    why: 'As the page of the opcode lists them; all run from −1 to 1, pulses start high.',
    source: `${documents}, lfoN_wave, from memory`,
  },
  lfoAmplitude: {
    what: 'lfoN_amplitude d',
    value: 'gain · (1 + d / 100 · lfo)',
    why: 'Without it the wave would turn the phase over.',
    source: 'our choice',
  },
  lfoSteps: {
    what: 'A period of an LFO with steps',
    value: 'runs through all steps',
    why: 'A step takes the period over their number; the documents do not say.',
    source: 'our choice',
  },
  crossfadePower: {
    what: 'Crossfades with the power curve',
    value: 'square root',
    why: 'Two layers halfway have equal power in all.',
    source: 'common practice',
  },
  loopCrossfade: {
    what: 'Curve of loop_crossfade over the last frames of the loop',
    value: 'y = a·(1 − w) + b·w, w = (1 − cos πt) / 2',
    why: 'Engines differ; what is mixed is alike, so the sum of the shares is 1.',
    source: 'common practice',
  },
  alternateLoop: {
    what: 'Turning points of loop_type=alternate',
    value: 'sound once; a counted loop ends at its last frame',
    why: 'A frame that sounds twice would bend the wave.',
    source: 'common practice',
  },
  backwardLoop: {
    what: 'loop_type=backward',
    value: 'forward to the end of the loop, then from its end to its start again and again',
    why: 'What stands before the loop has to be heard first.',
    source: 'our choice',
  },
  reverseDirection: {
    what: 'direction=reverse',
    value: 'plays the stretch from offset to end, and its loop, backwards',
    why: 'The same stretch sounds in either direction.',
    source: 'our choice',
  },
  sampleCount: {
    what: 'count=n',
    value: 'the stretch from offset to end sounds n times',
    why: 'The documents count how often the sample is played.',
    source: `${documents}, count`,
  },
  generatorPitch: {
    what: 'Pitch of *sine, *saw, *square, *triangle',
    value: 'at its root key a generator sounds that key, A4 = 440 Hz',
    why: 'So a generator with default values plays in tune.',
    source: 'common practice; ISO 16',
  },
  generatorLevel: {
    what: 'Level of generators',
    value: 'waves from −1 to 1; *noise white and evenly spread from −1 to 1, one channel',
    why: 'Full scale like a normalised sample.',
    source: 'our choice',
  },
  generatorSeconds: {
    what: 'Seconds after which a generator that plays through whatever the key does is let go',
    value: 10,
    why: 'It has no end of its own.',
    source: 'our choice',
  },
  curveNumbers: {
    what: 'Number of a <curve> without curve_index',
    value: 'counted on from 7, in the order of the text',
    why: '0 to 6 are built in.',
    source: 'common practice',
  },
  smoothing: {
    what: 'smoothccN=t',
    value: 'first-order lag with the time constant t milliseconds',
    why: 'Only the unit is documented.',
    source: 'our choice',
  },
  stepping: {
    what: 'stepccN=s',
    value: 'what the controller adds goes in whole steps of s, towards 0',
    why: 'So bend_step is described.',
    source: `${documents}, bend_step`,
  },
  fastEndSeconds: {
    what: 'Fade of off_mode=fast, in seconds',
    value: 0.006,
    why: 'The default of off_time.',
    source: `${documents}, off_mode, off_time`,
  },
  declickSeconds: {
    what: 'Shortest attack and release in audition, in seconds; renders of reference quality are exact',
    value: 0.001,
    why: 'A start in the middle of a swing clicks.',
    source: 'common practice',
  },
  firstGainDb: {
    what: 'Level at which audition starts, in dB',
    value: -12,
    why: 'What a device makes of full scale is not known; nobody should be hurt by a first note.',
    source: 'common practice; ITU-R H.870 on safe listening',
  },
  ceilingDb: {
    what: 'Highest level of audition, in dB true peak; renders are not limited',
    value: -1,
    why: 'Converters overshoot what lies between frames.',
    source: 'common practice; EBU R 128; ITU-R BS.1770-5',
  },
  mostRatioUp: {
    what: 'Highest ratio of playing faster than recorded',
    value: 1024,
    why: 'Ten octaves up nothing of a sample is left to hear.',
    source: 'our choice',
  },
  controlFramesReference: {
    what: 'Frames between two values of LFOs, filter and pitch envelopes, reference quality; straight lines in between',
    value: 8,
    why: 'A sixth of a millisecond.',
    source: 'our choice',
  },
  controlFramesLive: {
    what: 'The same in live quality',
    value: 32,
    why: 'Two thirds of a millisecond.',
    source: 'common practice',
  },
  liveArithmetic: {
    what: 'Precision of reading between frames, live quality',
    value: 'single, compiled; double where compiled code is refused',
    why: 'Compiled it reads four times as quickly; the two sound alike within −120 dB of full scale. The reference keeps to double.',
    source: 'our choice',
  },
  loopCrossfadeLength: {
    what: 'Longest loop crossfade',
    value: 'the loop, or what stands before it',
    why: 'There is no more to mix.',
    source: 'common practice',
  },
} as const satisfies Record<string, Choice>;

/** The list of {@link choice} for reports and documentation. */
export const choices: readonly Choice[] = Object.values(choice);
