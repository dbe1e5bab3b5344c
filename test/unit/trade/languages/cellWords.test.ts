import { describe, expect, it } from 'vitest';
import { saysNone } from '../../../../server/trade/languages/cellWords';
import { isUntunedWord } from '../../../../server/vocabulary/infer/values/plausible';

// Words from dictionaries of each language (from memory).
describe('words for a value that is not there', () => {
  it.each([
    'none',
    'N/A',
    '-',
    '—',
    'keine',
    'Aucune',
    'rien',
    'ninguno',
    'nessuna',
    'não',
    'brak',
    'ingen',
    'なし',
  ])('hears that %s says so', (text) => {
    expect(saysNone(text)).toBe(true);
    expect(isUntunedWord(text)).toBe(true);
  });

  it.each(['0', '1', 'n', 'A', 'open', 'C3', ''])('takes %s for a value', (text) => {
    expect(saysNone(text)).toBe(false);
  });
});
