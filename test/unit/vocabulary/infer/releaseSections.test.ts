import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const zone = (file: string, low: number, high: number) =>
  `<z file="${file}" lo="${low}" hi="${high}" root="${low + 4}"/>`;

/** Words for letting a key go are common practice; a section of its own holds what sounds then. */
describe('a section of regions that is named after letting a key go', () => {
  it.each([
    ['voci', 'rilasci'],
    ['voci', 'suoni_al_rilascio'],
    ['sons', 'relâchements'],
    ['Töne', 'Loslassgeräusche'],
    ['Töne', 'Nachklänge'],
    ['pijpen', 'naklanken'],
    ['dźwięki', 'puszczenia'],
    ['sonidos', 'sueltas'],
    ['pipes', 'tails'],
    ['voices', 'key-up-noises'],
  ])('starts them on release and is told: %s and %s', (one, other) => {
    const text = `<set><${one}>${zone('a.wav', 40, 50)}${zone('b.wav', 51, 60)}</${one}><${other}>${zone('r.wav', 40, 60)}</${other}></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual(['a.wav -', 'b.wav -', 'r.wav release']);
    const told = readInferred(text).decisions.map(({ message }) => message);
    expect(told).toContain(`Regions inside <${other}> start when a key is released.`);
  });

  it('is none where the name is another one', () => {
    const text = `<set><voci>${zone('a.wav', 40, 50)}</voci><suoni>${zone('b.wav', 51, 60)}</suoni></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual(['a.wav -', 'b.wav -']);
  });
});

describe('a region of another name in a section that is named after letting a key go', () => {
  it('is one too', () => {
    const text = `<set><zones>${zone('a.wav', 40, 50)}${zone('b.wav', 51, 60)}</zones><releases><release file="r.wav" lo="40" hi="60" root="50"/></releases></set>`;
    expect(valuesIn(text, 'sample', 'lokey', 'trigger')).toEqual([
      'a.wav 40 -',
      'b.wav 51 -',
      'r.wav 40 release',
    ]);
  });
});

describe('groups and regions that are named after letting a key go', () => {
  it.each([
    ['Tasten', 'Loslassen'],
    ['Voci', 'Rilasci'],
    ['Sustain', 'Note off'],
    ['Low', 'Key-off noise'],
  ])('start on release where others have another name, and it is told: %s and %s', (one, other) => {
    const text = `<set><group name="${one}">${zone('a.wav', 40, 50)}${zone('b.wav', 51, 60)}</group><group name="${other}">${zone('c.wav', 40, 50)}${zone('d.wav', 51, 60)}</group></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual([
      'a.wav -',
      'b.wav -',
      'c.wav release',
      'd.wav release',
    ]);
    const told = readInferred(text).decisions.map(({ message }) => message);
    expect(told).toContain(`"${other}" in "name" starts when a key is released.`);
  });

  it.each([
    ['Long release', 'Short release'],
    ['Release', 'Release noise'],
  ])('start as others do where no name or each one says so: %s and %s', (one, other) => {
    const text = `<set><group name="${one}">${zone('a.wav', 40, 50)}</group><group name="${other}">${zone('c.wav', 40, 50)}${zone('d.wav', 51, 60)}</group></set>`;
    expect(valuesIn(text, 'trigger')).toEqual(['-', '-', '-']);
  });
});

describe('a note with a file for each start', () => {
  it.each([
    ['attack', 'release'],
    ['Klang', 'Nachklang'],
    ['opname', 'naklank'],
    ['voce', 'rilascio'],
  ])('has a region for each, with what stands around both: %s and %s', (one, other) => {
    const pipe = (key: number) =>
      `<pipe key="${key}"><${one} file="${key}.wav"><loop start="10" end="${key}0"/></${one}><${other} file="${key}r.wav"/></pipe>`;
    const text = `<organ><stop gain="-3 dB">${pipe(36)}${pipe(37)}</stop><noises><noise file="motor.wav"/></noises></organ>`;
    expect(
      valuesIn(text, 'sample', 'lokey', 'hikey', 'volume', 'trigger', 'loop_end', 'group_label'),
    ).toEqual([
      '36.wav 36 36 -3 - 360 -',
      '36r.wav 36 36 -3 release - -',
      '37.wav 37 37 -3 - 370 -',
      '37r.wav 37 37 -3 release - -',
    ]);
    const { decisions, unread } = readInferred(text);
    const told = [...decisions.map(({ message }) => message), ...unread].join('\n');
    expect(told).toContain(`<${other}> is a region that starts when a key is released.`);
    expect(told).toContain('motor.wav');
  });

  it('may have several for letting the key go, or none', () => {
    const text =
      '<organ><pipe key="36"><attack>a.wav</attack><release>b.wav</release><release>c.wav</release></pipe><pipe key="37"><attack>d.wav</attack></pipe></organ>';
    expect(valuesIn(text, 'sample', 'lokey', 'trigger')).toEqual([
      'a.wav 36 -',
      'b.wav 36 release',
      'c.wav 36 release',
      'd.wav 37 -',
    ]);
  });
});
