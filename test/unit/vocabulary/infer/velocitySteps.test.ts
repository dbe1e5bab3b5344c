import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

describe('velocities in steps of their own', () => {
  it('are scaled where layers share them out, as in a table', () => {
    const zone = (name: string, low: number, high: number) =>
      `<zone wav="${name}.wav" lo="40" hi="50" vlo="${low}" vhi="${high}"/>`;
    const text = `<m>${zone('fen', 1, 4)}${zone('moor', 5, 8)}</m>`;
    expect(valuesIn(text, 'lovel', 'hivel')).toEqual(['1 64', '65 127']);
  });
});
