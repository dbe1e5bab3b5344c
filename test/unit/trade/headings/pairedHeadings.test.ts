import { describe, expect, it } from 'vitest';
import { pairedHeadings } from '../../../../server/trade/headings/pairedHeadings';

// Words from memory.
describe('headings that give the two ends of a range beside each other', () => {
  it.each([
    ['De la note', 'À la note', 'keys'],
    ['De la note', 'Jusqu’à la note', 'keys'],
    ['À partir de la touche', "Jusqu'à la touche", 'keys'],
    ['Da nota', 'Até a nota', 'keys'],
    ['Desde la tecla', 'Hasta la tecla', 'keys'],
    ['Dalla nota', 'Alla nota', 'keys'],
    ['De la nota', 'Fins a la nota', 'keys'],
    ['Von Taste', 'Bis Taste', 'keys'],
    ['Van toets', 'Tot en met toets', 'keys'],
    ['Från tangent', 'Till tangent', 'keys'],
    ['Od klawisza', 'Do klawisza', 'keys'],
    ['De la vélocité', 'À la vélocité', 'velocities'],
    ['From velocity', 'To velocity', 'velocities'],
  ])('%s, %s', (low, high, subject) => {
    expect(pairedHeadings(low, high)).toBe(subject);
    // The other way round they say nothing.
    expect(pairedHeadings(high, low)).toBeUndefined();
  });

  it.each([
    ['De la note', 'Note'],
    ['De la note', 'À la vélocité'],
    ['De la note de base', 'À la note'],
    ['Da nota', 'Bis Taste'],
    ['From', 'To'],
    ['From the second note of the loop', 'To note'],
  ])('takes %s, %s for none', (low, high) => {
    expect(pairedHeadings(low, high)).toBeUndefined();
  });
});
