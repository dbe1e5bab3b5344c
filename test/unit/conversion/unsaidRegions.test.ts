import { describe, expect, it } from 'vitest';
import { sfzNotation } from '../../../server/sfz/notation';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { convertInstrument } from '../../../server/workspace/convertInstrument';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from '../workspace/memoryFiles';

const list = { element: 'log', key: '@id', path: '@file' };
const lathe: Vocabulary = {
  name: 'lathe',
  levels: [
    { element: 'lathe', is: 'instrument', parameters: [] },
    {
      element: 'cut',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@log', form: { kind: 'path', list } },
        { parameter: 'lokey', at: '@low', form: { kind: 'key', written: 'number' } },
        {
          parameter: 'trigger',
          at: '@when',
          form: { kind: 'words', words: { down: 'attack', up: 'release' } },
        },
      ],
    },
  ],
};

async function written(text: string) {
  const source = { instrument: sfzNotation.read(text, { path: 'a.sfz' }), folder: undefined };
  const { text: xml, notes } = await convertInstrument(
    source,
    vocabularyNotation(lathe),
    {},
    new SampleStore(new MemoryFiles()),
  );
  return { cuts: xml.match(/<(?:cut|log) [^>]*>/g), notes, xml };
}

describe('a region that a vocabulary cannot say as what it is', () => {
  it('is left out with its sample, and told once', async () => {
    const { cuts, notes } = await written(
      '<region> sample=a.wav lokey=30\n<group> trigger=first\n<region> sample=b.wav lokey=31\n<region> sample=c.wav lokey=32\n',
    );
    expect(cuts).toEqual(['<log id="s1" file="a.wav"/>', '<cut log="s1" low="30"/>']);
    expect(notes.map(({ kind, message }) => [kind, message])).toEqual([
      [
        'dropped',
        '2 regions sound for the first key alone (trigger=first), which this notation cannot say, so they are left out.',
      ],
    ]);
  });

  it('is written where there is a word for it', async () => {
    const { cuts, notes } = await written('<region> sample=a.wav lokey=30 trigger=release\n');
    expect(cuts?.[1]).toBe('<cut log="s1" low="30" when="up"/>');
    expect(notes).toEqual([]);
  });

  it('is refused where no other is left', async () => {
    await expect(written('<region> sample=a.wav lokey=30 trigger=legato\n')).rejects.toThrow(
      'for later keys alone',
    );
  });

  it('is none in a notation that says all', async () => {
    const instrument = sfzNotation.read('<region> sample=a.wav trigger=legato\n', { path: 'a.sfz' });
    const { text } = await convertInstrument(
      { instrument, folder: undefined },
      sfzNotation,
      {},
      new SampleStore(new MemoryFiles()),
    );
    expect(text).toContain('trigger=legato');
  });
});
