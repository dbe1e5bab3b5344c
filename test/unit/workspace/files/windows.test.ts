import { describe, expect, it } from 'vitest';
import { portableName } from '../../../../server/library/portableNames';
import { folderOf } from '../../../../server/model/paths';
import { pathOfUri, uriOfPath } from '../../../../server/protocol/conversion/uris';
import { sfzNotation } from '../../../../server/sfz/notation';
import { analyse } from '../../../../server/workspace/analyse';
import { IncludeStore } from '../../../../server/workspace/files/includeStore';
import { Reach } from '../../../../server/workspace/files/reach';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { chunk, format, silence, wave } from '../../audio/byteFiles';
import { WindowsFiles } from './windowsFiles';

const sound = wave(chunk('fmt ', format(1, 1, 44100, 16)), chunk('data', silence(200)));

/** What is found in a text at a path, by code and message, and what was asked of the disks for it. */
async function look(path: string, text: string, contents: Record<string, string | Uint8Array>) {
  const files = new WindowsFiles({ [path]: text, ...contents });
  const includes = new IncludeStore(files, () => undefined, new Reach(files, [folderOf(path)]));
  const { findings, instrument } = await analyse(
    { path, text, notation: sfzNotation },
    includes,
    new SampleStore(files),
  );
  return {
    codes: findings.map(({ code }) => code),
    messages: findings.map(({ message }) => message).join('\n'),
    sources: instrument.sources.map((source) => source.path),
    asked: files.asked,
  };
}

describe('an instrument on a drive', () => {
  it('finds samples beside it, on other drives, and in another letter case', async () => {
    const text = [
      '<region> sample=Samples\\a.wav key=60',
      '<region> sample=D:\\Other\\b.wav key=61',
      '<region> sample=samples\\A.WAV key=62',
      '<region> sample=..\\..\\..\\..\\root.wav key=63',
    ].join('\n');
    const { codes } = await look('C:/Music/a.sfz', text, {
      'C:/Music/Samples/a.wav': sound,
      'D:/Other/b.wav': sound,
      'C:/root.wav': sound,
    });
    expect(codes.sort()).toEqual(['sample-absolute', 'sample-case']);
  });

  it('includes what lies in its folder in any letter case, and nothing else', async () => {
    const text = [
      '#include "PARTS\\B.sfz"',
      '#include "..\\secret.sfz"',
      '#include "D:\\secret.sfz"',
      '#include "\\\\host\\share\\secret.sfz"',
    ].join('\n');
    const secret = '<region> sample=*sine key=100';
    const { codes, sources, asked } = await look('C:/Music/Set/a.sfz', text, {
      'C:/Music/Set/Parts/b.sfz': '<region> sample=*sine key=60',
      'C:/Music/secret.sfz': secret,
      'D:/secret.sfz': secret,
      '//host/share/secret.sfz': secret,
    });
    expect(sources).toEqual(['C:/Music/Set/a.sfz', 'C:/Music/Set/PARTS/B.sfz']);
    expect(codes).toEqual(['include-refused', 'include-refused', 'include-refused']);
    expect(asked.filter((path) => /secret|^D:|^\/\//.test(path))).toEqual([]);
  });

  it('opens no device, whatever stands behind its name', async () => {
    const text = '#include "CON"\n<region> sample=nul.wav key=60\n<region> sample=aux key=61';
    const { codes } = await look('C:/Music/a.sfz', text, { 'C:/Music/b.wav': sound });
    expect(codes).toContain('include-missing');
    expect(codes.filter((code) => code === 'sample-missing')).toHaveLength(2);
  });

  it('asks no other machine for a sample, and says so', async () => {
    const text = '<region> sample=\\\\host\\share\\a.wav key=60\n<region> sample=//host/share/a.wav key=61';
    const { messages, asked } = await look('C:/Music/a.sfz', text, { '//host/share/a.wav': sound });
    expect(messages).toContain('on another computer');
    expect(asked.filter((path) => path.startsWith('//'))).toEqual([]);
  });

  it('is read whole where its path is longer than 260 characters, which Node reaches too', async () => {
    const folder = `C:/${'long folder name/'.repeat(20)}Set`;
    const { codes } = await look(`${folder}/a.sfz`, '<region> sample=Samples/a.wav key=60', {
      [`${folder}/Samples/a.wav`]: sound,
    });
    expect(folder.length).toBeGreaterThan(260);
    expect(codes).toEqual([]);
  });

  it('is at the top of a drive as anywhere else', async () => {
    const { codes } = await look('C:/a.sfz', '<region> sample=a.wav key=60\n<region> sample=b.wav key=61', {
      'C:/a.wav': sound,
    });
    expect(codes).toEqual(['sample-missing']);
  });
});

describe('an instrument on a share', () => {
  it('finds its samples and includes there', async () => {
    const text =
      '#include "parts/b.sfz"\n<region> sample=..\\Samples\\a.wav key=60\n<region> sample=\\\\HOST\\other\\c.wav key=61';
    const { codes, sources } = await look('//host/share/Set/a.sfz', text, {
      '//host/share/Samples/a.wav': sound,
      '//host/other/c.wav': sound,
      '//host/share/Set/parts/b.sfz': '<region> sample=*sine key=59',
    });
    expect(sources[1]).toBe('//host/share/Set/parts/b.sfz');
    expect(codes).toEqual(['sample-absolute']);
  });

  it('is the same document as a URI and as a path', () => {
    for (const path of ['//host/share/Set/a.sfz', 'c:/Music/a.sfz'])
      expect(pathOfUri(uriOfPath(path))).toBe(path);
    expect(pathOfUri('file:///C%3A/Music/a.sfz')).toBe('c:/Music/a.sfz');
  });
});

it('names of outputs are none that Windows keeps for itself', () => {
  const names = ['CON', 'nul.wav', 'Com1', 'a:b', 'a\\b', '..', 'dot.', 'x'.repeat(300)].map(portableName);
  for (const name of names) {
    expect(name).not.toMatch(/^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)|[<>:"/\\|?*]|[. ]$/i);
    expect(name.length).toBeLessThanOrEqual(120);
  }
});
