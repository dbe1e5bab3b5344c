import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Change } from '../../../server/model/notation';
import { readSfz } from '../../../server/sfz/read';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';

/** Velocities as a range of portions, and keys as a range with something between. */
function cheese(between: string): Vocabulary {
  return {
    name: 'Dairy shelf',
    levels: [
      { element: 'rack', is: 'instrument', parameters: [] },
      {
        element: 'wheel',
        is: 'region',
        parameters: [
          { parameter: 'sample', at: '@milk', form: { kind: 'path' } },
          { parameter: 'lokey', at: '@rind', part: 1, between, form: { kind: 'key', written: 'number' } },
          { parameter: 'hikey', at: '@rind', part: 2, between, form: { kind: 'key', written: 'number' } },
          { parameter: 'lovel', at: '@salt', part: 1, form: { kind: 'velocity', most: 1 } },
          { parameter: 'hivel', at: '@salt', part: 2, form: { kind: 'velocity', most: 1 } },
        ],
      },
    ],
  };
}

function changed(vocabulary: Vocabulary, text: string, change: (first: number) => Change) {
  const notation = vocabularyNotation(vocabulary);
  const instrument = notation.read(text, { path: 'a.xml' });
  const { edits, notes } = notation.edit(instrument, change(instrument.regions[0]));
  const [edit] = edits;
  const result = text.slice(0, edit?.start) + (edit?.newText ?? '') + text.slice(edit?.end ?? 0);
  const again = notation.read(result, { path: 'a.xml' });
  const regions = [...again.regions].map((region) => effectiveValues(again, region));
  return { result, notes, regions };
}

const set =
  (name: string, value: string) =>
  (header: number): Change => ({ kind: 'set', header, name, value });

// Many languages write a comma before decimals (ISO 80000-1:2009, 7.3.2: the decimal sign is a comma or a point on the line).
describe('numbers with a comma before their decimals', () => {
  it('stay so in both ends of a range', () => {
    const text = '<rack>\n  <wheel milk="a.wav" salt="0,2-0,6"/>\n</rack>\n';
    // Of velocities from 0 to 1, 127 is 1: 0.3 · 127 is 38.1, 0.6 · 127 is 76.2 and 0.7 · 127 is 88.9.
    const { result, regions } = changed(cheese('-'), text, set('lovel', '38'));
    expect(result).toMatch(/salt="0,3-0,6"/);
    expect(regions[0]).toMatchObject({ lovel: 38, hivel: 76 });
    expect(changed(cheese('-'), text, set('hivel', '89')).result).toMatch(/salt="0,2-0,7"/);
  });

  it('are written so where a range is new', () => {
    const text = '<rack>\n  <wheel milk="a.wav"/>\n  <wheel milk="b.wav" salt="0,2-0,5"/>\n</rack>\n';
    expect(changed(cheese('-'), text, set('lovel', '38')).result).toContain('milk="a.wav" salt="0,3-1"');
    const instrument = readSfz('<region> sample=2.1 c.wav lovel=38 hivel=89', { path: 'b.sfz' });
    const offset = text.indexOf('</rack>');
    const { result } = changed(cheese('-'), text, () => ({ kind: 'insert', offset, instrument }));
    expect(result).toContain('<wheel milk="2.1 c.wav" salt="0,3-0,7"/>');
  });

  it('are left to points where commas part ranges', () => {
    const text = '<rack>\n  <wheel milk="a.wav" rind="36,48"/>\n</rack>\n';
    const { result, regions } = changed(cheese(','), text, set('lovel', '38'));
    expect(result).toContain('salt="0.3-1"');
    expect(regions[0]).toMatchObject({ lovel: 38, lokey: 36, hikey: 48 });
  });

  it('are left to points where a range has these', () => {
    const text = '<rack>\n  <wheel milk="a.wav" salt="0.2-0.5"/>\n</rack>\n';
    expect(changed(cheese('-'), text, set('hivel', '89')).result).toContain('salt="0.2-0.7"');
  });
});
