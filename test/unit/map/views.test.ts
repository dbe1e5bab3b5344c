import { describe, expect, it } from 'vitest';
import { mapMeasures } from '../../../server/features/mapViews/mapMeasures';
import { layOut } from '../../../server/map/layout';
import { buildMapScene } from '../../../server/map/scene';
import { keyChart, velocityChart } from '../../../server/map/views/viewChart';
import { viewMarks } from '../../../server/map/views/viewMarks';
import { viewInWords } from '../../../server/map/views/viewWords';
import { sfzNotation } from '../../../server/sfz/notation';
import { readText } from '../features/anyInstrument';

const noSamples = { state: () => ({ kind: 'missing' }) as const, nearest: () => [] };

/** The level of each velocity of key 60, in dB. */
function levels(text: string): (number | undefined)[] {
  const instrument = readText('sfz', text);
  const { velocities } = mapMeasures({ instrument, notation: sfzNotation, samples: noSamples }, 60);
  expect(velocities.map(({ velocity }) => velocity)).toEqual(Array.from({ length: 127 }, (_, at) => at + 1));
  return [undefined, ...velocities.map(({ levelDb }) => levelDb)];
}

describe('the level of a note by velocity', () => {
  it('follows the square of velocity where nothing is set (public SFZ documentation, amp_veltrack)', () => {
    const found = levels('<region> sample=*sine');
    expect(found[127]).toBeCloseTo(0, 6);
    // 40·log10(64/127) by hand.
    expect(found[64]).toBeCloseTo(-11.9, 1);
    expect(found[1]).toBeCloseTo(-84.15, 1);
  });

  it('takes in layers, their gains, and what is silent', () => {
    const found = levels(`<global> amp_veltrack=0
<region> sample=*sine lovel=1 hivel=40 volume=-20
<region> sample=*sine lovel=41 hivel=80 volume=-10
<region> sample=*sine lovel=101 amplitude=50`);
    expect([found[1], found[40], found[41], found[80]].map((one) => one?.toFixed(3))).toEqual([
      '-20.000',
      '-20.000',
      '-10.000',
      '-10.000',
    ]);
    expect(found[90]).toBeUndefined();
    // Half of the amplitude is 20·log10(0.5) dB.
    expect(found[127]).toBeCloseTo(-6.02, 2);
  });

  it('takes in crossfades and points of a velocity curve', () => {
    const faded = levels(`<global> amp_veltrack=0 xf_velcurve=power
<region> sample=*sine xfout_lovel=40 xfout_hivel=80
<region> sample=*sine xfin_lovel=40 xfin_hivel=80`);
    // Two powers that make one: 0 dB throughout.
    for (const velocity of [1, 40, 50, 60, 80, 127]) expect(faded[velocity]).toBeCloseTo(0, 6);
    const curved = levels('<region> sample=*sine amp_velcurve_1=1');
    expect(curved[1]).toBeCloseTo(0, 6);
  });
});

describe('a level of samples that are not measured', () => {
  it('is told, also where others that sound with it are known', () => {
    const text = '<region> sample=known.wav hivel=99 <region> sample=new.wav lovel=80';
    const instrument = readText('sfz', text);
    const { velocities } = mapMeasures({ instrument, notation: sfzNotation, samples: noSamples }, 60);
    expect(velocities.map(({ unmeasured }) => unmeasured)).toEqual(
      Array.from({ length: 127 }, (_, at) => (at >= 79 && at <= 98 ? 2 : 1)),
    );
    const chart = velocityChart(
      velocities.map((one) => (one.velocity < 80 ? { ...one, unmeasured: 0 } : one)),
      () => 0,
    );
    const words = viewInWords(chart, []);
    expect(words.filter((line) => line.includes('not measured'))).toHaveLength(6);
    expect(words.at(-1)).toBe('velocity 127: 0 dB, a sample is not measured and counts as full scale');
    const layout = layOut(buildMapScene(instrument), { keyWidth: 10, plotHeight: 127, keyboardHeight: 20 });
    const curves = viewMarks(chart, layout).filter(({ className }) => className.startsWith('curve'));
    expect(curves.map(({ className }) => className)).toEqual(['curve tone-0', 'curve assumed tone-0']);
    // A sine of the format's own has a level that is known.
    expect(levels('<region> sample=*sine')[127]).toBeCloseTo(0, 6);
    const sine = readText('sfz', '<region> sample=*sine');
    const of = mapMeasures({ instrument: sine, notation: sfzNotation, samples: noSamples }, 60);
    expect(of.velocities.some((one) => one.unmeasured !== undefined)).toBe(false);
  });
});

describe('charts over the keyboard', () => {
  const text = `<group> group_label=low
<region> sample=a.wav lokey=48 hikey=52 pitch_keycenter=50
<region> sample=b.wav lokey=53 hikey=59 pitch_keycenter=57`;
  const scene = buildMapScene(readText('sfz', text));

  it('tell how far each key is from the root', () => {
    const chart = keyChart('stretch', scene, [0, 1], []);
    expect(viewInWords(chart, ['low'])).toEqual([
      'C3 to E3, low: −2 to +2 semitones',
      'F3 to B3, low: −4 to +2 semitones',
    ]);
    // No value on the edge.
    expect([chart.low, chart.high]).toEqual([-6, 4]);
    expect(keyChart('stretch', scene, [1], []).lines).toHaveLength(1);
  });

  it('tell tuning and loudness where they are known', () => {
    const measures = [
      { header: 1, cents: -12.34 },
      { header: 2, levelDb: -18 },
    ];
    expect(viewInWords(keyChart('tuning', scene, [0, 1], measures), ['low'])).toEqual([
      'C3 to E3, low: −12.3 cents at D3',
    ]);
    const loud = keyChart('loudness', scene, [0, 1], measures);
    expect(viewInWords(loud, ['low'])).toEqual(['F3 to B3, low: −18 LUFS']);
    expect(loud.low).toBeLessThanOrEqual(-24);
    expect(loud.high).toBeGreaterThanOrEqual(-12);
  });

  it('have an axis of values where nothing is known', () => {
    const chart = velocityChart([{ velocity: 1, regions: [] }], () => 0);
    expect(chart.lines).toEqual([]);
    expect(chart.ticks.length).toBeGreaterThan(2);
    expect(chart.low).toBeLessThan(chart.high);
  });
});
