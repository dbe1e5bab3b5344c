import { copyFileSync, cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { run } from '../../unit/commandLine/runInFolder';
import { debianFont, hasDebianFont } from './fluidsynth';

const samples = join(__dirname, '../../../samples-demo');
/** A folder of other instruments to convert as well, for those who have one. */
const more = process.env.ZONEWRIGHT_INSTRUMENTS;
const folders = [join(samples, 'millrace-chimes'), ...(more === undefined ? [] : [more])];

/** Instruments that are files of their own and no parts of others, where they stand in the folder of the test. */
const instruments = folders.flatMap((around, at) =>
  readdirSync(around, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(sfz|instrument\.xml)$/.test(path))
    .map((path) => ({ name: path, place: join(String(at), path) })),
);

/**
 * Real recordings as text: a flute with loops and a drum kit whose hats silence one another, of the General MIDI font that Debian
 * carries (package fluid-soundfont-gm, MIT licence).
 */
const presets = hasDebianFont ? ['0:73', '128:0'] : [];
const placeOfPreset = (preset: string) => join(`font-${preset.replace(':', '-')}`, 'recorded.sfz');
const recorded = presets.map((preset) => ({ name: `preset ${preset}`, place: placeOfPreset(preset) }));

// Below the steps of 16 bits at full scale, −90.3 dB (20·log10(2^−15)), nothing is left of source less result.
describe('what conversions between notations leave of a sound', () => {
  let folder: string;
  beforeAll(async () => {
    folder = temporaryFolder('conversions');
    for (const [at, around] of folders.entries())
      cpSync(around, join(folder, String(at)), { recursive: true });
    for (const preset of presets)
      await run(folder, [
        'convert',
        `${debianFont}#${preset}`,
        '--to',
        'sfz',
        '--output',
        placeOfPreset(preset),
      ]);
    copyFileSync(join(samples, 'chime-rack.vocabulary.json'), join(folder, 'chime-rack.vocabulary.json'));
  });

  /** Converts and proves; answers what was written. */
  async function proved(from: string, to: string, ending: string): Promise<string> {
    const output = join(dirname(from), `written${ending}`);
    const words = [
      'convert',
      from,
      '--to',
      to,
      '--output',
      output,
      '--notes',
      'notes.txt',
      '--prove',
      '--force',
    ];
    const { status, error } = await run(folder, words);
    expect(error).toMatch(/^No difference above -90 dB/m);
    expect(status).toBe(0);
    return output;
  }

  it.each([...instruments, ...recorded])(
    'is nothing for $name and back again',
    async ({ place: source }) => {
      const isSfz = source.endsWith('.sfz');
      const to = (isXml: boolean) => (isXml ? '.instrument.xml' : '.sfz');
      const written = await proved(source, isSfz ? 'xml' : 'sfz', to(isSfz));
      const again = await proved(written, isSfz ? 'sfz' : 'xml', to(!isSfz));
      const { out } = await run(folder, ['compare', source, again, '--no-cache']);
      expect(out).toMatch(/^No difference above -90 dB/m);
    },
    600_000,
  );

  it.each(instruments)(
    'is nothing for $name in a vocabulary where no note says why',
    async ({ place }) => {
      await proved(place, 'chime-rack.vocabulary.json', '.rack.xml');
    },
    600_000,
  );

  it('would be found: a conversion that changes a level is told', async () => {
    const [first] = instruments;
    const source = first.place;
    const written = await proved(source, 'xml', '.instrument.xml');
    const changed = join(dirname(written), 'changed.sfz');
    await run(folder, ['convert', written, '--to', 'sfz', '--output', changed, '--force']);
    const text = readFileSync(join(folder, changed), 'utf8');
    writeFileSync(join(folder, changed), text.replace('<region>', '<region> volume=-20'));
    expect((await run(folder, ['compare', source, changed, '--no-cache'])).status).toBe(1);
  });
});
