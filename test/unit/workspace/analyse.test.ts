import { describe, expect, it } from 'vitest';
import { sfzNotation } from '../../../server/sfz/notation';
import { analyse, readInstrument } from '../../../server/workspace/analyse';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { chunk, format, silence, wave } from '../audio/byteFiles';
import { MemoryFiles } from './memoryFiles';

const sound = wave(chunk('fmt ', format(1, 1, 44100, 16)), chunk('data', silence(200)));

/** A disk with the stores that a host keeps for it, and the codes of what is found in a text. */
function host(contents: Record<string, string | Uint8Array>) {
  const files = new MemoryFiles(contents);
  const includes = new IncludeStore(files);
  const samples = new SampleStore(files);
  const source = (text: string) => ({ path: '/set/a.sfz', text, notation: sfzNotation });
  const codes = async (text: string) =>
    (await analyse(source(text), includes, samples)).findings.map(({ code }) => code);
  const forget = (path: string) => {
    includes.forget(path);
    samples.forget(path);
  };
  return { files, includes, samples, source, codes, forget };
}

describe('analysing a text', () => {
  it('finds out about its samples and forgets what changed', async () => {
    const { files, codes, forget } = host({ '/set/other.txt': '' });
    const text = '<region> sample=C4.wav key=60';
    expect(await codes(text)).toEqual(['sample-missing']);
    files.put('/set/C4.wav', sound);
    forget('/set/C4.wav');
    expect(await codes(text)).toEqual([]);
    files.remove('/set/C4.wav');
    files.put('/set/c4.wav', sound);
    forget('/set/C4.wav');
    forget('/set/c4.wav');
    expect(await codes(text)).toEqual(['sample-case']);
  });

  it('reads included files, however deep, from the folder of the main one', async () => {
    const { includes, source } = host({
      '/set/maps/b.sfz': '<group> tune=1 #include "maps/deeper/c.sfz"',
      '/set/maps/deeper/c.sfz': '<region> key=61',
    });
    const instrument = await readInstrument(source('<region> key=60\n#include "maps/b.sfz"'), includes);
    expect([...instrument.regions].map((region) => instrument.lowKey[region])).toEqual([60, 61]);
    expect(instrument.sources.map(({ path }) => path)).toEqual([
      '/set/a.sfz',
      '/set/maps/b.sfz',
      '/set/maps/deeper/c.sfz',
    ]);
  });

  it('tells of included files that are missing, until they come', async () => {
    const { files, codes, forget } = host({ '/set/C4.wav': sound });
    const text = '#include "b.sfz"\n<region> sample=C4.wav key=60';
    expect(await codes(text)).toEqual(['include-missing']);
    files.put('/set/b.sfz', '<global> volume=-3');
    forget('/set/b.sfz');
    expect(await codes(text)).toEqual([]);
  });

  it('refuses files that include one another in a circle', async () => {
    const { codes } = host({ '/set/b.sfz': '#include "a.sfz"', '/set/a.sfz': '' });
    expect(await codes('#include "b.sfz"')).toEqual(['include-cycle']);
  });

  it('ends early when it is stopped', async () => {
    const { files, source, includes, samples } = host({ '/set/C4.wav': sound });
    const stopped = () => true;
    const { findings } = await analyse(source('<region> sample=C4.wav'), includes, samples, {}, stopped);
    expect(findings).toEqual([]);
    expect(files.opened).toEqual([]);
  });
});
