import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

describe('elements that are regions whatever they are called', () => {
  it('are those that refer to a list whose names speak of ends', () => {
    const text = `<barn><tapes><tape code="n1" posto="a/one.wav"/><tape code="n2" posto="a/two.wav"/></tapes>
      <part tape="n2" low="40" high="45"/><part tape="n1" low="46" high="50"/></barn>`;
    expect(valuesIn(text, 'sample', 'lokey', 'hikey')).toEqual(['a/two.wav 40 45', 'a/one.wav 46 50']);
  });

  it('are those that are named like a part of a panel and repeat with files and keys', () => {
    const text =
      '<barn><peau><prise>a.wav</prise><touche>36</touche></peau><peau><prise>b.wav</prise><touche>38</touche></peau></barn>';
    expect(valuesIn(text, 'sample', 'lokey')).toEqual(['a.wav 36', 'b.wav 38']);
  });

  it('have levels in the unit that stands beside each, hyphens or not', () => {
    const text = `<barn><beam wave="a.wav" key="40"><level unit="pour-cent">50</level></beam>
      <beam wave="b.wav" key="41"><level unit="dB">-4</level></beam></barn>`;
    // IEC 60027-3: half the amplitude is 20 · log10(0.5) dB.
    expect(valuesIn(text, 'volume')).toEqual(['-6.0206', '-4']);
  });
});
