import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { vocabularyNotation } from '../../../../server/vocabulary/vocabularyNotation';
import { writeVocabulary } from '../../../../server/vocabulary/writeVocabulary';
import { putInto } from './putInto';

/** Puts regions into a template in a dialect of its own, whose vocabulary has been kept in a file. */
async function converted(template: string, source: string) {
  const vocabulary = inferVocabulary(template, { path: 'template.xml' })?.vocabulary;
  if (!vocabulary) throw new Error('no instrument');
  const { vocabulary: kept, problems } = parseVocabulary(writeVocabulary(vocabulary));
  expect(problems).toEqual([]);
  if (!kept) throw new Error('no vocabulary');
  const { text, notes } = await putInto(template, source, {}, vocabularyNotation(kept));
  return { text, notes: notes.map(({ message }) => message) };
}

const cups = (says: string, name: string, ...values: string[]) =>
  `<shelf><!-- ${says} -->\n${values
    .map(
      (value, at) =>
        `<cup clip="${at}.wav" lo="${40 + at}" hi="${40 + at}" root="${40 + at}" ${name}="${value}"/>\n`,
    )
    .join('')}</shelf>`;
const region = (key: number, values: string) =>
  `<region> sample=${key}.wav lokey=${key} hikey=${key} pitch_keycenter=${key} ${values}\n`;
const written = (text: string, name: string) =>
  [...text.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, value]) => value);

describe('a level in dB whose scale ends where a text says', () => {
  it.each([
    ['lift in dB, from -50 up to 4', 'lift', ['-3', '4'], '4'],
    ['level in dB from -60 to 4', 'level', ['-3', '2.5'], '4'],
    ['gain: dB, between -30 and 4', 'gain', ['-3', '0'], '4'],
    ['gain goes from 4 down to -60 dB', 'gain', ['-3', '0'], '4'],
    ['gain: -48 dB to +4 dB', 'gain', ['-3', '0'], '4'],
    ['gain in dB (-48..4)', 'gain', ['-3', '0'], '4'],
    ['pegel in dB, von -40 bis zu 4', 'pegel', ['-3', '0'], '4'],
  ])('%s', async (says, name, values, top) => {
    const made = await converted(
      cups(says, name, ...values),
      region(50, 'volume=9') + region(51, 'volume=-7.5') + region(52, 'volume=4'),
    );
    expect(written(made.text, name)).toEqual([top, '-7.5', top]);
    expect(made.notes).toContain(
      `volume=9 is written as ${top}, because the scale there ends at ${top}. That is 5 dB quieter.`,
    );
  });

  it('may end at 0', async () => {
    const made = await converted(
      cups('level in dB, from -60 to 0', 'level', '-3', '0'),
      region(50, 'volume=2') + region(51, 'volume=-4'),
    );
    expect(written(made.text, 'level')).toEqual(['0', '-4']);
  });

  it('may say by how much is turned down', async () => {
    const made = await converted(
      cups('attenuation in dB, from 0 up to 60', 'attenuation', '3', '12'),
      region(50, 'volume=2') + region(51, 'volume=-4'),
    );
    expect(written(made.text, 'attenuation')).toEqual(['0', '4']);
  });

  it('is not held where no text gives an end', async () => {
    const made = await converted(cups('gain in dB', 'gain', '-3', '4'), region(50, 'volume=9'));
    expect(written(made.text, 'gain')).toEqual(['9']);
  });
});

describe('a factor that a text explains', () => {
  it.each([
    ['strength is a factor from 0 (silent) to 1 (as recorded)', 'strength'],
    ['force: 0 = silent, 1 = full', 'force'],
  ])('takes the level of each region, up to its end: %s', async (says, name) => {
    const made = await converted(
      cups(says, name, '0.6', '1'),
      region(50, 'volume=-6.0206') + region(51, 'volume=3') + region(52, ''),
    );
    expect(written(made.text, name).map(Number)).toEqual([expect.closeTo(0.5, 3), 1, 1]);
    expect(made.notes.join('\n')).toContain('volume=3 is written as 0');
  });
});

describe('numbers that count', () => {
  it('are kept true, and not told to stay as in the example', async () => {
    const row = (count: number, first: number) =>
      `<row count="${count}" colour="red">${Array.from({ length: count }, (_, at) => first + 2 * at)
        .map((key) => `<cup clip="${key}.wav" lo="${key}" hi="${key + 1}" root="${key}"/>`)
        .join('')}</row>`;
    const template = `<shelf>${row(2, 40)}${row(3, 50)}</shelf>`;
    const made = await converted(
      template,
      `<group>\n${region(50, '')}<group>\n${region(51, '')}${region(52, '')}${region(53, '')}${region(54, '')}`,
    );
    expect(written(made.text, 'count')).toEqual(['1', '4']);
    expect(made.notes.join('\n')).not.toContain('count=');
    expect(made.notes.join('\n')).toContain('colour="red"');
  });

  it('of takes are those of the source', async () => {
    const strike = (key: number, take: number, takes: number) =>
      `<cup clip="${key}-${take}.wav" lo="${key}" hi="${key}" root="${key}" take="${take}" takes="${takes}"/>`;
    const template = `<shelf><!-- take / takes: which of how many that follow one another in turn -->${strike(40, 1, 2)}${strike(40, 2, 2)}${strike(41, 1, 1)}</shelf>`;
    const source =
      [1, 2, 3].map((one) => region(50, `seq_length=3 seq_position=${one}`)).join('') + region(51, '');
    const made = await converted(template, source);
    expect(written(made.text, 'take')).toEqual(['1', '2', '3', '1']);
    expect(written(made.text, 'takes')).toEqual(['3', '3', '3', '1']);
    expect(made.notes.join('\n')).not.toContain('takes=');
  });
});
