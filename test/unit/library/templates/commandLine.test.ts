import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { folderWith, run } from '../../commandLine/runInFolder';

const template = '// (title goes here)\n<group> ampeg_release=1\n<region> sample=x.wav key=60\n';

it('leads samples to the files from where the result stands', async () => {
  const folder = folderWith({
    'kit/template.sfz': template,
    'in/a.instrument.xml': '<instrument><region sample="Samples/a.wav" key="61"/></instrument>',
  });
  const args = ['convert', 'in/a.instrument.xml', '--to', 'sfz', '--template', 'kit/template.sfz'];
  expect(await run(folder, [...args, '--output', 'out.sfz'])).toMatchObject({ status: 0 });
  expect(readFileSync(join(folder, 'out.sfz'), 'utf8')).toBe(
    '// a\n<group> ampeg_release=1\n<region> sample=in/Samples/a.wav key=61\n',
  );
});

it('refuses in one line what it cannot use, and writes nothing', async () => {
  const folder = folderWith({
    't.sfz': template,
    'empty.sfz': '<global>\n',
    'a.sfz': '<region> sample=a.wav\n',
  });
  const tries: [string[], string][] = [
    [['--template', 'gone.sfz'], 'gone.sfz'],
    [['--template', 'empty.sfz'], 'no example'],
    [['--template', 't.sfz', '--to', 'xml'], '--to xml'],
    [['--template', 't.sfz', '--fact', 'maker'], 'NAME=VALUE'],
    [['--to', 'sfz', '--fact', 'maker=A'], '--template'],
  ];
  for (const [args, word] of tries) {
    const { status, error } = await run(folder, ['convert', 'a.sfz', ...args, '--output', 'o.sfz']);
    expect([status, error.split('\n').length]).toEqual([2, 2]);
    expect(error).toContain(word);
  }
  expect(existsSync(join(folder, 'o.sfz'))).toBe(false);
});

it('never replaces the template without being told to', async () => {
  const folder = folderWith({ 't.sfz': template, 'a.sfz': '<region> sample=a.wav key=60\n' });
  const { status } = await run(folder, ['convert', 'a.sfz', '--template', 't.sfz', '--output', 't.sfz']);
  expect(status).toBe(2);
  expect(readFileSync(join(folder, 't.sfz'), 'utf8')).toBe(template);
});
