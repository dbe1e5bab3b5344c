import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditionsOf } from '../../../../server/model/overlaps/conditions';
import { readSfz } from '../../../../server/sfz/read';

/** Whether two regions with these opcodes are apart. */
function apart(one: string, two: string): boolean {
  const instrument = readSfz(`<region> ${one}\n<region> ${two}`, { path: 'test.sfz' });
  const conditions = conditionsOf(instrument);
  const [first, second] = [...instrument.regions].map((region) => conditions.ofHeader[region]);
  const answer = conditions.apart(first, second);
  expect(conditions.apart(second, first)).toBe(answer);
  return answer;
}

describe('conditions', () => {
  // The conditions under which regions exclude one another: public documentation of the open SFZ format.
  it.each([
    ['locc1=0 hicc1=63', 'locc1=64 hicc1=127'],
    ['lochan=1 hichan=1', 'lochan=2 hichan=2'],
    ['hibend=-1', 'lobend=0'],
    ['loprog=0 hiprog=0', 'loprog=1 hiprog=1'],
    ['hirand=0.5', 'lorand=0.5'],
    ['hibpm=120', 'lobpm=120'],
    ['hichanaft=63', 'lochanaft=64'],
    ['hipolyaft=63', 'lopolyaft=64'],
    ['hitimer=1', 'lotimer=1'],
    ['seq_length=2', 'seq_length=2 seq_position=2'],
    ['trigger=attack', 'trigger=release'],
    ['trigger=first', 'trigger=legato'],
    ['sw_last=24', 'sw_last=c#1'],
    ['sw_down=24', 'sw_up=24'],
    ['sw_previous=60', 'sw_previous=61'],
  ])('%s and %s keep regions apart', (one, two) => {
    expect(apart(one, two)).toBe(true);
  });

  it.each([
    ['', ''],
    ['trigger=attack locc7=0 hicc7=127 lorand=0 hirand=1 group=0', ''],
    ['locc1=0 hicc1=80', 'locc1=60 hicc1=127'],
    ['hirand=0.6', 'lorand=0.4'],
    ['seq_length=2 seq_position=1', 'seq_length=2'],
    ['seq_length=3 seq_position=1', ''],
    ['sw_last=24', 'sw_last=c1'],
    ['volume=-6 pan=20', 'volume=3'],
  ])('%s and %s do not', (one, two) => {
    expect(apart(one, two)).toBe(false);
  });

  it.each([
    ['group=1', 'group=2'],
    ['output=1', ''],
    ['locc64=64', ''],
    ['sw_last=24', ''],
    ['xfin_lovel=10 xfin_hivel=20', 'xfout_lovel=10 xfout_hivel=20'],
    ['on_locc64=64 on_hicc64=127', ''],
  ])('%s and %s are layers of their own', (one, two) => {
    expect(apart(one, two)).toBe(true);
  });

  it('shares one number among regions that inherit the same, and counts a later value for an earlier one', () => {
    const instrument = readSfz(
      `<group> locc1=10 hicc1=20
<region> volume=1
<region> volume=2
<region> locc1=30 locc1=10
<region> locc1=15
<group> hicc1=20 locc1=15
<region>`,
      { path: 'test.sfz' },
    );
    const conditions = conditionsOf(instrument);
    const [a, b, c, d, e] = [...instrument.regions].map((region) => conditions.ofHeader[region]);
    expect([b, c]).toEqual([a, a]);
    expect(d).not.toBe(a);
    expect(e).toBe(d);
    expect(conditions.set(d).gates).toEqual([{ subject: 'cc1', low: 15, high: 20 }]);
  });

  it('stay the same after instruments with more different conditions than are kept', () => {
    const text =
      '<region> locc1=10 hicc1=20 seq_length=3 seq_position=2\n<region> trigger=release sw_last=c4';
    const read = () => {
      const instrument = readSfz(text, { path: 'test.sfz' });
      const conditions = conditionsOf(instrument);
      return [...instrument.regions].map((region) => conditions.set(conditions.ofHeader[region]));
    };
    const expected = [
      {
        gates: [{ subject: 'cc1', low: 10, high: 20 }],
        sequenceLength: 3,
        sequencePosition: 2,
        onRelease: false,
      },
      { gates: [], sequenceLength: 1, sequencePosition: 1, onRelease: true },
    ];
    expect(read()).toMatchObject(expected);
    for (let round = 0; round < 3; round++) {
      const lines = Array.from({ length: 30_000 }, (_, at) => `<region> locc1=${at / 7} hicc2=${at + round}`);
      const instrument = readSfz(lines.join('\n'), { path: 'test.sfz' });
      const conditions = conditionsOf(instrument);
      const last = conditions.ofHeader[instrument.regions.at(-1) as number];
      // Gates above 127 hold nothing back at that end.
      expect(conditions.set(last).gates).toMatchObject([{ subject: 'cc1', low: 29_999 / 7, high: 127 }]);
      expect(new Set(conditions.ofHeader).size).toBe(30_000);
      expect(read()).toMatchObject(expected);
    }
  });

  it('knows when two turns of round robins meet, as counting strikes shows', () => {
    const turn = fc.integer({ min: 1, max: 6 });
    fc.assert(
      fc.property(turn, turn, turn, turn, (lengthA, positionA, lengthB, positionB) => {
        let meet = false;
        for (let strike = 0; strike < lengthA * lengthB; strike++) {
          meet ||= strike % lengthA === positionA - 1 && strike % lengthB === positionB - 1;
        }
        expect(
          apart(
            `seq_length=${lengthA} seq_position=${positionA}`,
            `seq_length=${lengthB} seq_position=${positionB}`,
          ),
        ).toBe(!meet);
      }),
    );
  });
});
