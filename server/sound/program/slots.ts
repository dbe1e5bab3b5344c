/**
 * Values that every voice has, by the opcode that sets them; the position of a name is its slot. Values of numbered
 * equaliser bands, envelopes and LFOs come behind these as an instrument needs them.
 */
const names = [
  'volume',
  'amplitude',
  'amp_veltrack',
  'pan',
  'width',
  'position',
  'tune',
  'loop_tune',
  'offset',
  'delay_samples',
  'loop_start',
  'loop_end',
  'cutoff',
  'resonance',
  'fil_gain',
  'cutoff2',
  'resonance2',
  'fil2_gain',
  ...stages('ampeg'),
  ...stages('fileg'),
  'fileg_depth',
  ...stages('pitcheg'),
  'pitcheg_depth',
  ...lfo('amplfo'),
  ...lfo('fillfo'),
  ...lfo('pitchlfo'),
] as const;

function stages<T extends string>(envelope: T) {
  return [
    `${envelope}_delay`,
    `${envelope}_start`,
    `${envelope}_attack`,
    `${envelope}_hold`,
    `${envelope}_decay`,
    `${envelope}_sustain`,
    `${envelope}_release`,
  ] as const;
}

function lfo<T extends string>(name: T) {
  return [`${name}_delay`, `${name}_fade`, `${name}_freq`, `${name}_depth`] as const;
}

export type SlotName = (typeof names)[number];

/** The slot of each value that every voice has. */
export const Slot = Object.fromEntries(names.map((name, slot) => [name, slot])) as Record<SlotName, number>;

/** How many slots every voice has. */
export const slotCount = names.length;

/** What the slots hold where the text says nothing (public SFZ documentation); 0 for those left out. */
export const slotDefaults: Readonly<Partial<Record<SlotName, number>>> = {
  amplitude: 1,
  amp_veltrack: 100,
  width: 100,
  ampeg_sustain: 100,
  ampeg_release: 0.001,
};

/** The slot of a name, or −1. */
export function slotOf(name: string): number {
  return (names as readonly string[]).indexOf(name);
}
