import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { vocabularyNotation } from '../../../../server/vocabulary/vocabularyNotation';

/** The values of each region of a text in another vocabulary that have one of these names. */
function read(text: string, ...names: string[]): string[] {
  const vocabulary = inferVocabulary(text, { path: 'mill.xml' })?.vocabulary;
  if (!vocabulary) throw new Error('no instrument');
  const instrument = vocabularyNotation(vocabulary).read(text, { path: 'mill.xml' });
  return [...instrument.regions].map((region) =>
    [...instrument.effectiveParameters(region)]
      .map(({ name, parameter }) => `${instrument.names.text(name)}=${instrument.valueText(parameter)}`)
      .filter((text) => names.includes(text.split('=')[0] ?? ''))
      .join(' '),
  );
}

const mill = (rows: readonly string[], says = '', outer = '') =>
  `<mill${outer}><!-- ${says} -->${rows.map((row, at) => `<sack wav="s${at}.wav" ${row}/>`).join('')}</mill>`;
const keyed = (rows: readonly string[]) => rows.map((row, at) => `note="${40 + at}" ${row}`);

describe('names that say little, or are explained', () => {
  it.each([
    ['grist: factor 0 to 1', ['1', '0.5'], ['volume=0', 'volume=-6.0206']],
    ['the grist is a multiplier between 0 and 1', ['0.5', '1'], ['volume=-6.0206', 'volume=0']],
    ['grist: factor 0 to 1 for the chance that it plays', ['1', '0.5'], ['', '']],
  ])('reads a factor as a level where nothing else is said: %s', (says, values, expected) => {
    const text = mill(keyed(values.map((value) => `grist="${value}"`)), says);
    expect(read(text, 'volume')).toEqual(expected);
  });

  it.each([
    ['shiftcents', 'tune'],
    ['centsoff', 'tune'],
    ['nudgecents', 'tune'],
    ['shiftsemis', 'transpose'],
  ])('takes joined words by their unit: %s', (name, parameter) => {
    const text = mill(keyed([`${name}="-7"`, `${name}="12"`]));
    expect(read(text, parameter)).toEqual([`${parameter}=-7`, `${parameter}=12`]);
  });

  it.each([
    ['herd: the choke group of a sack; foe: the herd that cuts it off. 0 = none'],
    ['herd = mute group, foe = group that silences it'],
    ['foe: it is cut off by sacks of that herd'],
  ])('reads groups and what silences them: %s', (says) => {
    const rows = ['herd="0" foe="0"', 'herd="3" foe="0"', 'herd="4" foe="3"'];
    expect(
      read(mill(keyed(rows), says), 'group', 'off_by')[2]
        ?.split(' ')
        .sort(),
    ).toEqual(['group=4', 'off_by=3']);
  });

  it('reads words that are listed behind a name', () => {
    const says =
      'run: out = once to its end even if the key is let go; short = only as long as the key is held';
    const text = mill(keyed(['run="out"', 'run="short"']), says);
    expect(read(text, 'loop_mode')).toEqual(['loop_mode=one_shot', 'loop_mode=no_loop']);
  });

  it.each([
    ['loopto: the first frame that is no longer part of the loop', 'loop_end=899'],
    ['loopto: the last frame that belongs to the loop', 'loop_end=900'],
    ['loopto: the frame after which the loop starts again', 'loop_end=900'],
  ])('reads the end of a loop as it is explained: %s', (says, end) => {
    const row = 'loopfrom="100" loopto="900"';
    expect(read(mill(keyed([row, row]), says), 'loop_end', 'offset')).toEqual([end, end]);
  });

  it.each([
    ['times in seconds; every reel runs at 48000 frames per second', ''],
    ['times in seconds', ' reelrate="48000"'],
    ['times in seconds', ' framespersecond="48000"'],
  ])('takes the rate of times from the text around: %s%s', (says, outer) => {
    const text = mill(keyed(['loopfrom="0.5" loopto="2.25"']), says, outer);
    expect(read(text, 'loop_start')).toEqual(['loop_start=24000']);
  });

  it.each([
    ['left', 'right', 'middle'],
    ['near', 'far', 'heart'],
    ['links', 'rechts', 'mitte'],
  ])('tells the ends of two key ranges by what lies between: %s, %s', (low, high, root) => {
    const text = mill([`${low}="60" ${high}="66" ${root}="64"`, `${low}="67" ${high}="73" ${root}="71"`]);
    expect(read(text, 'lokey', 'hikey')).toEqual(['lokey=60 hikey=66', 'lokey=67 hikey=73']);
  });

  it('takes layers and sides of a picture for no keys', () => {
    const rows = ['left="0" right="63" middle="30" note="60"', 'left="64" right="127" middle="90" note="60"'];
    expect(read(mill(rows), 'lokey')).toEqual(['lokey=60', 'lokey=60']);
  });
});
