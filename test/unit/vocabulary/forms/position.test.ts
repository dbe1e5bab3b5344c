import { describe, expect, it } from 'vitest';
import { readNumberForm } from '../../../../server/vocabulary/forms/numberForm';
import { positionForm, timeUnits } from '../../../../server/vocabulary/forms/position';
import type { ValueSurroundings } from '../../../../server/vocabulary/forms/valueSurroundings';

type Form = Omit<Parameters<typeof positionForm>[0], 'kind'>;

function both(form: Form, parameter: string, more: Partial<ValueSurroundings> = {}) {
  const around: ValueSurroundings = {
    parameter,
    sampleRate: 48_000,
    frames: 96_000,
    frameOf: () => 0,
    ...more,
  };
  const made = positionForm({ kind: 'position', ...form }, parameter);
  return {
    made,
    read: (text: string) => made.read(readNumberForm(made, undefined, text), around),
    write: (value: number) => made.write(value, around),
    assumed: () => made.assumed?.(around),
  };
}

/** sfzformat.com: frames count from 0; end and loop_end are the last frame that is played; end=-1 keeps a region silent. */
describe('places in frames', () => {
  it.each<[Form, string, string, number]>([
    [{ unit: 'frames' }, 'loop_end', '999', 999],
    [{ unit: 'frames' }, 'loop_start', '0', 0],
    [{ unit: 'frames' }, 'loop_start', '12 samples', 12],
    [{ unit: 'frames', last: 'excluded' }, 'loop_end', '1000', 999],
    [{ unit: 'frames', last: 'excluded' }, 'end', '1000', 999],
    [{ unit: 'frames', last: 'excluded' }, 'loop_start', '1000', 1000],
    [{ unit: 'frames', last: 'excluded' }, 'endless', '1000', 1000],
    [{ unit: 'frames', last: 'excluded' }, 'bend', '1000', 1000],
    [{ unit: 'frames', last: 'included' }, 'loop_end', '1000', 1000],
    [{ unit: 'frames', first: 1 }, 'loop_start', '1', 0],
    [{ unit: 'frames', first: 1 }, 'loop_end', '1000', 999],
    [{ unit: 'frames', first: 1, last: 'excluded' }, 'loop_end', '1001', 999],
    [{ unit: 'frames' }, 'end', '-1', -1],
    [{ unit: 'frames', last: 'excluded' }, 'end', '0', -1],
  ])('%j: %s %s is frame %d', (form, parameter, text, frame) => {
    const { read, write } = both(form, parameter);
    expect(read(text)).toBe(frame);
    expect(write(frame)).toBe(Number.parseFloat(text));
  });

  it('lie in the sample', () => {
    expect(both({ unit: 'frames' }, 'offset').read('-1')).toBeNaN();
    expect(both({ unit: 'frames' }, 'loop_end').read('-1')).toBeNaN();
    expect(both({ unit: 'frames' }, 'end').read('-2')).toBeNaN();
    expect(both({ unit: 'frames', first: 1 }, 'offset').read('0')).toBeNaN();
    expect(both({ unit: 'frames', last: 'excluded' }, 'loop_end').read('0')).toBeNaN();
    expect(both({ unit: 'frames' }, 'offset').write(-1)).toBeNaN();
    expect(both({ unit: 'frames' }, 'end').write(-2)).toBeNaN();
    expect(both({ unit: 'seconds' }, 'end').read('-1')).toBeNaN();
    expect(both({ unit: 'seconds' }, 'end').write(-1)).toBeNaN();
  });

  it('take whole numbers with marks between groups of three digits', () => {
    expect(both({ unit: 'frames', thousands: '.' }, 'offset').read('1.050.000')).toBe(1_050_000);
    expect(both({ unit: 'frames', thousands: ',' }, 'offset').read(' 44,100 ')).toBe(44_100);
    expect(both({ unit: 'frames', thousands: "'" }, 'offset').read('44\u2019100')).toBe(44_100);
    expect(both({ unit: 'frames', thousands: "'" }, 'offset').read("44'100")).toBe(44_100);
    expect(both({ unit: 'frames', thousands: ' ' }, 'offset').read('44 100')).toBe(44_100);
    expect(both({ unit: 'frames', thousands: ' ' }, 'offset').read('44\u202f100')).toBe(44_100);
    expect(both({ unit: 'frames', thousands: '.' }, 'offset').read('1.05')).toBe(1);
    expect(both({ unit: 'frames', thousands: '.' }, 'offset').read('x1.050')).toBeNaN();
    expect(both({ unit: 'frames', thousands: '.' }, 'offset').read('1.050x')).toBeNaN();
    expect(both({ unit: 'frames', thousands: '.' }, 'offset').read('1234.050')).toBe(1234);
    expect(both({ unit: 'frames' }, 'offset').read('44.100')).toBe(44);
    expect(both({ unit: 'frames' }, 'offset').made.readText).toBeUndefined();
  });
});

describe('lengths in frames', () => {
  const start = { frameOf: (name: string) => (name === 'loop_start' ? 500 : 0) };

  it('end before the frame that lies so far from their start', () => {
    const length = both({ unit: 'frames', from: 'loop_start' }, 'loop_end', start);
    expect(length.read('100')).toBe(599);
    expect(length.write(599)).toBe(100);
    const included = both({ unit: 'frames', from: 'loop_start', last: 'included' }, 'loop_end', start);
    expect(included.read('99')).toBe(599);
    expect(included.write(599)).toBe(99);
  });

  it('count frames, whatever number the first one has', () => {
    expect(both({ unit: 'frames', from: 'loop_start', first: 1 }, 'loop_end', start).read('100')).toBe(599);
  });

  it('of nothing end before they start', () => {
    expect(both({ unit: 'frames', from: 'loop_start' }, 'loop_end', start).read('0')).toBe(499);
    expect(both({ unit: 'frames', from: 'offset' }, 'loop_end', start).read('0')).toBe(-1);
  });
});

describe('places in time', () => {
  it('are rounded to the nearest frame at the rate of the sample', () => {
    expect(both({ unit: 'seconds' }, 'offset').read('0.5')).toBe(24_000);
    expect(both({ unit: 'seconds' }, 'offset').read('0.00001')).toBe(0);
    expect(both({ unit: 'seconds' }, 'offset').read('0.000011')).toBe(1);
    expect(both({ unit: 'seconds' }, 'offset').read('20 ms')).toBe(960);
    expect(both({ unit: 'milliseconds' }, 'offset').read('20')).toBe(960);
    expect(both({ unit: 'milliseconds' }, 'offset').read('0.5 s')).toBe(24_000);
    expect(both({ unit: 'milliseconds', last: 'excluded' }, 'end').read('500')).toBe(23_999);
    expect(both({ unit: 'seconds' }, 'offset').write(24_000)).toBe(0.5);
    expect(both({ unit: 'milliseconds' }, 'offset').write(24_000)).toBe(500);
    // Frames alone are counted from 1.
    expect(both({ unit: 'seconds', first: 1 }, 'offset').read('0.5')).toBe(24_000);
  });

  it('go by the rate that is known best: of the file, beside the sample, of the vocabulary, of the audio CD (IEC 60908)', () => {
    const form: Form = { unit: 'seconds', rate: 22_050 };
    expect(both(form, 'offset', { statedRate: 96_000 }).read('1')).toBe(48_000);
    expect(both(form, 'offset', { sampleRate: undefined, statedRate: 96_000 }).read('1')).toBe(96_000);
    expect(both(form, 'offset', { sampleRate: undefined }).read('1')).toBe(22_050);
    expect(both({ unit: 'seconds' }, 'offset', { sampleRate: undefined }).read('1')).toBe(44_100);
    expect(both({ unit: 'milliseconds' }, 'offset', { sampleRate: undefined }).read('1000')).toBe(44_100);
  });

  it('say where the rate had to be assumed, and only there', () => {
    const without = { sampleRate: undefined };
    expect(both({ unit: 'seconds' }, 'offset', without).assumed()).toMatch(/rate.*44100/);
    expect(both({ unit: 'milliseconds' }, 'offset', without).assumed()).toMatch(/rate.*44100/);
    expect(both({ unit: 'seconds', rate: 1 }, 'offset', without).assumed()).toBeUndefined();
    expect(both({ unit: 'seconds' }, 'offset', { ...without, statedRate: 1 }).assumed()).toBeUndefined();
    expect(both({ unit: 'seconds' }, 'offset').assumed()).toBeUndefined();
    expect(both({ unit: 'frames' }, 'offset', without).made.assumed).toBeUndefined();
  });
});

describe('places as shares of the length', () => {
  it('go by the frames of the sample', () => {
    expect(both({ unit: 'fraction' }, 'loop_start').read('0.25')).toBe(24_000);
    expect(both({ unit: 'fraction' }, 'loop_start').read('25 %')).toBe(24_000);
    expect(both({ unit: 'percent' }, 'loop_start').read('25 %')).toBe(24_000);
    expect(both({ unit: 'percent', last: 'excluded' }, 'loop_end').read('100')).toBe(95_999);
    expect(both({ unit: 'percent' }, 'loop_start').write(24_000)).toBe(25);
  });

  it('say where the length had to be assumed', () => {
    for (const unit of ['fraction', 'percent'] as const) {
      expect(both({ unit }, 'offset', { frames: undefined }).assumed()).toMatch(/length.*44100/);
      expect(both({ unit }, 'offset', { sampleRate: undefined }).assumed()).toBeUndefined();
    }
    expect(both({ unit: 'fraction' }, 'offset', { frames: undefined }).read('1')).toBe(44_100);
    expect(both({ unit: 'percent' }, 'offset', { frames: undefined }).read('100')).toBe(44_100);
  });
});

describe('places in frames of another rate', () => {
  const form: Form = { unit: 'frames', atRate: true };

  it('are those at the rate beside the sample', () => {
    expect(both(form, 'offset', { statedRate: 96_000 }).read('1000')).toBe(500);
    expect(both(form, 'offset', { statedRate: 96_000 }).write(500)).toBe(1000);
    expect(both(form, 'offset').read('1000')).toBe(1000);
    expect(both(form, 'offset', { sampleRate: undefined, statedRate: 96_000 }).read('1000')).toBe(1000);
    // Times have no frames to count.
    expect(both({ unit: 'seconds', atRate: true }, 'offset', { statedRate: 96_000 }).read('1')).toBe(48_000);
  });

  it('hang on the sample, as times and lengths do, and frames do not', () => {
    expect(both(form, 'offset').made.needsSurroundings).toBe(true);
    expect(both({ unit: 'seconds' }, 'offset').made.needsSurroundings).toBe(true);
    expect(both({ unit: 'frames', from: 'offset' }, 'end').made.needsSurroundings).toBe(true);
    expect(both({ unit: 'frames' }, 'offset').made.needsSurroundings).toBe(false);
    expect(both({ unit: 'frames' }, 'offset').made.unit).toBe('frames');
  });
});

describe('units of time', () => {
  it('are a thousand to one (SI)', () => {
    expect(timeUnits('seconds').map(([, factor]) => factor)).toEqual([1, 1 / 1000]);
    expect(timeUnits('milliseconds').map(([, factor]) => factor)).toEqual([1000, 1]);
    expect(timeUnits('seconds')[0][0]).toContain('s');
    expect(timeUnits('seconds')[1][0]).toContain('ms');
  });
});
