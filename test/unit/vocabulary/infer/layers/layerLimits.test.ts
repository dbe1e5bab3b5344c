import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

/** Two keys with so many files each, below a place that lists limits. */
const bars = (place: string, count: number, said = '', second = count) => {
  const files = (name: string, some: number) =>
    Array.from({ length: some }, (_, at) => `<rec>${name}${at}.wav</rec>`).join('');
  return `<gamelan>${said && `<!-- ${said} -->`}${place}
    <bar lo="50" hi="54" root="52">${files('a', count)}</bar><bar lo="55" hi="59" root="57">${files('b', second)}</bar></gamelan>`;
};
const velocities = (text: string) => valuesIn(text, 'lovel', 'hivel').slice(0, 3);

// The loudest velocity is 127 (MIDI 1.0), and no key stroke has velocity 0.
describe('limits of velocity layers in one list for all', () => {
  it.each([
    ['<touch velocityLimits="40,90"/>', 3, ['1 40', '41 90', '91 127']],
    ['<touch velocityLimits="40 90 127"/>', 3, ['1 40', '41 90', '91 127']],
    ['<layers splits="1;41;91"/>', 3, ['1 40', '41 90', '91 127']],
    ['<anschlag schwellen="40,90"/>', 3, ['1 40', '41 90', '91 127']],
    ['<couches seuils="40,90"/>', 3, ['1 40', '41 90', '91 127']],
    ['<velocityThresholds>40, 90</velocityThresholds>', 3, ['1 40', '41 90', '91 127']],
    ['<touch velocityLimits="40,70,90"/>', 4, ['1 40', '41 70', '71 90']],
  ])('are shared out among the regions of a key in their order: %s', (place, count, expected) => {
    expect(velocities(bars(place, count))).toEqual(expected);
    const told = readInferred(bars(place, count)).decisions.find(({ message }) =>
      message.includes('layers of velocities in their order'),
    );
    expect(told?.isGuess).toBe(true);
    expect(readInferred(bars(place, count)).unread).toEqual([]);
  });

  it('go from the loudest on where the text says so', () => {
    const text = bars('<touch velocityLimits="40,90"/>', 3, 'layer 1 is the loudest, layer 3 the softest');
    expect(velocities(text)).toEqual(['91 127', '41 90', '1 40']);
  });

  it.each([
    ['other numbers of regions', bars('<touch velocityThresholds="40,90"/>', 4)],
    ['unlike numbers of regions', bars('<touch velocityThresholds="40,90"/>', 3, '', 2)],
    ['numbers that fall', bars('<touch velocityThresholds="90,40"/>', 3)],
    ['numbers that no velocity has', bars('<touch velocityThresholds="40,190"/>', 3)],
    ['names that do not speak of limits', bars('<board size="40,90"/>', 3)],
  ])('are none with %s', (_, text) => {
    expect(new Set(velocities(text)).size).toBe(1);
  });
});
