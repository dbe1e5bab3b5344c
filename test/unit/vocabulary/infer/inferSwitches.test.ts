import { describe, expect, it } from 'vitest';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { writeVocabulary } from '../../../../server/vocabulary/writeVocabulary';
import { readInferred } from './inferred';

/** The samples that sound in a shed whose attribute or child element says something of its tools. */
function sounding(first: string, second: string, child = ''): string[] {
  const text = `<shed><tool wave="a.wav" low="30" high="40" ${first}>${child}</tool><tool wave="b.wav" low="41" high="50" ${second}/></shed>`;
  return readInferred(text).regions.map((region) => /sample=(\S+)/.exec(region)?.[1] ?? region);
}

describe('what is switched off', () => {
  it.each([
    ['enabled="false"', 'enabled="true"'],
    ['active="no"', 'active="yes"'],
    ['muted="true"', 'muted="false"'],
    ['bypass="on"', 'bypass="off"'],
    ['isActive="0"', 'isActive="1"'],
    ['status="off"', 'status="on"'],
    ['state="bypassed"', 'state="live"'],
    ['Aktiv="nein"', 'Aktiv="ja"'],
    ['disabled="disabled"', ''],
  ])('%s leaves a region out, %s does not', (off, on) => {
    expect(sounding(off, on)).toEqual(['b.wav']);
  });

  it('may say so in a child element', () => {
    expect(sounding('', '', '<enabled>false</enabled>')).toEqual(['b.wav']);
  });

  it('takes a whole group with it, and is told of with its samples', () => {
    const { regions, unread, vocabulary } = readInferred(
      '<shed><row on="no"><tool wave="a.wav" note="40"/><tool wave="c.wav" note="42"/></row><row on="yes"><tool wave="b.wav" note="41"/></row></shed>',
    );
    expect(regions).toEqual(['sample=b.wav lokey=41 hikey=41 pitch_keycenter=41']);
    expect(unread).toEqual(['<row> with "a.wav" and 1 more is switched off by on="no", so it is left out.']);
    expect(vocabulary && parseVocabulary(writeVocabulary(vocabulary))).toEqual({ vocabulary, problems: [] });
  });

  it('is nothing where all would be off, nor where values say something else', () => {
    expect(sounding('muted="true"', 'muted="true"')).toEqual(['a.wav', 'b.wav']);
    expect(sounding('mute="3"', 'mute="4"')).toEqual(['a.wav', 'b.wav']);
    expect(sounding('status="draft"', 'status="final"')).toEqual(['a.wav', 'b.wav']);
  });

  it('is a loop, of which nothing else counts then', () => {
    const { regions, unread } = readInferred(
      `<shed><tool wave="a.wav" low="30" high="40"><loop from="500" to="900" on="yes" until="release"/></tool>
      <tool wave="b.wav" low="41" high="50"><loop until="end" from="7" to="70" on="no"/></tool></shed>`,
    );
    expect(regions).toEqual([
      'sample=a.wav lokey=30 hikey=40 loop_start=500 loop_end=900 loop_mode=loop_sustain',
      'sample=b.wav lokey=41 hikey=50 loop_mode=no_loop',
    ]);
    expect(unread.join()).toContain('from="7" of <loop>');
  });

  it('is a loop beside how it goes, whichever stands first', () => {
    const tool = (loop: string, note: number) => `<tool wave="a.wav" note="${note}" ${loop}/>`;
    const { regions } = readInferred(
      `<shed>${tool('loopOn="no" loopKind="forward" loopStart="1000" loopEnd="2000"', 30)}${tool('loopKind="forward" loopOn="no"', 31)}${tool('loopKind="forward" loopOn="yes" loopStart="1000" loopEnd="2000"', 32)}</shed>`,
    );
    expect(regions.map((one) => /loop_mode=\S+/.exec(one)?.[0])).toEqual([
      'loop_mode=no_loop',
      'loop_mode=no_loop',
      'loop_mode=loop_continuous',
    ]);
  });

  it('is a loop of no length', () => {
    const { regions } = readInferred(
      '<shed><tool wave="a.wav" note="30" loopStart="500" loopLength="4000"/><tool wave="b.wav" note="31" loopStart="0" loopLength="0"/></shed>',
    );
    expect(regions).toEqual([
      'sample=a.wav lokey=30 hikey=30 pitch_keycenter=30 loop_start=500 loop_end=4499 loop_mode=loop_continuous',
      'sample=b.wav lokey=31 hikey=31 pitch_keycenter=31',
    ]);
  });
});

describe('samples in a list', () => {
  const zones = (reference: string) =>
    `<zone ${reference}="s1" low="30" high="40"/><zone ${reference}="s2" low="41" high="50"/>`;

  it('are found by keys that nothing but the list explains, in the folder of the list', () => {
    const { regions, unread } = readInferred(
      `<rig><tapes dir="Wavs"><tape tag="s1" title="a.wav"/><tape tag="s2" title="b.wav"/><tape tag="s3" title="spare.wav"/></tapes>${zones('take')}</rig>`,
    );
    expect(regions).toEqual(['sample=Wavs/a.wav lokey=30 hikey=40', 'sample=Wavs/b.wav lokey=41 hikey=50']);
    expect(unread).toEqual(['"spare.wav" is in the list of samples, and no region uses it.']);
  });

  it('may have keys in a place that is called so', () => {
    const { regions } = readInferred(
      `<rig>${zones('use')}<tapes><tape key="s1" href="a.wav"/><tape key="s2" href="b.wav"/></tapes></rig>`,
    );
    expect(regions).toEqual(['sample=a.wav lokey=30 hikey=40', 'sample=b.wav lokey=41 hikey=50']);
  });
});
