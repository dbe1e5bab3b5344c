import { describe, expect, it } from 'vitest';
import { checkInstrument } from '../../../server/checks/checkInstrument';
import { completionsAt } from '../../../server/features/completion/completion';
import type { CompletionOffer } from '../../../server/features/completion/completionOffer';
import { shapes } from '../../../server/features/completion/shapes';
import { notations } from '../../../server/workspace/notations/notationOf';
import { samplesInMemory } from '../checks/markedText';
import { documentWithMark } from './documentWithMark';

type Format = 'sfz' | 'xml';

async function offersAt(marked: string, format: Format = 'sfz'): Promise<CompletionOffer[]> {
  const { document, offset } = await documentWithMark(marked, {}, format);
  return (await completionsAt(document, offset)).sort((a, b) => a.rank - b.rank);
}

const byRank = (offers: readonly CompletionOffer[], rank: number) =>
  offers.filter((offer) => offer.kind === 'opcode' && offer.rank === rank).map(({ label }) => label);

describe('the order of opcodes', () => {
  it('has first what the regions around set', async () => {
    const text =
      '<region> sample=a.wav key=60 ampeg_release=1 locc64=0\n<region> $0\n<region> sample=b.wav key=61 ampeg_release=2 locc64=0 pan=5';
    expect(byRank(await offersAt(text), 0).sort()).toEqual([
      'ampeg_release',
      'key',
      'locc64',
      'pan',
      'sample',
    ]);
    expect(byRank(await offersAt('<group> fil_type=lpf_2p\n<region> $0'), 0)).toEqual([]);
  });

  it('is by the neighbours in XML too', async () => {
    const text = '<instrument><region rt_decay="3"/><region $0/></instrument>';
    expect(byRank(await offersAt(text, 'xml'), 0)).toEqual(['rt_decay']);
  });
});

describe('controllers', () => {
  const control = '<control> label_cc20=Near label_cc21=Room\n';
  const named = (offers: readonly CompletionOffer[]) =>
    offers.filter(({ remark }) => remark).map(({ label, remark }) => `${label} ${remark}`);

  it('are offered by their labels once a name with one is begun', async () => {
    expect(named(await offersAt(`${control}<region> locc$0`))).toEqual(['locc20 Near', 'locc21 Room']);
    expect(named(await offersAt(`${control}<region> amplitude_oncc2$0`))).toContain('amplitude_oncc21 Room');
    expect(named(await offersAt(`${control}<region> $0`))).toEqual([]);
  });

  it('are offered as values', async () => {
    expect(named(await offersAt(`${control}<region> sustain_cc=$0`))).toEqual(['20 Near', '21 Room']);
  });
});

describe('shapes', () => {
  it('come behind the headers that agree as much with a begun tag', async () => {
    const offers = await offersAt('<region> key=60\n<re$0');
    const matching = offers.filter((one) => (one.filter ?? one.label).startsWith('<re'));
    expect(matching.map(({ kind }) => kind)).toContain('shape');
    expect(matching[0]).toMatchObject({ kind: 'header', label: 'region' });
    // What takes the place of the same text is weighed alike by an editor.
    expect(new Set(matching.map(({ start }) => start)).size).toBe(1);
  });

  /** The text after taking an offer. */
  async function taken(marked: string, label: string, format: Format = 'sfz'): Promise<string> {
    const { text } = await documentWithMark(marked, {}, format);
    const offer = (await offersAt(marked, format)).find((one) => one.label === label);
    if (!offer) throw new Error(`${label} is not offered`);
    for (const blank of offer.blanks ?? []) {
      expect(offer.insert[0].slice(blank.start, blank.end)).toMatch(/^\w+(\.wav)?$/);
    }
    return text.slice(0, offer.start) + offer.insert[0] + text.slice(offer.end);
  }

  const places: readonly [marked: string, format: Format][] = [
    ['$0', 'sfz'],
    ['<region> sample=a.wav key=20\n\nvel$0\n', 'sfz'],
    ['<region> sample=a.wav key=20\n<$0', 'sfz'],
    ['<instrument>\n  <region sample="a.wav" key="20"/>\n  <$0\n</instrument>\n', 'xml'],
  ];

  for (const { name, headers } of shapes) {
    it(`are instruments without findings where they are written: ${name}`, async () => {
      for (const [marked, format] of places) {
        const text = await taken(marked, name, format);
        const notation = notations[format];
        const instrument = notation.read(text, { path: 'a' });
        const before = marked.match(/sample=/g)?.length ?? 0;
        const regions = headers.filter(([kind]) => kind === 4).length;
        expect(instrument.regions.length, text).toBe(regions + before);
        const findings = checkInstrument(
          { instrument, notation, samples: samplesInMemory() },
          { 'key-gap': 'off' },
        );
        expect(
          findings.map(({ message }) => message),
          text,
        ).toEqual([]);
      }
    });
  }

  it('have their samples to fill in', async () => {
    const offer = (await offersAt('$0')).find(({ label }) => label === 'round robins');
    const filled = offer?.blanks?.map(({ start, end }) => offer.insert[0].slice(start, end));
    expect(filled).toEqual(['60', 'first.wav', 'second.wav', 'third.wav']);
  });

  it('are not offered behind something else on a line, nor within a tag of XML', async () => {
    const labels = async (marked: string, format: Format = 'sfz') =>
      (await offersAt(marked, format)).map(({ label }) => label);
    expect(await labels('<region> $0')).not.toContain('round robins');
    expect(await labels('<instrument><region $0/></instrument>', 'xml')).not.toContain('round robins');
  });
});
