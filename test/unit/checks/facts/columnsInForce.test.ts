import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnInForce } from '../../../../server/checks/facts/parameters/columnsInForce';
import { ValueAnswers } from '../../../../server/checks/facts/parameters/valueAnswers';
import { readSfz } from '../../../../server/sfz/read';

const line = fc.constantFrom(
  ...['<global>', '<master>', '<group>', '<region>', '<control>', '<curve>', '<region>', '<region>'],
  ...['volume=1', 'volume=$x', 'gain_cc1=2', 'gain_oncc1=3', 'loop_mode=no_loop', 'loopmode=one_shot'],
  ...['loop_mode=no_lo', 'loop_mode=NO_LOOP', '#define $x 4', 'volume=2 volume=3'],
);
const text = fc.array(line, { maxLength: 30 }).map((lines) => lines.join('\n'));
const names = ['volume', 'gain_oncc1', 'loop_mode', 'tune'];

describe('parameters in force in all headers', () => {
  it('are those that are found header by header', () => {
    fc.assert(
      fc.property(text, (sfz) => {
        const instrument = readSfz(sfz, { path: 'test.sfz' });
        for (const name of names) {
          const number = instrument.names.canonical(instrument.names.idOf(name));
          const column = columnInForce(instrument, name);
          for (let header = 0; header < instrument.headers.count; header++) {
            expect(column?.[header] ?? -1).toBe(instrument.effective(header, number));
          }
        }
      }),
    );
  });

  it('are none where nothing sets them', () => {
    const instrument = readSfz('<group> volume=1\n<region>', { path: 'test.sfz' });
    expect(columnInForce(instrument, 'tune')).toBeUndefined();
    expect([...(columnInForce(instrument, 'volume') ?? [])]).toEqual([0, 0]);
  });
});

describe('answers to values', () => {
  it('are those to their texts, in any order', () => {
    fc.assert(
      fc.property(text, fc.array(fc.nat(40), { maxLength: 40 }), (sfz, order) => {
        const instrument = readSfz(sfz, { path: 'test.sfz' });
        const { count } = instrument.parameters;
        const answers = new ValueAnswers(instrument, (value) => `<${value}>`);
        for (const number of order) {
          const parameter = count === 0 ? -1 : number % count;
          const answer = parameter < 0 ? undefined : `<${instrument.valueText(parameter)}>`;
          expect(answers.of(parameter)).toBe(answer);
        }
      }),
    );
  });
});
