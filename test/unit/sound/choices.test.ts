import { expect, it } from 'vitest';
import { choices } from '../../../server/sound/choices';

it('says of every choice what it is, why, and where it comes from', () => {
  expect(choices.length).toBeGreaterThan(20);
  for (const { what, value, why, source } of choices) {
    expect([what, String(value), why, source].every((text) => text.trim() !== '')).toBe(true);
    expect(why).toMatch(/\.$/);
  }
  expect(new Set(choices.map(({ what }) => what)).size).toBe(choices.length);
});
