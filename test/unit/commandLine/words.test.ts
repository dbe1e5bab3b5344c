import { describe, expect, it } from 'vitest';
import { folderWith, run } from './runInFolder';

const instrument = '<region> sample=*sine key=60\n';

describe('words that are off end with status 2 and one line that says why', () => {
  it.each([
    [[], /a command is needed/],
    [['chek', '.'], /no command "chek"/],
    [['toString'], /no command "toString"/],
    [['check'], /at least one file or folder/],
    [['check', 'gone.sfz'], /gone\.sfz: there is no such file/],
    [['check', 'a.sfz', '--format', 'yaml'], /--format takes text, json or sarif, not "yaml"/],
    [['check', 'a.sfz', '--fail-on', 'hint'], /--fail-on takes/],
    [['check', 'a.sfz', '--colour'], /--colour/],
    [['check', 'picture.sfz'], /picture\.sfz: this is not a text file/],
    [['check', 'prose.txt'], /prose\.txt: this is neither SFZ nor instrument XML/],
    [['regions'], /regions takes one file/],
    [['regions', 'a.sfz', 'a.sfz'], /regions takes one file/],
    [['regions', '.'], /no audio file in this folder/],
    [['regions', 'empty.sfz'], /empty\.sfz: the file is empty/],
    [['regions', 'prose.txt'], /prose\.txt/],
    [['regions', 'gone\u0000.sfz'], /no such file/],
    [['convert', 'a.sfz'], /needs --to/],
    [['convert', 'a.sfz', '--to', 'docx'], /--to takes sfz, xml, sf2 or a file/],
    [
      ['convert', 'a.sfz', '--to', 'xml', '--output', 'no/such/folder.xml'],
      /no\/such\/folder\.xml: cannot be written/,
    ],
    [['map', 'a.sfz'], /needs --output/],
    [['sample'], /at least one file/],
    [['sample', 'gone.wav'], /gone\.wav: there is no such file/],
    [['sample', 'ten.wav'], /ten\.wav: /],
    [['sample', '.'], /\.: there is no such file/],
  ])('%j', async (args, message) => {
    const folder = folderWith({
      'a.sfz': instrument,
      'picture.sfz': new Uint8Array([0x89, 0x50, 0, 0, 13, 0]),
      'prose.txt': 'Dear reader,\nthis is a letter and no instrument.\n',
      'empty.sfz': '',
      'ten.wav': 'RIFF\u0004\u0000\u0000\u0000WA',
    });
    const { status, out, error } = await run(folder, args);
    expect(error).toMatch(message);
    expect(error.trimEnd().split('\n')).toHaveLength(1);
    expect(error).not.toMatch(/\bat .*\.[jt]s:/);
    expect(out).toBe('');
    expect(status).toBe(2);
  });

  it('names the version and prints help', async () => {
    const folder = folderWith({});
    expect((await run(folder, ['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/);
    expect((await run(folder, ['--help'])).out).toContain('zonewright COMMAND');
    expect((await run(folder, ['check', '--help'])).status).toBe(0);
  });
});
