import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

/** Three regions with what stands in each, the loops from 4000 on. */
function regionsWith(inner: (start: number, end: number) => string): string {
  const one = (file: string, low: number, start: number, end: number) =>
    `<voice src="${file}.wav" lo="${low}" hi="${low + 3}" root="${low + 1}">${inner(start, end)}</voice>`;
  return `<box>${one('a', 40, 4000, 9999)}${one('b', 44, 20_000, 21_999)}${one('c', 48, 7000, 30_999)}</box>`;
}

const loops = ['4000 9999 -', '20000 21999 -', '7000 30999 -'];
const read = (text: string) => valuesIn(text, 'loop_start', 'loop_end', 'end');

describe('a start and an end in an element named after what sounds on are those of the loop', () => {
  it.each(['sustain', 'hold', 'loop', 'cycle', 'Schleife', 'boucle', 'bucle', 'anello', 'ring'])(
    'with a length: <%s>',
    (name) => {
      expect(
        read(regionsWith((start, end) => `<${name} from="${start}" length="${end - start + 1}"/>`)),
      ).toEqual(loops);
      expect(
        read(
          regionsWith(
            (start, end) => `<${name}><begin>${start}</begin><len>${end - start + 1}</len></${name}>`,
          ),
        ),
      ).toEqual(loops);
    },
  );

  it.each(['sustain', 'hold', 'loop', 'cycle', 'Schleife', 'boucle', 'bucle', 'anello'])(
    'with an end: <%s>',
    (name) => {
      expect(read(regionsWith((start, end) => `<${name} start="${start}" end="${end}"/>`))).toEqual(loops);
      expect(
        read(regionsWith((start, end) => `<${name}><from>${start}</from><to>${end}</to></${name}>`)),
      ).toEqual(loops);
    },
  );

  it.each(['hold', 'sustain', 'loop'])('with a number of frames: <%s>', (name) => {
    expect(
      read(
        regionsWith(
          (start, end) => `<${name}><from>${start}</from><count>${end - start + 1}</count></${name}>`,
        ),
      ),
    ).toEqual(loops);
  });

  it('but small numbers in <hold> are none', () => {
    expect(read(regionsWith(() => '<hold start="0.5" length="2"/>'))[0]).toMatch(/^- - /);
  });
});
