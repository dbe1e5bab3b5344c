import { expect, it } from 'vitest';
import { unsaidRegions } from '../../../../server/playing/plain/unsaidRegions';
import { readSfz } from '../../../../server/sfz/read';

const said = new Set(['sample', 'lokey', 'hikey', 'pitch_keycenter']);

/** The names of the samples of the regions that are left out. */
function leftOut(text: string): (string | undefined)[] {
  const instrument = readSfz(text, { path: 'a.sfz' });
  const unsaid = unsaidRegions(instrument, instrument.regions, (_, name) => said.has(name));
  return [...unsaid.keys()].map((region) => instrument.samplePath(region));
}

// Which region sounds before any keyswitch was pressed is that of the SFZ format's documentation of sw_last and sw_default (sfzformat.com, read in 2026).
it.each([
  [
    'regions on the same keys ask for none',
    '<region> sample=open.wav lokey=40 hikey=50\n<region> sample=muted.wav lokey=40 hikey=50 sw_last=25\n',
    ['muted.wav'],
  ],
  [
    'the one that holds at first has no regions of its own',
    '<region> sample=open.wav lokey=40 hikey=50\n<region> sample=muted.wav lokey=40 hikey=50 sw_last=25 sw_default=24\n',
    ['muted.wav'],
  ],
  [
    'all regions ask for one',
    '<region> sample=open.wav lokey=40 hikey=50 sw_last=24\n<region> sample=muted.wav lokey=40 hikey=50 sw_last=25\n',
    ['muted.wav'],
  ],
  [
    'those that ask for none lie on other keys',
    '<region> sample=click.wav lokey=20 hikey=20\n<region> sample=open.wav lokey=40 hikey=50 sw_last=24\n<region> sample=muted.wav lokey=40 hikey=50 sw_last=25\n',
    ['muted.wav'],
  ],
])('without keyswitches what sounds first stays: %s', (_, text, expected) => {
  expect(leftOut(text)).toEqual(expected);
});
