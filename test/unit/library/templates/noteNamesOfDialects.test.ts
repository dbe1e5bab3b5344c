import { describe, expect, it } from 'vitest';
import { converted } from './dialect';

describe('notes in a template', () => {
  it.each([
    ['Do3 Fa3', 'La#3 Si3', 'Do#3 Mi3'],
    ['c3 f3', 'gb3 b3', 'db3 e3'],
    ['DO3 FA3', 'SOLb3 SI3', 'REb3 MI3'],
    ['Cis3 F3', 'Fis3 H3', 'Cis3 E3'],
  ])('are spelled as those of its examples are: %s, %s', async (first, second, written) => {
    const zone = (ends: string, at: number) => {
      const [low, high] = ends.split(' ');
      return `<tin clip="${at}.wav" low="${low}" high="${high}"/>\n`;
    };
    const template = `<tins><!-- key 60 is C4 -->\n${zone(first, 1)}${zone(second, 2)}</tins>`;
    const { text } = await converted(template, '<region> sample=new.wav lokey=49 hikey=52');
    const [low, high] = written.split(' ');
    expect(text).toContain(`low="${low}" high="${high}"`);
  });
});
