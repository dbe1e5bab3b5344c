import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** Two layers around two drums each, as an element around them tells the velocities. */
function kitWith(settings: string, layerOf: (low: number, high: number) => string, child = ''): string {
  const drums = '<drum key="36" snd="a.wav"/><drum key="38" snd="b.wav"/>';
  return `<kit ${settings}>${child}<layer ${layerOf(1, 50)}>${drums}</layer><layer ${layerOf(51, 100)}>${drums}</layer></kit>`;
}

describe('the least and the greatest velocity of the outermost element', () => {
  const expected = ['36 1 64', '38 1 64', '36 65 127', '38 65 127'];
  const range = (low: number, high: number) => `velocity="${low}-${high}"`;
  const ends = (low: number, high: number) => `minVel="${low}" maxVel="${high}"`;

  it.each([
    ['velocityLowest="1" velocityHighest="100"', range, ''],
    ['velMin="1" velMax="100"', ends, ''],
    ['minVelocity="0" maxVelocity="100"', ends, ''],
    ['name="x"', range, '<settings velocityMin="1" velocityMax="100"/>'],
  ])('are the scale of those within: %s', (settings, layer, child) => {
    const text = kitWith(settings, layer, child);
    const read = valuesIn(text, 'lokey', 'lovel', 'hivel');
    for (const [at, values] of read.entries()) {
      const [key, low, high] = values.split(' ').map(Number);
      const [wantedKey, wantedLow, wantedHigh] = (expected[at] ?? '').split(' ').map(Number);
      expect(key).toBe(wantedKey);
      expect(Math.abs((low ?? 0) - (wantedLow ?? 0))).toBeLessThanOrEqual(1);
      expect(Math.abs((high ?? 0) - (wantedHigh ?? 0))).toBeLessThanOrEqual(1);
    }
    const { decisions } = readInferred(text);
    expect(decisions.some(({ message, isGuess }) => message.includes('0 to 100') && isGuess)).toBe(true);
    expect(decisions.map(({ message }) => message).join()).not.toContain('is not read');
  });

  it('are none where those within lie above', () => {
    const text = kitWith('velMin="1" velMax="64"', ends);
    expect(valuesIn(text, 'hivel').at(-1)).not.toBe('127');
  });
});
