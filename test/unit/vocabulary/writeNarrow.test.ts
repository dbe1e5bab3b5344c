import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readSfz } from '../../../server/sfz/read';
import { inferVocabulary } from '../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import { writeInVocabulary } from '../../../server/vocabulary/write/writeVocabularyXml';

/** An SFZ text written as an example of XML is written: lines, notes, and what is read of it again. */
function writtenAs(example: string, sfz: string) {
  const inferred = inferVocabulary(example, { path: 'b.xml' });
  if (!inferred) throw new Error('taken for no instrument');
  const { vocabulary } = inferred;
  const { text, notes } = writeInVocabulary(vocabulary)(readSfz(sfz, { path: 'a.sfz' }), {});
  const again = readVocabularyXml(vocabulary)(text, { path: 'b.xml' });
  const regions = [...again.regions].map((region) => effectiveValues(again, region));
  return { text, notes: notes.map(({ kind, message }) => `${kind}: ${message}`), regions };
}

const sources = (id: string, ids: readonly [string, string]) =>
  `<mill><bags>${ids.map((one, at) => `<bag ${id}="${one}" file="w${at}.wav"/>`).join('')}</bags>
   <grinds>${ids.map((one, at) => `<grind bag="${one}" low="${40 + 5 * at}" high="${44 + 5 * at}" root="${42 + 5 * at}"/>`).join('')}</grinds></mill>`;

describe('a list of samples that is written', () => {
  const sfz =
    '<region> sample=one.wav lokey=30 hikey=39 pitch_keycenter=35\n<region> sample=two.wav lokey=50 hikey=59 pitch_keycenter=55';

  it.each([
    ['id', ['0', '1'], ['0', '1']],
    ['nr', ['12', '31'], ['12', '13']],
    ['id', ['oats', 'rye'], ['s1', 's2']],
    ['id', ['007', '008'], ['s1', 's2']],
  ] as const)('counts on from the first key where %s is such as %j', (id, ids, written) => {
    const { text, regions } = writtenAs(sources(id, ids), sfz);
    for (const [at, file] of ['one.wav', 'two.wav'].entries())
      expect(text).toContain(`<bag ${id}="${written[at]}" file="${file}"/>`);
    expect(regions.map(({ sample }) => sample)).toEqual(['one.wav', 'two.wav']);
  });
});

describe('a range where there is a place for one key', () => {
  const hits =
    '<tray><spoon tone="36" file="a.wav" gain="-3"/><spoon tone="38" file="b.wav" gain="-1"/><spoon tone="40" file="c.wav" gain="0"/></tray>'.replaceAll(
      'tone',
      'key',
    );

  it.each([
    ['lokey=30 hikey=39 pitch_keycenter=35', '35'],
    ['lokey=30 hikey=39 pitch_keycenter=52', '39'],
    ['lokey=70 pitch_keycenter=64', '70'],
    ['hikey=20 pitch_keycenter=12', '12'],
  ])('%s becomes key %s, and that is said', (keys, key) => {
    const { notes, regions } = writtenAs(hits, `<region> sample=x.wav ${keys}`);
    expect(regions[0]).toMatchObject({ lokey: Number(key), hikey: Number(key) });
    expect(notes).toContainEqual(expect.stringMatching(/^dropped: Keys \d+ to \d+ become key \d+ alone/));
  });

  it('leaves regions of one key as they are', () => {
    const { notes, regions } = writtenAs(hits, '<region> sample=x.wav key=47');
    expect(regions[0]).toMatchObject({ lokey: 47, hikey: 47, pitch_keycenter: 47 });
    expect(notes).toEqual([]);
  });
});

describe('a root key in Hz', () => {
  const pans =
    '<kitchen><pan file="a.wav" low="40" high="44" hertz="110"/><pan file="b.wav" low="45" high="49" hertz="146.83"/></kitchen>';

  it.each([
    ['pitch_keycenter=57', '220', '57', '0'],
    ['pitch_keycenter=57 tune=20', '217.473', '57', '20'],
    ['pitch_keycenter=57 transpose=2', '195.998', '55', '0'],
    ['pitch_keycenter=57 transpose=-1 tune=30', '229.078', '58', '30'],
  ])('holds %s', (values, hertz, root, tune) => {
    const { text, regions, notes } = writtenAs(pans, `<region> sample=x.wav lokey=50 hikey=60 ${values}`);
    expect(text).toContain(`hertz="${hertz}"`);
    expect(regions[0]).toMatchObject({ pitch_keycenter: Number(root) });
    expect(Number(regions[0].tune ?? 0)).toBe(Number(tune));
    expect(notes.filter((note) => note.includes('left out') || note.includes('as well'))).toEqual([]);
  });
});
