import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const kit = (heading: string, ...modes: string[]) =>
  table(`Sample | Key | ${heading}`, ...modes.map((mode, at) => `hit_${at}.wav | ${50 + at} | ${mode}`));
const modesOf = (text: string) => regions(text).map(({ loop_mode }) => loop_mode);

describe('a column whose cells say how samples play', () => {
  it.each(['Play', 'Mode', 'Playback', 'Trigger', 'Behaviour', 'Wiedergabe', 'Use'])(
    'is heard whatever its heading: %s',
    (heading) => {
      expect(modesOf(kit(heading, 'one-shot', 'loop', 'one-shot'))).toEqual([
        'one_shot',
        'loop_continuous',
        'one_shot',
      ]);
    },
  );

  it('is heard in other languages, beside a sign for no', () => {
    expect(modesOf(kit('Verhalten', 'einmal', 'Schleife', '-'))).toEqual([
      'one_shot',
      'loop_continuous',
      'no_loop',
    ]);
  });

  it('is none where the cells only say yes and no, or what is held', () => {
    expect(modesOf(kit('Play', 'yes', 'yes', 'yes'))).toEqual([undefined, undefined, undefined]);
    expect(modesOf(kit('Technique', 'sustain', 'held', 'sustain'))).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('sets nothing where a column of loops says so already, and is told', () => {
    const text = table('Sample | Key | Loop | Play', 'a.wav | 50 | off | one-shot', 'b.wav | 51 | on | loop');
    expect(modesOf(text)).toEqual(['no_loop', 'loop_continuous']);
    expect(notesOf(text).join('\n')).toMatch(/ignored: What stands in column "Play" is not used/);
  });
});
