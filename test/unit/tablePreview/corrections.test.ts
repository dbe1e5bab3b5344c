import { expect, it } from 'vitest';
import { RememberedCorrections } from '../../../client/tablePreview/corrections';

/** What the editor keeps for an extension, as JSON between two starts. */
function store() {
  let kept: Record<string, string> = {};
  return {
    keys: () => Object.keys(kept),
    get: (key: string, otherwise?: unknown) => (kept[key] === undefined ? otherwise : JSON.parse(kept[key])),
    update: async (key: string, value: unknown) => {
      const { [key]: _, ...rest } = kept;
      kept = value === undefined ? rest : { ...rest, [key]: JSON.stringify(value) };
    },
  };
}

it('keeps corrections by the headings that they were made for, until they are forgotten', async () => {
  const memento = store();
  const corrections = new RememberedCorrections(memento);
  await corrections.remember('name\ta\tb', { columns: [[1, 'lokey']], middleC: 'C3' });
  await corrections.remember('other', { columns: [[0, 'sample']] });
  await corrections.remember('scaled', { columns: [], scales: [[2, 'percent']] });
  await corrections.remember('', { middleC: 'C5' });
  const later = new RememberedCorrections(memento);
  expect(later.find('name\ta\tb')).toEqual({ columns: [[1, 'lokey']], middleC: 'C3' });
  expect(later.find('')).toBeUndefined();
  expect(later.find('name\ta')).toBeUndefined();
  await later.remember('other', { columns: [] });
  expect(later.find('other')).toBeUndefined();
  expect(later.find('scaled')).toEqual({ columns: [], scales: [[2, 'percent']] });
  expect(await later.forgetAll()).toBe(2);
  expect(later.find('name\ta\tb')).toBeUndefined();
});

it('forgets the oldest first where there are very many', async () => {
  const corrections = new RememberedCorrections(store());
  for (let at = 0; at < 205; at++) await corrections.remember(`heading ${at}`, { middleC: 'C3' });
  expect(corrections.find('heading 4')).toBeUndefined();
  expect(corrections.find('heading 5')).toEqual({ middleC: 'C3' });
  expect(corrections.find('heading 204')).toEqual({ middleC: 'C3' });
});
