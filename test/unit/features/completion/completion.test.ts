import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completionsAt, documentationOf } from '../../../../server/features/completion/completion';
import type { CompletionOffer } from '../../../../server/features/completion/completionOffer';
import { fitPattern } from '../../../../server/features/completion/fitPattern';
import { resolveOpcode } from '../../../../server/model/opcodes/resolve';
import { documentWithMark } from '../documentWithMark';

const files = {
  '/music/Samples/Soft A#3 (take 2).wav': '',
  '/music/Samples/soft_c4.wav': '',
  '/music/Samples/soft_d4.FLAC': '',
  '/music/Samples/notes.txt': '',
  '/music/Samples/inner/x.wav': '',
  '/music/parts/keys.sfzh': '',
  '/music/main.sfz': '',
  '/music/read me.md': '',
};

async function offers(marked: string, format: 'sfz' | 'xml' = 'sfz'): Promise<CompletionOffer[]> {
  const { document, offset } = await documentWithMark(marked, files, format);
  return completionsAt(document, offset);
}

async function labels(marked: string, format: 'sfz' | 'xml' = 'sfz'): Promise<string[]> {
  const sorted = (await offers(marked, format)).sort(
    (a, b) => a.rank - b.rank || (a.label < b.label ? -1 : 1),
  );
  return sorted.map(({ label }) => label);
}

/** The text after an offer was taken, with the cursor at `|`. */
async function taken(marked: string, label: string, format: 'sfz' | 'xml' = 'sfz'): Promise<string> {
  const { document, offset, text } = await documentWithMark(marked, files, format);
  const offer = (await completionsAt(document, offset)).find((one) => one.label === label);
  if (!offer) throw new Error(`${label} is not offered`);
  const [before, after] = offer.insert;
  return `${text.slice(0, offer.start)}${before}|${after}${text.slice(offer.end)}`;
}

describe('completion of headers', () => {
  it('offers those of the format, regions first, and closes the tag', async () => {
    expect((await labels('<$0')).slice(0, 3)).toEqual(['region', 'group', 'control']);
    expect(await taken('<re$0\n', 'region')).toBe('<region>|\n');
    expect(await taken('<re$0>\n', 'region')).toBe('<region>|\n');
    expect(await taken('<instrument><$0\n', 'region', 'xml')).toBe('<instrument><region |/>\n');
    expect(await taken('<instrument><re$0 key="60"/>', 'region', 'xml')).toBe(
      '<instrument><region| key="60"/>',
    );
    // Editors close a bracket as soon as it is opened.
    expect(await taken('<instrument><re$0>\n', 'region', 'xml')).toBe('<instrument><region |/>\n');
    expect(await taken('<instrument><gr$0>\n', 'group', 'xml')).toBe('<instrument><group |></group>\n');
    expect(await taken('<instrument><gr$0>\n</group>', 'group', 'xml')).toBe(
      '<instrument><group|>\n</group>',
    );
  });

  it('offers them beside opcodes where a notation can have one there', async () => {
    expect(await taken('key=60\n$0', '<group>')).toBe('key=60\n<group>|');
    expect(await labels('<instrument><region $0/></instrument>', 'xml')).not.toContain('<group>');
  });
});

describe('completion of opcodes', () => {
  it('offers what the header takes, with what is set already last', async () => {
    const inRegion = await labels('<region> lokey=60 hi$0');
    expect(inRegion).toContain('hikey');
    expect(inRegion).not.toContain('default_path');
    expect(inRegion.at(-1)).toBe('lokey');
    expect(await labels('<control> $0')).toContain('default_path');
    const lokey = (await offers('<region> lokey=60 $0')).find(({ label }) => label === 'lokey');
    expect(lokey?.remark).toBe('set above');
  });

  it('writes the sign that the notation puts before a value', async () => {
    expect(await taken('<region> hik$0', 'hikey')).toBe('<region> hikey=|');
    expect(await taken('<region> hik$0=60', 'hikey')).toBe('<region> hikey|=60');
    expect(await taken('<instrument><region hik$0/></instrument>', 'hikey', 'xml')).toBe(
      '<instrument><region hikey="|"/></instrument>',
    );
  });

  it('puts in the numbers that are typed', async () => {
    expect(await labels('<region> locc64$0')).toContain('locc64');
    const blank = (await offers('<region> lo$0')).find(({ label }) => label === 'loccN');
    expect(blank?.blanks).toEqual([{ start: 4, end: 5 }]);
    expect(fitPattern('egN_levelX', 'eg03_l')).toEqual({
      name: 'eg03_levelX',
      blanks: [{ start: 10, end: 11 }],
    });
    expect(fitPattern('lfoN_freq_onccX', 'cutoff')).toMatchObject({ name: 'lfoN_freq_onccX' });
  });

  it('documents every opcode that it offers', async () => {
    for (const { documented, label } of await offers('<region> $0')) {
      expect(documentationOf(documented as string), label).toMatch(/\w/);
    }
  });

  it('offers names that the catalogue knows once their numbers are typed', async () => {
    for (const { kind, label } of await offers('<region> $0')) {
      if (kind === 'opcode') expect(resolveOpcode(label.replace(/[NXYZ]+/g, '1')), label).toBeDefined();
    }
  });
});

describe('completion of values', () => {
  it('offers the options of an opcode', async () => {
    // The loop modes of the public documentation of the open SFZ format.
    expect((await labels('<region> loop_mode=$0')).sort()).toEqual([
      'loop_continuous',
      'loop_sustain',
      'no_loop',
      'one_shot',
    ]);
    expect(await taken('<region> loop_mode=one$0 key=60', 'one_shot')).toBe(
      '<region> loop_mode=one_shot| key=60',
    );
    expect(await taken('<instrument><region trigger="$0"/></instrument>', 'release', 'xml')).toBe(
      '<instrument><region trigger="release"|/></instrument>',
    );
  });

  it('offers note names where one is begun', async () => {
    expect(await labels('<region> key=$0')).toEqual([]);
    const keys = await offers('<region> key=c$0');
    // MIDI 1.0 numbers keys 0 to 127; SFZ calls 60 c4.
    expect(keys).toHaveLength(128);
    expect(keys.find(({ label }) => label === 'c4')?.detail).toBe('key 60');
  });

  it('offers the variables that were defined before', async () => {
    expect(await labels('#define $LOW 36\n#define $HIGH 60\n<region> key=$$0\n#define $LATE 1')).toEqual([
      '$HIGH',
      '$LOW',
    ]);
  });
});

describe('completion of paths', () => {
  it('goes folder by folder, with audio alone', async () => {
    expect(await labels('<region> sample=S$0')).toEqual(['Samples/', 'parts/']);
    expect(await labels('<region> sample=Samples/$0')).toEqual([
      'Soft A#3 (take 2).wav',
      'soft_c4.wav',
      'soft_d4.FLAC',
      'inner/',
    ]);
  });

  it('puts files that a region uses behind the others', async () => {
    const text = '<region> sample=Samples/soft_c4.wav\n<region> sample=Samples/$0';
    expect(await labels(text)).toEqual(['Soft A#3 (take 2).wav', 'soft_d4.FLAC', 'inner/', 'soft_c4.wav']);
  });

  it('knows the prefix that the text sets, which can end within a name', async () => {
    const text = '<control> default_path=Samples/soft_\n<region> sample=$0';
    expect((await labels(text)).filter((one) => !one.startsWith('*'))).toEqual(['c4.wav', 'd4.FLAC']);
    expect(await taken(text, 'c4.wav')).toBe('<control> default_path=Samples/soft_\n<region> sample=c4.wav|');
  });

  it('keeps to the slash that is in use and takes the whole value away', async () => {
    expect(await taken('<region> sample=Samples\\$0old name.wav key=60', 'inner\\')).toBe(
      '<region> sample=Samples\\inner\\| key=60',
    );
    expect(await taken('<region> sample=Samples/Soft A$0 key=60', 'Soft A#3 (take 2).wav')).toBe(
      '<region> sample=Samples/Soft A#3 (take 2).wav| key=60',
    );
  });

  it('offers the sounds that need no file', async () => {
    expect(await labels('<region> sample=*$0')).toContain('*sine');
  });

  it('offers files to include, texts of instruments first, never the document itself', async () => {
    expect(await labels('#include "$0"')).toEqual(['Samples/', 'parts/', 'read me.md']);
    expect(await labels('#include "parts/$0"')).toEqual(['keys.sfzh']);
    expect(await taken('#include "parts/$0"', 'keys.sfzh')).toBe('#include "parts/keys.sfzh"|');
    // Behind a folder there is more to choose.
    expect(await taken('#include "$0"', 'parts/')).toBe('#include "parts/|"');
  });
});

describe('completion anywhere', () => {
  it('never fails and replaces text around the cursor on its line', async () => {
    const pieces = fc.constantFrom(
      '<',
      '>',
      'region',
      ' ',
      '\n',
      'key',
      '=',
      '$A',
      '"',
      '#include ',
      'sample=',
      'Samples/',
      '/',
      '\\',
      '//',
      '/*',
      '*/',
      '*',
      '60',
      '-',
      "'",
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(pieces, { maxLength: 14 }),
        fc.nat(60),
        fc.boolean(),
        async (parts, at, xml) => {
          const text = parts.join('');
          const mark = Math.min(at, text.length);
          const marked = `${text.slice(0, mark)}$0${text.slice(mark)}`;
          const { document, offset } = await documentWithMark(marked, files, xml ? 'xml' : 'sfz');
          const whole = document.instrument.sources[0].text;
          const isAround = ({ start, end }: { start: number; end: number }) =>
            start >= 0 && start <= offset && end >= offset && end <= whole.length;
          // One expectation for all: there are hundreds of completions at each place.
          const wrong = (await completionsAt(document, offset)).filter(
            (one) => !isAround(one) || /[\r\n]/.test(whole.slice(one.start, one.end)),
          );
          expect(wrong).toEqual([]);
        },
      ),
      { numRuns: 150 },
    );
  });
});
