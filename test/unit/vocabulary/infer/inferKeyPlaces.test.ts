import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

describe('roots as frequencies', () => {
  // ISO 16: 440 Hz is A above middle C, key 69; an octave is a factor of 2.
  it.each([
    ['attributes named by the unit', 'rootHz="220"', 'rootHz="440"'],
    ['attributes with the unit behind', 'pitch="220 Hz"', 'pitch="440 Hz"'],
    ['a bare frequency of keys', 'freq="220.00"', 'freq="440.00"'],
  ])('are keys by %s', (_, first, second) => {
    const text = `<box><item wav="a.wav" lokey="50" hikey="60" ${first}/><item wav="b.wav" lokey="61" hikey="72" ${second}/></box>`;
    expect(valuesIn(text, 'pitch_keycenter')).toEqual(['57', '69']);
  });

  it('are keys beside the files of a list', () => {
    const text = `<box><takes><take id="x" wav="a.wav" hz="110"/><take id="y" wav="b.wav" hz="880"/></takes>
      <map><use take="x" lokey="40" hikey="50"/><use take="y" lokey="51" hikey="90"/></map></box>`;
    expect(valuesIn(text, 'sample', 'pitch_keycenter')).toEqual(['a.wav 45', 'b.wav 81']);
  });

  it('give what they lack to the key as tuning', () => {
    // 440 Hz by 2^(20/1200) is 20 cents above key 69.
    const hertz = (440 * 2 ** (20 / 1200)).toFixed(3);
    const text = `<box><item wav="a.wav" lokey="50" hikey="60" rootHz="220"/><item wav="b.wav" lokey="61" hikey="72" rootHz="${hertz}"/></box>`;
    expect(valuesIn(text, 'pitch_keycenter', 'tune')).toEqual(['57 0', '69 -20']);
  });

  it('are no cutoffs, and cutoffs are no roots', () => {
    const text =
      '<box><item wav="a.wav" lokey="50" hikey="60" cutoff="2000"/><item wav="b.wav" lokey="61" hikey="72" cutoff="5000"/></box>';
    expect(valuesIn(text, 'pitch_keycenter', 'cutoff')).toEqual(['- 2000', '- 5000']);
  });
});

describe('keys that are counted from a base', () => {
  const pads = (around: string, comment = '') =>
    `<kit ${around}>${comment}<pad at="0" wav="a.wav"/><pad at="2" wav="b.wav"/><pad at="13" wav="c.wav"/></kit>`;

  it.each([
    ['counted upwards', '<!-- at is counted upwards from baseKey -->'],
    ['added', '<!-- the number in at is added to baseKey -->'],
    ['gezählt', '<!-- at zählt ab baseKey -->'],
  ])('are read where the text says that they are %s', (_, comment) => {
    expect(valuesIn(pads('baseKey="36"', comment), 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '36 36 36',
      '38 38 38',
      '49 49 49',
    ]);
  });

  it('are read by a name for a distance', () => {
    const text =
      '<kit startKey="48"><pad offset="0" wav="a.wav"/><pad offset="5" wav="b.wav"/><pad offset="7" wav="c.wav"/></kit>';
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['48 48', '53 53', '55 55']);
  });

  it('are told with the base that they are counted from', () => {
    const { decisions, unread } = readInferred(pads('baseKey="36"', '<!-- at is counted from baseKey -->'));
    expect(decisions.find(({ id }) => id === 'keysFromBase')?.message).toContain('from key 36');
    expect(unread.join()).not.toContain('baseKey');
  });

  it('are left as they are where they are keys by themselves', () => {
    const text =
      '<kit baseKey="36"><pad low="36" high="40" wav="a.wav"/><pad low="41" high="47" wav="b.wav"/></kit>';
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['36 40', '41 47']);
  });
});

describe('levels of elements in elements of their own name', () => {
  const nested = (comment: string) => `<organ>${comment}
    <set db="-3"><pipe wav="a.wav" low="36" high="40" root="38"/>
      <set db="-2"><pipe wav="b.wav" low="41" high="50" root="45" db="-0.5"/>
        <set db="-4"><pipe wav="c.wav" low="51" high="60" root="55"/></set></set></set></organ>`;
  const sums = (text: string) =>
    valuesIn(text, 'volume', 'group_volume', 'master_volume', 'global_volume').map((one) =>
      one.split(' ').reduce((sum, value) => sum + (value === '-' ? 0 : Number(value)), 0),
    );

  it('add up where the text says so', () => {
    expect(sums(nested('<!-- db further in is added to the db around it -->'))).toEqual([-3, -5.5, -9]);
  });

  it('are told where more stand in one another than can be added', () => {
    const deep = `<organ><!-- each db is added to the db around it --><set db="-1"><set db="-2"><set db="-3"><set db="-4">
      <pipe wav="a.wav" low="36" high="40" root="38" db="-5"/><pipe wav="b.wav" low="41" high="50" root="45" db="-6"/>
      </set></set></set></set></organ>`;
    expect(readInferred(deep).decisions.find(({ id }) => id === 'set.replaced')?.isLost).toBe(true);
    expect(readInferred(nested('')).decisions.find(({ id }) => id === 'set.replaced')).toBeUndefined();
  });

  it('replace one another where the text says so', () => {
    expect(sums(nested('<!-- a db further in replaces the outer one -->'))).toEqual([-3, -0.5, -4]);
  });

  it('are told where nothing says whether they add', () => {
    const { decisions } = readInferred(nested(''));
    expect(
      decisions.some(({ id, confidence, isGuess }) => /adds$/.test(id) && (isGuess || confidence < 0.75)),
    ).toBe(true);
  });
});

describe('levels from 0 to 127', () => {
  const text = (says: string) =>
    `<box><!-- ${says} --><item wav="a.wav" key="50" loudness="127"/><item wav="b.wav" key="51" loudness="64"/></box>`;

  it('are told where no curve is named', () => {
    const { decisions } = readInferred(text('loudness from 0 to 127'));
    expect(decisions.find(({ id }) => id === 'volume.unit')?.isGuess).toBe(true);
  });

  it('are settled where the text says that they are linear', () => {
    const { decisions } = readInferred(text('loudness from 0 to 127, linear'));
    expect(decisions.find(({ id }) => id === 'volume.unit')?.isGuess).toBeUndefined();
  });
});
