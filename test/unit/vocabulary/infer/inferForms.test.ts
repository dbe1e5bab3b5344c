import { describe, expect, it } from 'vitest';
import type { SampleFacts } from '../../../../server/model/samples';
import type { InferredVocabulary } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { doubtfulBelow } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import type { ValueForm } from '../../../../server/vocabulary/vocabulary';
import { facts } from '../examples/invented';

type Row = Record<string, string | number>;

/** Regions of a made-up kiln, each with a file and a key besides what a test gives. */
function kiln(rows: readonly Row[], samples: Record<string, SampleFacts> = {}): InferredVocabulary {
  const pots = rows.map((row, at) => {
    const all: Row = { file: `pot${at}.wav`, key: 40 + at, ...row };
    return `<pot${Object.entries(all)
      .map(([name, value]) => ` ${name}="${value}"`)
      .join('')}/>`;
  });
  const inferred = inferVocabulary(`<kiln>${pots.join('\n')}</kiln>`, {
    path: 'kiln.xml',
    sampleFacts: (path) => samples[path],
  });
  if (!inferred) throw new Error('taken for no instrument');
  return inferred;
}

function column(name: string, values: readonly (string | number)[]): InferredVocabulary {
  return kiln(values.map((value) => ({ [name]: value })));
}

/** The form of a parameter, with a question mark where it is in doubt. */
function formOf(
  { vocabulary, decisions }: InferredVocabulary,
  parameter: string,
): [ValueForm | undefined, string] {
  const found = vocabulary.levels.at(-1)?.parameters.find((one) => one.parameter === parameter);
  const isDoubtful = decisions.some(
    ({ id, confidence }) =>
      (id === parameter || id.startsWith(`${parameter}.`)) && confidence < doubtfulBelow,
  );
  return [found?.form, isDoubtful ? 'in doubt' : 'sure'];
}

// SFZ: volume in dB, 0 dB unchanged; amplitude factors and percentages are common practice.
describe('a slip among the numbers of keys', () => {
  it.each(['c', 'C', 'b', 'H'])('%s does not keep the others from being read', (slip) => {
    const inferred = kiln(
      [41, 45, 49, slip, 57, 61].map((root, at) => ({ low: 40 + 4 * at, high: 43 + 4 * at, root })),
    );
    expect(inferred.vocabulary.levels.at(-1)?.parameters).toContainEqual(
      expect.objectContaining({ parameter: 'pitch_keycenter', at: '@root' }),
    );
  });
});

describe('a level', () => {
  it.each([
    ['is dB where numbers below 0 occur', [-6, 0, -3.5], { unit: 'dB' }, 'sure'],
    ['is dB where dB stands behind it', ['2 dB', '3 dB'], { unit: 'dB', unitText: ' dB' }, 'sure'],
    ['is a factor where all lie from 0 to 1', [0.25, 0.9, 1], { unit: 'factor' }, 'sure'],
    ['is a percentage where all lie up to 100', [25, 80, 100], { unit: 'percent' }, 'sure'],
    ['is a number of seven bits where all lie up to 127', [127, 40, 90], { unit: 'sevenBits' }, 'sure'],
    ['is in doubt where 100 could be the full level or not', [97, 41, 83], { unit: 'sevenBits' }, 'in doubt'],
    ['is in doubt where only 0 and 1 occur', [0, 1, 1], { unit: 'factor' }, 'in doubt'],
    ['is in doubt where only 0 occurs', [0, 0, 0], { unit: 'dB' }, 'in doubt'],
    ['is dB where a plus sign stands before it', ['+2', '3', '0'], { unit: 'dB' }, 'sure'],
  ] as const)('%s', (_, values, form, doubt) => {
    expect(formOf(column('gain', values), 'volume')).toEqual([{ kind: 'level', ...form }, doubt]);
  });

  it.each([
    ['a few small numbers', [0, 2, 5]],
    ['numbers around 1', [0.8, 1.25, 1]],
    ['numbers above all full levels', [140, 240]],
  ])('is left out for %s, with what it could be as choices', (_, values) => {
    const inferred = column('gain', values);
    expect(formOf(inferred, 'volume')).toEqual([undefined, 'in doubt']);
    const decision = inferred.decisions.find(({ id }) => id === 'volume.unit');
    expect(decision?.isLost).toBe(true);
    expect(decision?.message).toContain('left out');
    for (const unit of ['dB', 'percent', 'factor']) {
      const forms = decision?.choices.flatMap(
        ({ vocabulary }) => vocabulary.levels.at(-1)?.parameters.map(({ form }) => form) ?? [],
      );
      expect(forms).toContainEqual({ kind: 'level', unit });
    }
  });

  it('named an attenuation counts the other way round', () => {
    expect(formOf(column('attenuation', [0, 6, 3.5]), 'volume')).toEqual([
      { kind: 'level', unit: 'dB', attenuation: true },
      'sure',
    ]);
    expect(formOf(column('attenuation', [0, -6, -3.5]), 'volume')[1]).toBe('in doubt');
  });
});

// SFZ: pan −100..100. MIDI 1.0: pan 0..127 with 64 for the centre.
describe('a pan position', () => {
  it.each([
    ['to both sides of 0', [-100, 0, 45], [-100, 0, 100], 'sure'],
    ['within ±1', [-0.5, 0, 1], [-1, 0, 1], 'sure'],
    ['with 64 for the centre', [0, 64, 127], [0, 64, 127], 'sure'],
    ['around a half', [0.5, 0.1, 0.9], [0, 0.5, 1], 'sure'],
    ['of seven bits with a sign', [-64, 0, 63], [-64, 0, 63], 'sure'],
    ['that is always 0', [0, 0, 0], [-100, 0, 100], 'in doubt'],
    ['that is always 64', [64, 64, 64], [0, 64, 127], 'in doubt'],
  ] as const)('%s', (_, values, [left, centre, right], doubt) => {
    expect(formOf(column('pan', values), 'pan')).toEqual([{ kind: 'pan', left, centre, right }, doubt]);
  });

  it('in words', () => {
    expect(formOf(column('pan', ['left', 'right', 'centre']), 'pan')[0]).toEqual({
      kind: 'words',
      words: { left: '-100', right: '100', centre: '0' },
    });
  });
});

// SFZ: tune in cents. A semitone is 100 cents, an octave the ratio 2.
describe('a tuning', () => {
  it.each([
    ['in cents', [-40, 25, 3], 'cents', 'sure'],
    ['in fractions of a semitone', [-0.4, 0.25, 0.03], 'semitones', 'sure'],
    ['as a ratio near 1', [1.0012, 0.9987, 1], 'ratio', 'sure'],
    ['in small whole numbers', [-3, 2, 7], 'cents', 'in doubt'],
  ] as const)('%s', (_, values, unit, doubt) => {
    expect(formOf(column('tuning', values), 'tune')).toEqual([{ kind: 'tuning', unit }, doubt]);
  });
});

// MIDI 1.0: velocities 0..127.
describe('velocities', () => {
  const layers = (bounds: readonly (readonly [string | number, string | number])[]) =>
    kiln(bounds.map(([velLow, velHigh]) => ({ velLow, velHigh })));

  it.each([
    [
      'of MIDI',
      [
        [0, 63],
        [64, 127],
      ],
      { most: 127 },
      [],
    ],
    [
      'from 0 to 1 that touch',
      [
        [0, 0.5],
        [0.5, 1],
      ],
      { most: 1, touching: true },
      [],
    ],
    [
      'of MIDI that touch',
      [
        [0, 40],
        [40, 80],
        [80, 127],
      ],
      { most: 127, touching: true },
      [],
    ],
    [
      'in percent',
      [
        ['0%', '49%'],
        ['50%', '100%'],
      ],
      { most: 100, step: 1, unitText: '%' },
      [],
    ],
    [
      'that are always 0 and 1',
      [
        [0, 1],
        [0, 1],
      ],
      { most: 1 },
      ['velocity.most'],
    ],
  ] as const)('%s', (_, bounds, form, open) => {
    const inferred = layers(bounds);
    expect(formOf(inferred, 'lovel')[0]).toEqual({ kind: 'velocity', ...form });
    expect(inferred.vocabulary.unsettled ?? []).toEqual(open);
  });
});

// Makers differ in the octave of middle C, MIDI key 60 (common practice: C3, C4 or C5).
describe('the octave of note names', () => {
  const named = (names: readonly string[], rows: (at: number) => Row = () => ({}), samples = {}) =>
    kiln(
      names.map((key, at) => ({ key, ...rows(at) })),
      samples,
    );
  const octave = (inferred: InferredVocabulary) => {
    const decision = inferred.decisions.find(({ id }) => id === 'middleC');
    const form = inferred.vocabulary.levels.at(-1)?.parameters.find((one) => one.form.kind === 'key')?.form;
    return [form?.kind === 'key' && form.middleC, (decision?.confidence ?? 0) >= doubtfulBelow];
  };

  it('is in doubt where nothing tells, with the other two to choose from', () => {
    const inferred = named(['C3', 'D3', 'E3']);
    expect(octave(inferred)).toEqual(['C4', false]);
    const choices = inferred.decisions.find(({ id }) => id === 'middleC')?.choices;
    expect(choices?.map(({ label }) => label)).toEqual(['C3 is key 60', 'C5 is key 60']);
    expect(choices?.[0]?.vocabulary.unsettled).toBeUndefined();
    expect(inferred.vocabulary.unsettled).toEqual(['middleC']);
  });

  it('follows from the root keys of the sample files', () => {
    const samples = {
      'pot0.wav': facts(900, 44100, { rootKey: 60 }),
      'pot1.wav': facts(900, 44100, { rootKey: 62 }),
    };
    expect(octave(named(['C3', 'D3'], undefined, samples))).toEqual(['C3', true]);
  });

  it('follows from a root key that is a number', () => {
    const rows = ['C5', 'E5'].map((low, at) => ({ low, high: at ? 'G5' : 'D5', root: at ? 65 : 61 }));
    const pots = rows.map(
      (row, at) => `<pot file="${at}.wav" low="${row.low}" high="${row.high}" root="${row.root}"/>`,
    );
    const inferred = inferVocabulary(`<kiln>${pots.join('')}</kiln>`, { path: 'kiln.xml' });
    expect(inferred && octave(inferred)).toEqual(['C5', true]);
  });

  it('follows from names outside the keys 0..127', () => {
    expect(octave(named(['C-2', 'D-2', 'E-2']))).toEqual(['C3', true]);
  });

  it('follows from key numbers in the names of files', () => {
    expect(octave(named(['C5', 'D5', 'E5'], (at) => ({ file: `pot ${[60, 62, 64][at]} soft.wav` })))).toEqual(
      ['C5', true],
    );
  });

  it('is in doubt where the sample files contradict each other', () => {
    const samples = {
      'pot0.wav': facts(900, 44100, { rootKey: 60 }),
      'pot1.wav': facts(900, 44100, { rootKey: 62 }),
      'pot2.wav': facts(900, 44100, { rootKey: 52 }),
    };
    expect(octave(named(['C3', 'D3', 'E3'], undefined, samples))[1]).toBe(false);
  });
});

// SFZ: loop_end and end are the last frame played, counted from 0.
describe('an end of a loop', () => {
  const loops = (from: number, behind: number) => {
    const samples: Record<string, SampleFacts> = {};
    const rows = [3000, 4100, 5200].map((start, at) => {
      samples[`pot${at}.wav`] = facts(20_000 + at, 44100, { loop: [start, start + 700] });
      return { loopStart: start + from, loopEnd: start + 700 + from + behind };
    });
    return kiln(rows, samples);
  };

  it.each([
    [0, 0, {}],
    [0, 1, { last: 'excluded' }],
    [1, 0, { first: 1 }],
    [1, 1, { first: 1, last: 'excluded' }],
  ] as const)('counted from %i, %i behind the last frame, as the files say', (from, behind, form) => {
    const inferred = loops(from, behind);
    expect(formOf(inferred, 'loop_end')).toEqual([{ kind: 'position', unit: 'frames', ...form }, 'sure']);
    expect(inferred.vocabulary.unsettled).toBeUndefined();
  });

  it('is in doubt where no file tells', () => {
    const inferred = kiln([
      { loopStart: 3000, loopEnd: 9000 },
      { loopStart: 4000, loopEnd: 9100 },
    ]);
    expect(inferred.vocabulary.unsettled).toEqual(['loop_end.last']);
    const [choice] = inferred.decisions.find(({ id }) => id === 'loop_end.last')?.choices ?? [];
    const form = choice?.vocabulary.levels
      .at(-1)
      ?.parameters.find(({ parameter }) => parameter === 'loop_end')?.form;
    expect(form).toMatchObject({ last: 'excluded' });
  });
});

describe('a vocabulary that is given', () => {
  it('is asked for what it leaves open alone, and answered by files that are known by now', () => {
    const before = kiln([{ key: 'C3' }, { key: 'D3' }]);
    expect(before.vocabulary.unsettled).toEqual(['middleC']);
    const text = '<kiln><pot file="pot0.wav" key="C3"/><pot file="pot1.wav" key="D3"/></kiln>';
    const again = inferVocabulary(text, {
      path: 'kiln.xml',
      given: { ...before.vocabulary, name: 'My kiln' },
      sampleFacts: (path) => facts(900, 44100, { rootKey: path === 'pot0.wav' ? 60 : 62 }),
    });
    expect(again?.decisions.map(({ id }) => id)).toEqual(['middleC']);
    expect(again?.vocabulary).toMatchObject({ name: 'My kiln' });
    expect(again?.vocabulary.unsettled).toBeUndefined();
    expect(again?.vocabulary.levels.at(-1)?.parameters).toContainEqual({
      parameter: 'key',
      at: '@key',
      form: { kind: 'key', written: 'name', middleC: 'C3' },
    });
  });

  it('says nothing where all is settled', () => {
    const { unsettled: _, ...settled } = kiln([{ key: 'C3' }]).vocabulary;
    const again = inferVocabulary('<kiln><pot file="a.wav" key="C3"/></kiln>', {
      path: 'kiln.xml',
      given: settled,
    });
    expect(again?.decisions).toEqual([]);
    expect(again?.vocabulary).toEqual(settled);
  });
});

describe('attributes that are not known', () => {
  it('give no parameter and no question', () => {
    const inferred = kiln([
      { glaze: 'blue', firedAt: 1200, id: 7, comment: 'low key', colour: '#fff', potter: 'nobody' },
      { glaze: 'red', firedAt: 900, id: 8, comment: 'high', colour: '#000', potter: 'nobody' },
    ]);
    expect(inferred.vocabulary.levels.at(-1)?.parameters.map(({ parameter }) => parameter)).toEqual([
      'sample',
      'key',
    ]);
    expect(inferred.vocabulary.unsettled).toBeUndefined();
  });
});

describe('numbers of a round robin', () => {
  it('are positions in the regions, and a count on the element around them', () => {
    const pot = (at: number) => `<pot file="pot${at}.wav" key="40" variation="${(at % 2) + 1}"/>`;
    const inferred = inferVocabulary(
      `<kiln><shelf variations="2">${[0, 1, 2, 3].map(pot).join('')}</shelf></kiln>`,
      { path: 'kiln.xml' },
    );
    const parameters = (inferred?.vocabulary.levels ?? []).flatMap((level) =>
      level.parameters.map(({ parameter, at }) => `${level.element} ${at} ${parameter}`),
    );
    expect(parameters).toContain('shelf @variations seq_length');
    expect(parameters).toContain('pot @variation seq_position');
  });
});
