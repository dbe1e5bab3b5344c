import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { readSfz } from '../../../server/sfz/read';
import { readXml } from '../../../server/xml/read';
import { writeXml } from '../../../server/xml/write';

const demo = new URL('../../../samples-demo/millrace-chimes/', import.meta.url);
const text = (name: string) => readFileSync(new URL(name, demo), 'utf8');
const regions = (instrument: Instrument) =>
  [...instrument.regions].map((region) => effectiveValues(instrument, region));

const xml = readXml(text('millrace-chimes.instrument.xml'), { path: 'a.instrument.xml' });
const sfz = readSfz(text('millrace-chimes.sfz'), { path: 'a.sfz' });

describe('the demo instrument', () => {
  it('is the same in XML as in SFZ, without a finding', () => {
    expect(xml.findings).toEqual([]);
    expect(xml.regions.length).toBeGreaterThan(0);
    expect(regions(xml)).toEqual(regions(sfz));
  });

  it('is carried from SFZ to XML whole, without a note but for dashes in remarks', () => {
    const { text: written, notes } = writeXml(sfz);
    expect(notes.filter(({ message }) => !message.startsWith('A comment in XML'))).toEqual([]);
    expect(regions(readXml(written, { path: 'b.instrument.xml' }))).toEqual(regions(sfz));
  });
});
