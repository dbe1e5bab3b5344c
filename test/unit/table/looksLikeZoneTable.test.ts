import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';

describe('a text that looks like a zone table', () => {
  it.each([
    'Sample\tRoot\tLow key\tHigh key\na.wav\tC3\tB2\tD3',
    'a.wav,60,58,62,1,127\nb.wav,64,63,66,1,127',
    'a.wav;C3;-3,5 dB\nb.wav;D3;1,5 dB',
    'File;Root;Pan;Comment\na.wav;60;;\nb.wav;61;;',
    '| File | Keys |\n|---|---|\n| a.wav | C3-B3 |',
    'Sample        Low   High\na.wav         C3    E3\nb.wav         F3    A3',
    'My zones\r\n\r\n"Sample","Root"\r\n"a, soft.wav","60"\r\n',
    'Name\tRoot key\tLow key\tHigh key\nsoft a\t60\t58\t62',
    '[["a.wav", 60, 58], ["b.wav", 61, 59]]',
    '{"sample": "a.wav", "root": 60}',
  ])('%j', (text) => {
    expect(looksLikeZoneTable(text)).toBe(true);
  });
});

describe('a text that does not', () => {
  it.each([
    '',
    'a.wav',
    'a.wav\nb.wav',
    '<region> sample=a.wav key=60\n<region> sample=b.wav key=61',
    'sample=a.wav, key=60, lokey=58\nsample=b.wav, key=61, lokey=59',
    '<zone file="a.wav" root="60"/>\n<zone file="b.wav" root="61"/>',
    'The files a.wav, b.wav and c.wav, as said, are in the folder.\nThey have keys 60, 61 and 62.',
    'const zones = load("a.wav", 60, 58, 62);\nplay(zones, 1);\n',
    'for (int i = 0; i < 10; i++) {\n\tplay(i, 60);\n}',
    'def f(a, b):\n    return a, b\n',
    '{"name": "x", "files": ["a.wav", "b.wav"], "version": 60}',
    '{ "scripts": { "play": "aplay a.wav" }, "port": 60 }',
    'Name,Start,End\nAnna,9,17\nBert,10,18',
    'Name,Level,Notes\nCellar,2,dry\nAttic,3,warm',
    '| Option | Meaning |\n|---|---|\n| low | quiet |\n| high | loud |',
    '-rw-r--r--  1 user  group   14138 Nov 25 06:56 a.wav\n-rw-r--r--  1 user  group  193465 Nov 25 06:30 b.wav',
    'RIFF\u0000\u0000,a.wav,60',
    'x'.repeat(100_000),
    'Sample\tRoot\tLow key\tHigh key',
  ])('%j', (text) => {
    expect(looksLikeZoneTable(text)).toBe(false);
  });
});
