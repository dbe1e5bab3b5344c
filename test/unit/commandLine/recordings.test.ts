import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { wav } from '../soundfont/writtenFonts';
import { folderWith, run } from './runInFolder';

/** A plucked tone of a key (equal temperament, A4 = 440 Hz), a third of a second. */
function tone(key: number, level = 0.5): Uint8Array {
  const rate = 22050;
  const hertz = 440 * 2 ** ((key - 69) / 12);
  const frames = Array.from({ length: rate / 3 }, (_, at) => {
    const sum = [1, 2, 3].reduce(
      (all, part) => all + Math.sin((2 * Math.PI * hertz * part * at) / rate) / part,
      0,
    );
    return Math.round(16000 * level * sum * Math.exp((-4 * at) / rate));
  });
  return wav([frames], { rate });
}

const folder = {
  'Lute/do3 p.wav': tone(60, 0.1),
  'Lute/do3 f.wav': tone(60),
  'Lute/sol3 p.wav': tone(67, 0.1),
  'Lute/sol3 f.wav': tone(67),
  'Lute/room tone.wav': wav([Array.from({ length: 4000 }, (_, at) => ((at * 7919) % 401) - 200)], {
    rate: 22050,
  }),
  'Lute/read me.txt': 'no audio',
};

describe('a folder of recordings', () => {
  it('is listed as regions, with notes on what was decided', async () => {
    const { out, status } = await run(folderWith(folder), ['regions', 'Lute', '--format', 'json']);
    expect(status).toBe(0);
    const { format, regions, notes } = JSON.parse(out);
    expect(format).toBe('table');
    expect(regions).toEqual(
      [
        { sample: 'do3 p.wav', lokey: 57, hikey: 63, pitch_keycenter: 60, lovel: 1, hivel: 63 },
        { sample: 'do3 f.wav', lokey: 57, hikey: 63, pitch_keycenter: 60, lovel: 64, hivel: 127 },
        { sample: 'sol3 p.wav', lokey: 64, hikey: 70, pitch_keycenter: 67, lovel: 1, hivel: 63 },
        { sample: 'sol3 f.wav', lokey: 64, hikey: 70, pitch_keycenter: 67, lovel: 64, hivel: 127 },
      ].map(({ lovel, hivel, ...rest }) => ({
        ...rest,
        ...(lovel > 1 && { lovel }),
        ...(hivel < 127 && { hivel }),
      })),
    );
    const messages = notes.map(({ message }: { message: string }) => message).join('\n');
    expect(messages).toContain('Middle C is called C3');
    expect(messages).toContain('"room tone.wav" is left out');
  });

  it('is converted, with paths from where the text goes', async () => {
    const place = folderWith(folder);
    const { status } = await run(place, ['convert', 'Lute', '--to', 'sfz', '--output', 'lute.sfz']);
    expect(status).toBe(0);
    expect(readFileSync(join(place, 'lute.sfz'), 'utf8')).toContain('sample=Lute/sol3 f.wav');
    expect(await run(place, ['check', 'lute.sfz'])).toMatchObject({ status: 0 });
  });

  it.each([
    ['nothing', { 'F/a.txt': '' }, 'there is no audio file in this folder that can be read'],
    ['broken files', { 'F/a.wav': 'no wave' }, 'there is no audio file in this folder that can be read'],
    ['silence', { 'F/a.wav': wav([new Array(1000).fill(0)]) }, 'say which notes they are'],
  ])('of %s is refused in one line', async (_, files, why) => {
    const { status, error } = await run(folderWith(files), ['regions', 'F']);
    expect(status).toBe(2);
    expect(error.trim().split('\n').at(-1)).toContain(why);
  });
});
