import { describe, expect, it } from 'vitest';
import { UnusedSamples } from '../../../server/checks/rules/sampleUnused';
import { folderOf, nameOf } from '../../../server/model/paths';
import { applyFix, checkText, expectMarks, fixesOf, samplesInMemory, wav } from './markedText';

// default_path is put before a sample as it is written, paths start at the folder of the main file, and names that start
// with * are generators: public documentation of the open SFZ format (CC0 1.0), default_path and sample.
describe('sample-missing', () => {
  it('marks the value once, although many regions inherit it, and offers near files behind default_path', () => {
    const checked = expectMarks(
      `<control> default_path=Samples\\
<group> sample=bel1.wav
               ^^^^^^^^ sample-missing error
<region> key=60
<region> key=61`,
      { samples: samplesInMemory({}, ['Samples/bell1.wav']) },
    );
    expect(applyFix(checked.text, fixesOf(checked, 'sample-missing')[0])).toContain(
      '<group> sample=bell1.wav',
    );
  });

  it('looks a parameter up anew under another default_path', () => {
    const { findings } = checkText(
      '<group> sample=a.wav\n<control> default_path=one/\n<region> key=60\n<control> default_path=two/\n<region> key=61',
      { samples: samplesInMemory({ 'one/a.wav': wav() }) },
    );
    expect(findings.map(({ message }) => message)).toEqual([expect.stringContaining('two/a.wav')]);
  });

  it('leaves generators, unknown variables and files that were not looked at alone', () => {
    const samples = samplesInMemory({ 'wait.wav': { kind: 'pending' } });
    expectMarks(
      `<region> sample=*sine key=60
<region> sample=wait.wav key=61
<region> sample=$NAME.wav key=62
                ^^^^^ define-unknown warning`,
      { samples },
    );
  });

  it('tells of a folder that is not there once, with the other places', () => {
    const folders = samplesInMemory({ 'Here/a.wav': wav() });
    const samples = {
      ...folders,
      state: (path: string) => (path === 'Here' ? ({ kind: 'folder' } as const) : folders.state(path)),
    };
    const { findings } = checkText(
      `<region> key=60 sample=Gone/Soft/a.wav
<region> key=61 sample=Gone/Soft/b.wav
<region> key=62 sample=Gone/Loud/a.wav
<region> key=63 sample=Gone/Loud/a.wav
<region> key=64 sample=Alone/a.wav
<region> key=65 sample=Here/a.wav
<region> key=66 sample=Here/b.wav`,
      { samples },
    );
    expect(findings.map(({ start, message }) => [start, message])).toEqual([
      [23, expect.stringMatching(/^There is no folder "Gone"; 3 samples should be in it\./)],
      [expect.any(Number), expect.stringMatching(/^There is no file "Alone\/a\.wav"/)],
      [expect.any(Number), expect.stringMatching(/^There is no file "Here\/b\.wav"/)],
    ]);
    expect(findings[0]?.related?.map(({ message }) => message)).toEqual([
      '"Gone/Soft/b.wav" should be there too.',
      '"Gone/Loud/a.wav" should be there too.',
    ]);
    expect(findings[0]?.absentFolder?.files()).toEqual(['Soft/a.wav', 'Soft/b.wav', 'Loud/a.wav']);
  });

  it('marks an empty value', () => {
    expectMarks(`<region> sample= key=60
         ^^^^^^ sample-missing error`);
  });
});

describe('sample-case', () => {
  it('writes the file as it is named, in the path prefix too', () => {
    const checked = expectMarks(
      `<control> default_path=samples/
<region> sample=sub\\BELL.wav key=60
                ^^^^^^^^^^^^ sample-case warning`,
      {
        samples: samplesInMemory({
          'samples/sub/BELL.wav': { kind: 'otherCase', actual: 'Samples/sub/Bell.wav' },
        }),
      },
    );
    const [fix] = fixesOf(checked, 'sample-case');
    expect(fix?.safe).toBe(true);
    expect(applyFix(checked.text, fix)).toBe(
      '<control> default_path=Samples/\n<region> sample=sub\\Bell.wav key=60',
    );
  });
});

// WAV, AIFF, FLAC and Ogg Vorbis are the kinds that the format lists: public documentation of the open SFZ format (CC0 1.0),
// sample.
describe('sample-unreadable', () => {
  it('marks folders, files that are not audio and files that are cut short', () => {
    expectMarks(
      `<region> sample=folder key=60
                ^^^^^^ sample-unreadable error
<region> sample=song.mp3 key=61
                ^^^^^^^^ sample-unreadable error
<region> sample=half.wav key=62 loop_end=90000
                ^^^^^^^^ sample-unreadable error
<region> sample=odd.wav key=63`,
      {
        samples: samplesInMemory({
          folder: { kind: 'folder' },
          'song.mp3': { kind: 'file', reading: { kind: 'unreadable', reason: 'MP3 is not listed' } },
          'half.wav': wav({ problems: [{ kind: 'cut-short', message: 'Half of it is missing.' }] }),
          'odd.wav': wav({ problems: [{ kind: 'size-wrong', message: 'Odd.' }] }),
        }),
      },
    );
  });

  it('marks a path with a NUL', () => {
    const { findings } = checkText('<region> sample=a\0b.wav key=60', { samples: samplesInMemory({}) });
    expect(findings.map(({ code }) => code)).toContain('sample-unreadable');
    expect(findings.map(({ code }) => code)).not.toContain('sample-missing');
  });
});

// Paths from a root (POSIX.1, pathname resolution) or a drive (Microsoft, Naming Files, Paths, and Namespaces), from memory.
describe('sample-absolute', () => {
  it('marks paths from a root or a drive, and a path prefix once', () => {
    expectMarks(`<region> sample=C:\\Bells\\a.wav key=60
                ^^^^^^^^^^^^^^ sample-absolute warning
<control> default_path=/bells/
                       ^^^^^^^ sample-absolute warning
<region> sample=b.wav key=61
<region> sample=c.wav key=62`);
  });
});

// Frames count from 0, and ends are the last frames that are played: public documentation of the open SFZ format (CC0 1.0),
// end, loop_end and offset. Some audio editors count from 1 (common practice).
describe('loop-past-end, end-past-end, offset-past-end', () => {
  const samples = samplesInMemory({ 'a.wav': wav({ frames: 1000 }), 'b.wav': wav({ frames: 500 }) });

  it('take the last frame as the last good one and mark what lies past it', () => {
    expectMarks('<region> sample=a.wav key=60 loop_start=0 loop_end=999 end=999 offset=998', { samples });
    expectMarks(
      `<region> sample=a.wav key=60 loop_end=1001 end=1000
                                      ^^^^ loop-past-end error
                                               ^^^^ end-past-end error
<region> sample=a.wav key=61 offset=1000 loop_start=2000
                                    ^^^^ offset-past-end error
                                                    ^^^^ loop-past-end error
<region> sample=a.wav key=62 end=-1`,
      { samples },
    );
  });

  it('say that one frame past was counted from 1, with a safe fix', () => {
    const checked = checkText('<region> sample=a.wav loop_start=10 loop_end=1000', { samples });
    expect(checked.findings[0]?.message).toContain('from 1');
    const [fix] = fixesOf(checked, 'loop-past-end');
    expect(fix?.safe).toBe(true);
    expect(applyFix(checked.text, fix)).toBe('<region> sample=a.wav loop_start=10 loop_end=999');
  });

  it('mark an inherited position once for each sample that is too short', () => {
    const { findings } = checkText(
      '<group> loop_start=1 loop_end=700\n<region> sample=a.wav key=60\n<region> sample=b.wav key=61\n<region> sample=b.wav key=62',
      { samples },
    );
    expect(findings.map(({ code, message }) => [code, message.includes('b.wav')])).toEqual([
      ['loop-past-end', true],
    ]);
  });
});

// A loop that is not set is that of the file: public documentation of the open SFZ format (CC0 1.0), loop_start. Programs
// that write 0 and 0 where there is no loop are common practice.
describe('loop-inverted', () => {
  it('marks loops whose start is at or after their end, and swaps', () => {
    const checked = expectMarks(`<region> sample=a.wav key=60 loop_start=500 loop_end=400
                                                     ^^^ loop-inverted error
<region> sample=a.wav key=61 loop_start=500 loop_end=500
                                                     ^^^ loop-inverted error`);
    expect(applyFix(checked.text, fixesOf(checked, 'loop-inverted')[0])).toContain(
      'loop_start=400 loop_end=500',
    );
  });

  it('takes what is not set from the loop of the file', () => {
    const loops = [{ start: 600, end: 900, type: 'forward' as const }];
    expectMarks(
      `<region> sample=a.wav loop_end=300
                               ^^^ loop-inverted error`,
      { samples: samplesInMemory({ 'a.wav': wav({ loops }) }) },
    );
  });

  it('leaves zeros alone that say that there is no loop', () => {
    expectMarks('<region> sample=a.wav loop_mode=no_loop loop_start=0 loop_end=0');
  });
});

// Which folders are looked through is our choice.
describe('sample-unused', () => {
  const used = ['bells/samples/a.wav', 'bells/samples/soft/b.wav', 'flat/one.wav'];
  const instruments = ['bells/bells.sfz', 'flat/flat.sfz', 'bells/samples/nested/other.sfz'];

  function unusedOf(audioFiles: readonly string[]): string[] {
    const unused = new UnusedSamples();
    for (const path of audioFiles) unused.add(folderOf(path), nameOf(path));
    for (const path of used) unused.use(path);
    for (const path of instruments) unused.addInstrument(path);
    return unused.list();
  }

  it('finds what nothing refers to in folders with samples and below them', () => {
    const audioFiles = [...used, 'bells/samples/c.wav', 'bells/samples/more/d.wav', 'bells/preview.wav'];
    expect(unusedOf(audioFiles)).toEqual(['bells/samples/c.wav', 'bells/samples/more/d.wav']);
  });

  it('goes no deeper than a folder with an instrument of its own', () => {
    const audioFiles = ['flat/two.wav', 'flat/drafts/three.wav', 'bells/samples/nested/e.wav'];
    expect(unusedOf(audioFiles)).toEqual(['flat/two.wav']);
  });

  it('names files of the outermost folders as they are', () => {
    const unused = new UnusedSamples();
    for (const folder of ['', '/']) for (const name of ['a.wav', 'b\\c.wav']) unused.add(folder, name);
    unused.use('a.wav');
    unused.use('/a.wav');
    expect(unused.list()).toEqual(['/b\\c.wav', 'b\\c.wav']);
  });
});

describe('a region without a sample', () => {
  const samples = samplesInMemory({ 'a.wav': wav(), 'b.wav': wav() });
  const messages = (text: string) =>
    checkText(text, { samples })
      .findings.filter(({ code }) => code === 'sample-missing')
      .map(({ severity, message }) => `${severity}: ${message}`);

  it('is told once where others have one', () => {
    const two = '<region> sample=a.wav key=60\n<region> sample=b.wav key=61';
    expect(messages(`${two}\n<region> key=62`)).toEqual([
      expect.stringMatching(/^warning: This region has no sample, so it is silent\. Give/),
    ]);
    expect(messages(`${two}\n<region> key=62\n<region> key=63`)).toEqual([
      expect.stringContaining('1 more region has none.'),
    ]);
  });

  it('is left alone in a part of an instrument, where it inherits one, or where something is missing', () => {
    for (const text of [
      '<region> key=60\n<region> key=61\n<region> sample=a.wav key=62',
      '<group> sample=a.wav\n<region> key=60\n<region> key=61',
      '<region> sample=a.wav key=60\n<region> key=61 sample=*silence',
      '<region> sample=a.wav key=60\n<region> key=61\n#include "rest.sfz"',
    ])
      expect(messages(text), text).toEqual([]);
  });
});
