import { describe, expect, it } from 'vitest';
import { plainLayout } from '../../../../../server/table/cells/markup/plainLayout';
import { readZoneTable } from '../../../../../server/table/readTable';

// Quoted lines of mails begin with `>`, one sign for each time they were quoted (RFC 3676, section 4.5).
describe('lines that a mail quotes', () => {
  const rows = (sign: string) =>
    [`${sign}Sample  Root`, `${sign}reed.wav  60`, `${sign}horn.wav  62`].join('\n');

  it.each(['> ', '>', '> > ', '>> '])(
    'are read without their %j, though an answer stands between',
    (sign) => {
      const mail = `> where are the zones?\n\nhere they are:\n\n${rows(sign)}\n`;
      const { grouped } = readZoneTable(mail);
      expect([...(grouped?.zones.samplePaths() ?? [])]).toEqual(['reed.wav', 'horn.wav']);
      expect(plainLayout(mail)).toHaveLength(mail.length);
    },
  );

  it('are none where the sign marks some rows of a table alone, or nothing quoted names a file', () => {
    for (const text of ['> reed.wav 60\nhorn.wav 62\n> oboe.wav 64\n', '> one\ntwo\n> three\n'])
      expect(plainLayout(text)).toBe(text);
  });
});
