import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../../../server/features/hover/hover';
import { waveBytes } from '../../server/host/waveBytes';
import { documentWithMark } from '../documentWithMark';

async function hover(
  marked: string,
  files: Record<string, string | Uint8Array> = {},
  format: 'sfz' | 'xml' = 'sfz',
) {
  const { document, offset, text } = await documentWithMark(marked, files, format);
  const found = await hoverAt(document, offset);
  return found && { about: text.slice(found.start, found.end), markdown: found.markdown };
}

describe('hover on an opcode', () => {
  it('tells what it is, its bounds and its default', async () => {
    const found = await hover('<region> vol$0ume=-6');
    expect(found?.about).toBe('volume');
    // Bounds of the public documentation of the open SFZ format.
    expect(found?.markdown).toContain('-144 to 6');
    expect(found?.markdown).toContain('in dB');
    expect(found?.markdown).toContain('Here: `-6`');
  });

  it('tells the canonical name of another spelling', async () => {
    expect((await hover('<region> loop$0start=5'))?.markdown).toContain('the same as **loop_start**');
  });

  it('tells what the value overrides, and what counts instead', async () => {
    expect((await hover('<group> volume=-3\n<region> volume=$0-6'))?.markdown).toContain(
      'Overrides `-3` from the group in line 1',
    );
    expect((await hover('<region> volume=$0-6 volume=-9'))?.markdown).toContain('Replaced by `-9`');
    expect((await hover('<region> volume=$0-6'))?.markdown).toContain('Without it: `0`, the default');
  });

  it('tells in how many regions the value of a group is in force', async () => {
    const text =
      '<group> volume=$0-3\n<region> sample=*sine\n<region> volume=0\n<group>\n<region> sample=*saw';
    expect((await hover(text))?.markdown).toContain('In force in 1 of 2 regions');
  });

  it('names the key beside its number, shifted as the text says', async () => {
    // MIDI key 60 is c4 in SFZ.
    expect((await hover('<region> key=$060'))?.markdown).toContain('60 (C4)');
    expect((await hover('<control> octave_offset=1\n<region> key=c$04'))?.markdown).toContain('72 (C5)');
  });

  it('works in XML', async () => {
    const found = await hover(
      '<instrument><group volume="-3"><region volume="-$06"/></group></instrument>',
      {},
      'xml',
    );
    expect(found?.about).toBe('-6');
    expect(found?.markdown).toContain('Overrides `-3` from the group in line 1');
  });

  it('tells where a name is not known', async () => {
    expect((await hover('<region> vlo$0ume=1'))?.markdown).toContain('does not know');
  });
});

describe('hover on a sample', () => {
  it('tells what the file holds', async () => {
    const found = await hover('<control> default_path=Samples/\n<region> sample=a$0.wav', {
      '/music/Samples/a.wav': waveBytes(22_050),
    });
    expect(found?.about).toBe('a.wav');
    for (const fact of ['`Samples/a.wav`', 'WAV', '16 bits', '44100 Hz', 'mono', '22050 frames (0.50 s)']) {
      expect(found?.markdown).toContain(fact);
    }
  });

  it('tells that it is missing and what is named like it', async () => {
    const found = await hover('<region> sample=kick$0_1.wav', { '/music/kick_2.wav': waveBytes(1) });
    expect(found?.markdown).toContain('There is no such file');
    expect(found?.markdown).toContain('`kick_2.wav`');
  });

  it('tells how the file is named on the disk', async () => {
    const found = await hover('<region> sample=A$0.WAV', { '/music/a.wav': waveBytes(1) });
    expect(found?.markdown).toContain('The file is named `a.wav`');
  });

  it('keeps what a file name holds from being read as Markdown', async () => {
    expect((await hover('<region> sample=a`b$0.wav'))?.markdown).toContain('``a`b.wav``');
  });

  it('tells of sounds that need no file', async () => {
    expect((await hover('<region> sample=*si$0ne'))?.markdown).toContain('there is no file');
  });
});

describe('hover on a header', () => {
  it('counts its regions and gives what they cover', async () => {
    const text =
      '<gro$0up>\n<region> lokey=36 hikey=47 hivel=63\n<region> lokey=48 hikey=59\n<group>\n<region> key=90';
    const found = await hover(text);
    expect(found?.markdown).toContain('2 regions: keys 36 (C2) to 59 (B3), velocities 1 to 127');
  });

  it('gives the sample and root key of a region', async () => {
    const found = await hover('<reg$0ion> sample=Samples/a.wav key=60');
    expect(found?.markdown).toContain('Sample `a.wav`, root 60 (C4)');
  });
});

describe('hover elsewhere', () => {
  it('tells what a variable stands for', async () => {
    expect((await hover('#define $KEY 60\n<region> key=$K$0EY'))?.markdown).toContain('`60`');
  });

  it('says nothing of comments and empty places', async () => {
    expect(await hover('// a rem$0ark')).toBeUndefined();
    expect(await hover('$0')).toBeUndefined();
  });
});

describe('hover on text that could be taken for Markdown', () => {
  const picture = '![x](https:/example.org/p.png)';

  /** What would be fetched or could be clicked (CommonMark 0.31, 6.3 to 6.5), in text that is not code. */
  function links(markdown: string | undefined): string[] {
    const outside = (markdown ?? 'nothing').replace(/(`+)[^`].*?\1/g, '').replace(/\\./g, '');
    return outside.match(/!?\[[^\]]*\]\(|<[^>]+>/g) ?? [];
  }

  it('shows names and values of the text as they stand', async () => {
    const texts = [
      `#define $P ${picture}\n<region> $$0P=1`,
      `#define $P ${picture}\n<region> volume=$0$P`,
      `<region> sample=$0${picture}.wav`,
      `<region> ${picture.replaceAll(' ', '')}$0=1`,
      `<${picture}$0>`,
      `<region$0> sample=${picture}.wav`,
      `#define $$0P ${picture}`,
    ];
    for (const text of texts) {
      const found = await hover(text);
      if (found) expect(links(found.markdown)).toEqual([]);
    }
    expect((await hover(texts[0] as string))?.markdown).toContain(`\`${picture}\``);
  });

  it('shows the names of files and headers so too', async () => {
    const name = `${picture.replaceAll('/', '_')}.wav`;
    const found = await hover(`<region> sample=$0${name.toUpperCase()}`, { [`/music/${name}`]: 'not audio' });
    expect(found?.markdown).toContain('The file is named');
    expect(links(found?.markdown)).toEqual([]);
  });
});

describe('hover where something can play', () => {
  const links = async (marked: string) => {
    const { document, offset, text } = await documentWithMark(marked);
    const hover = await hoverAt(
      { ...document, playLink: (what, { start }) => `${what}:${text.slice(start, start + 6)}@${start}` },
      offset,
    );
    return [...(hover?.markdown.matchAll(/\[([^\]]+)\]\(<([^>]+)>\)/g) ?? [])].map(([, words, to]) => [
      words,
      to,
    ]);
  };

  it('plays a region from its header, and its sample by itself', async () => {
    expect(await links('<reg$0ion> key=50\n<region> sample=a.wav')).toEqual([]);
    expect(await links('<region> sample=a.wav\n<reg$0ion> sample=b.wav')).toEqual([
      ['Play region', 'region:region@23'],
      ['Play sample', 'sample:region@23'],
    ]);
  });

  it('plays a sample where it is named, for a group by its first region', async () => {
    expect(await links('<region> sample=a$0.wav')).toEqual([
      ['Play sample', 'sample:region@1'],
      ['Play region', 'region:region@1'],
    ]);
    expect(await links('<group> sample=a$0.wav\n<region> sample=b.wav\n<region> key=50')).toEqual([
      ['Play sample', 'sample:region@44'],
    ]);
    expect(await links('<group> sample=a$0.wav')).toEqual([]);
  });
});
