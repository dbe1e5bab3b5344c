import { describe, expect, it } from 'vitest';
import { Generator as g } from '../../../server/soundfont/generators';
import { readFont } from '../../../server/soundfont/read/readFont';
import { readerOf, text, u16, u32 } from '../audio/byteFiles';
import type { Parts, TestFont } from './fontBytes';
import { fontBytes, simpleFont, tone } from './fontBytes';
import { reasonOf, regionsOf, viewOf } from './readFonts';

// Layout and rules: SoundFont Technical Specification 2.01 and 2.04; sections are named where they count.

describe('reading a SoundFont', () => {
  it('finds version, texts, presets, instruments and samples (sections 5 to 7)', async () => {
    const { font, presets } = await viewOf(
      simpleFont([], { version: [2, 4], info: [['ICOP', 'Free for all']] }),
    );
    expect([font.major, font.minor]).toEqual([2, 4]);
    expect(font.info.get('ICOP')).toBe('Free for all');
    expect(presets.map(({ name, bank, program }) => [name, bank, program])).toEqual([['Reed', 0, 0]]);
    expect(font.samples[0]).toEqual({
      name: 'Reed C4',
      start: 0,
      end: 200,
      loopStart: 40,
      loopEnd: 160,
      rate: 44100,
      rootKey: 60,
      correctionCents: 0,
      link: 0,
      type: 1,
    });
    expect(font.pool.frames).toBe(246);
    expect(font.problems).toEqual([]);
  });

  it('orders presets by bank and program', async () => {
    const zones = [{ gens: [[g.instrument, 0] as [number, number]] }];
    const { presets } = await viewOf(
      simpleFont([], {
        presets: [
          { name: 'Drums', bank: 128, zones },
          { name: 'B', program: 5, zones },
          { name: 'A', program: 1, zones },
        ],
      }),
    );
    expect(presets.map(({ name }) => name)).toEqual(['A', 'B', 'Drums']);
  });

  it('takes the low byte of a range as the lowest key, whatever the text of the specification says (section 8.1.2)', async () => {
    const { regions } = await regionsOf(
      simpleFont([
        [g.keyRange, [48, 72]],
        [g.velocityRange, [10, 100]],
      ]),
    );
    expect(regions[0]).toMatchObject({ lokey: 48, hikey: 72, lovel: 10, hivel: 100 });
  });

  it('ignores a range out of place, and what stands behind the end of a zone, and says so', async () => {
    const bytes = simpleFont([], {
      instruments: [
        {
          name: 'Odd',
          zones: [
            {
              gens: [
                [g.pan, 100],
                [g.keyRange, [48, 72]],
                [g.sample, 0],
                [g.attenuation, 100],
              ],
            },
          ],
        },
      ],
    });
    const { regions, notes } = await regionsOf(bytes);
    expect(regions[0]).toMatchObject({ pan: 20 });
    expect(regions[0]).not.toHaveProperty('lokey');
    expect(regions[0]).not.toHaveProperty('volume');
    expect(notes.map(({ message }) => message).join(' ')).toMatch(
      /key range that is not first.*after the end/,
    );
  });

  it('lets a zone replace its global zone, and a preset add to both (sections 7.3, 9.4)', async () => {
    const bytes = simpleFont([], {
      presets: [
        {
          name: 'P',
          zones: [
            { gens: [[g.attenuation, 7]] },
            {
              gens: [
                [g.keyRange, [50, 90]],
                [g.attenuation, 10],
                [g.instrument, 0],
              ],
            },
            {
              gens: [
                [g.keyRange, [91, 127]],
                [g.instrument, 0],
              ],
            },
          ],
        },
      ],
      instruments: [
        {
          name: 'I',
          zones: [
            {
              gens: [
                [g.attenuation, 300],
                [g.pan, 250],
              ],
            },
            {
              gens: [
                [g.keyRange, [40, 60]],
                [g.attenuation, 100],
                [g.sample, 0],
              ],
            },
            {
              gens: [
                [g.keyRange, [61, 100]],
                [g.sample, 0],
              ],
            },
          ],
        },
      ],
    });
    const { regions } = await regionsOf(bytes);
    expect(regions.map(({ lokey, hikey, volume, pan }) => [lokey, hikey, volume, pan])).toEqual([
      [50, 60, -11, 50],
      [61, 90, -31, 50],
      [91, 100, -30.7, 50],
    ]);
  });

  it('takes no notice in presets of what only instruments can say (section 8.1.3)', async () => {
    const { regions } = await regionsOf(
      simpleFont([], {
        presetGens: [
          [g.rootKey, 72],
          [g.sampleModes, 1],
        ],
      }),
    );
    expect(regions[0]).toMatchObject({ pitch_keycenter: 60, loop_mode: 'no_loop' });
  });

  it('passes over zones that name nothing, and a preset without zones', async () => {
    const bytes = simpleFont([], {
      presets: [
        { name: 'P', zones: [{ gens: [[g.instrument, 0]] }, { gens: [[g.pan, 5]] }] },
        { name: 'Empty', program: 1, zones: [] },
      ],
    });
    const { regions, notes } = await regionsOf(bytes);
    expect(regions).toHaveLength(1);
    expect(notes.map(({ message }) => message)).toContain('A zone that names no instrument is not used.');
    expect((await regionsOf(bytes, 1)).regions).toEqual([]);
  });

  it('joins low bytes to 24 bits only where version and size allow (2.04, section 6.2)', async () => {
    const samples = [{ name: 'S', frames: tone(60, 20), low: tone(60, 20).map((_, at) => at) }];
    expect((await viewOf(simpleFont([], { samples, version: [2, 4] }))).font.lowBytesStart).toBeDefined();
    const early = (await viewOf(simpleFont([], { samples, version: [2, 1] }))).font;
    expect(early.lowBytesStart).toBeUndefined();
    expect(early.problems.join()).toMatch(/version 2.01/);
    const change = ({ sdta }: Parts) => sdta[1]![1].splice(0, 10);
    const short = (await viewOf(simpleFont([], { samples, version: [2, 4], change }))).font;
    expect(short.lowBytesStart).toBeUndefined();
    expect(short.problems.join()).toMatch(/there are 96 for 106 frames/);
  });

  it('leaves out samples of a sound card, of no frames and beyond the audio, and says so', async () => {
    const zones = [0, 1, 2].map((sample) => ({ gens: [[g.sample, sample] as [number, number]] }));
    const bytes = fontBytes({
      presets: [{ name: 'P', zones: [{ gens: [[g.instrument, 0]] }] }],
      instruments: [{ name: 'I', zones }],
      samples: [
        { name: 'Card', frames: tone(60, 20), type: 0x8001 },
        { name: 'None', frames: [] },
        { name: 'Far', frames: tone(60, 20) },
      ],
      change: ({ pdta }) => {
        const shdr = pdta.at(-1)![1];
        shdr.splice(2 * 46 + 24, 4, ...u32(99_999));
      },
    });
    const { regions, notes } = await regionsOf(bytes);
    expect(regions).toEqual([]);
    const messages = notes.filter(({ kind }) => kind === 'dropped').map(({ message }) => message);
    expect(messages).toHaveLength(3);
    expect(messages.join()).toMatch(/"Card", which lies in the memory.*"None", which has no frames.*99999/);
  });
});

describe('rejecting a SoundFont', () => {
  const changed = (change: NonNullable<TestFont['change']>) => reasonOf(simpleFont([], { change }));
  const list = (parts: Parts, name: string) => parts.pdta.find((one) => one[0] === name)!;

  it('accepts the font that the others are made from', async () => {
    expect(await changed(() => {})).toBe('');
  });

  // SoundFont Technical Specification 2.04, sections 7 and 10.
  it.each<[string, NonNullable<TestFont['change']>, RegExp]>([
    ['no version', ({ info }) => info.shift(), /version \(ifil\) is missing/],
    [
      'a version of another size',
      ({ info }) => info[0]![1].push(0, 0),
      /ifil\) at byte 32 has 6 bytes instead of 4/,
    ],
    ['another version', ({ info }) => info[0]!.splice(1, 1, u16(3, 0)), /version 3.0; versions 2.00 to 2.04/],
    ['a missing list', ({ pdta }) => pdta.splice(3, 1), /generators of presets \(pgen\) is missing/],
    [
      'lists out of order',
      ({ pdta }) => pdta.push(...pdta.splice(0, 1)),
      /presets \(phdr, at byte \d+\) is out of order/,
    ],
    [
      'a list of a wrong size',
      (parts) => list(parts, 'ibag')[1].push(0, 0),
      /ibag, at byte \d+\) has 10 bytes, which is no multiple of 4/,
    ],
    ['no preset', (parts) => list(parts, 'phdr')[1].splice(0, 38), /list of presets \(phdr\) is empty/],
    [
      'no instrument',
      (parts) => list(parts, 'inst')[1].splice(0, 22),
      /list of instruments \(inst\) is empty/,
    ],
    [
      'falling positions',
      (parts) => list(parts, 'ibag')[1].splice(0, 2, 2, 0),
      /zone 1 in the list of zones of instruments \(ibag\) starts at record 1 of igen, before/,
    ],
    [
      'positions past a list',
      (parts) => list(parts, 'ibag')[1].splice(4, 2, 9, 0),
      /starts at record 9 of igen, which has 2 records/,
    ],
    [
      'zones past a list',
      (parts) => list(parts, 'inst')[1].splice(42, 2, 7, 0),
      /number 0 has zones up to 7, and there are 1 in ibag/,
    ],
    [
      'zones that end before they start',
      (parts) => list(parts, 'inst')[1].splice(20, 2, 2, 0),
      /zones of number 0 end before they start/,
    ],
    [
      'a sample that is not there',
      (parts) => list(parts, 'igen')[1].splice(2, 2, 1, 0),
      /a zone of "Reed" names number 1 in the list of samples \(shdr\), which has 1/,
    ],
    [
      'an instrument that is not there',
      (parts) => list(parts, 'pgen')[1].splice(2, 2, 5, 0),
      /names number 5 in the list of instruments/,
    ],
    [
      'the terminal of the samples missing',
      (parts) => list(parts, 'shdr')[1].splice(-46),
      /names number 0 in the list of samples \(shdr\), which has 0/,
    ],
  ])('for %s', async (_, change, reason) => {
    expect(await changed(change)).toMatch(reason);
  });

  it('for bytes behind its end', async () => {
    const bytes = simpleFont();
    expect(await reasonOf(new Uint8Array([...bytes, 0, 0]))).toMatch(
      new RegExp(
        `says ${bytes.length} bytes, but the file has ${bytes.length + 2}; the last 2 belong to nothing`,
      ),
    );
  });

  it('for other content', async () => {
    expect(await reasonOf(new Uint8Array(text('RIFF....WAVE')))).toMatch(/does not begin with RIFF and sfbk/);
  });

  it('where it is cut short, with what it is cut within', async () => {
    const bytes = simpleFont();
    expect(await reasonOf(bytes.slice(0, 300))).toMatch(
      /cut short: it has 300 of \d+ bytes and ends within the part sdta/,
    );
    const end = bytes.length - 2 * 46 - 20;
    expect(await reasonOf(bytes.slice(0, end))).toMatch(/cut short|missing/);
  });

  it('but not where only samples are cut off: what is whole is read', async () => {
    const bytes = fontBytes({
      presets: [{ name: 'P', zones: [{ gens: [[g.instrument, 0]] }] }],
      instruments: [
        {
          name: 'I',
          zones: [
            {
              gens: [
                [g.keyRange, [0, 59]],
                [g.sample, 0],
              ],
            },
            {
              gens: [
                [g.keyRange, [60, 127]],
                [g.sample, 1],
              ],
            },
          ],
        },
      ],
      samples: [
        { name: 'Whole', frames: tone(60, 20) },
        { name: 'Cut', frames: tone(60, 20) },
      ],
    });
    const { regions, notes } = await regionsOf(bytes.slice(0, bytes.length - 46 - 10));
    expect(regions.map(({ sample }) => sample)).toEqual(['Whole.wav']);
    expect(notes[0]!.message).toMatch(/cut short: of 2 samples, 1 is listed/);
  });

  it('answers with a reason where the disk fails', async () => {
    const reader = { ...readerOf(simpleFont()), read: () => Promise.reject(new Error('gone')) };
    expect(await readFont(reader)).toEqual({
      kind: 'unreadable',
      reason: 'The file could not be read from its disk.',
    });
  });
});
