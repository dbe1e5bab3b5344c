import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
const block = (title: string, name: string) =>
  `${title}\nfile, lo, hi, root\n${name}1.wav, 50, 55, 52\n${name}2.wav, 56, 61, 58\n`;

describe('titles of sections that give key switches', () => {
  it.each([
    ['== arco, keyswitch 12 ==', '== pizz, keyswitch 13 =='],
    ['=== arco (KS = 12) ===', '=== pizz (KS = 13) ==='],
    ['arco, KS 12', 'pizz, KS 13'],
    ['--- arco, keyswitch: 12 ---', '--- pizz, keyswitch: 13 ---'],
    ['# arco, key switch C0', '# pizz, key switch C#0'],
    ['KS 12: arco', 'KS 13: pizz'],
    ['[arco] keyswitch on 12', '[pizz] keyswitch on 13'],
    ['== arco, Umschalttaste 12 ==', '== pizz, Umschalttaste 13 =='],
    ['== arco, touche de commutation 12 ==', '== pizz, touche de commutation 13 =='],
    ['== arco, keyswitch note C0 (12) ==', '== pizz, keyswitch note C#0 (13) =='],
    ['== arco, tecla de cambio 12 ==', '== pizz, tecla de cambio 13 =='],
    ['== arco, växlingstangent 12 ==', '== pizz, växlingstangent 13 =='],
    ['== arco, переключатель 12 ==', '== pizz, переключатель 13 =='],
  ])('"%s"', (first, second) => {
    const text = `Fiddle zones.\n\n${block(first, 'a')}\n${block(second, 'p')}`;
    expect(values(text, 'sample', 'sw_last', 'group')).toEqual([
      'a1.wav 12 arco',
      'a2.wav 12 arco',
      'p1.wav 13 pizz',
      'p2.wav 13 pizz',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/"arco" by 12, "pizz" by 13/);
  });
});

describe('lists of key switches in sentences', () => {
  const rows = (said: string) =>
    `${said}\n\n${table(
      'File | Articulation | Low | High | Root',
      'a1.wav | arco | 50 | 55 | 52',
      'a2.wav | arco | 56 | 61 | 58',
      'p1.wav | pizz | 50 | 55 | 52',
      'p2.wav | pizz | 56 | 61 | 58',
    )}`;

  it.each([
    'Keyswitches: arco 12, pizz 13.',
    'Keyswitches: arco = C0, pizz = C#0',
    'Key switches: 12 arco, 13 pizz',
    'Umschalttasten: arco auf 12 und pizz auf 13.',
    'KS: arco 12 / pizz 13',
    'arco is keyswitch 12, pizz is keyswitch 13.',
    'Two articulations. Keyswitches: 12 = arco, 13 = pizz. Have fun!',
  ])('go for the groups that they name: %s', (said) => {
    expect(values(rows(said), 'sample', 'sw_last')).toEqual([
      'a1.wav 12',
      'a2.wav 12',
      'p1.wav 13',
      'p2.wav 13',
    ]);
    expect(notesOf(rows(said)).join('\n')).toMatch(/"arco" by 12, "pizz" by 13/);
  });

  it('go for parts of names of files where there are no groups', () => {
    const text = `Keyswitches: arco 12, pizz 13.\n\n${table(
      'File | Low | High | Root',
      'fid_arco_52.wav | 50 | 55 | 52',
      'fid_pizz_52.wav | 50 | 55 | 52',
    )}`;
    expect(values(text, 'sw_last')).toEqual(['12', '13']);
  });

  it('are told where nothing has these names', () => {
    const said = rows('Keyswitches: legato 12, tremolo 13.');
    expect(values(said, 'sw_last')).toEqual(['-', '-', '-', '-']);
    expect(notesOf(said).join('\n')).toMatch(/it stays open which zones are meant/);
  });
});

describe('other lines of text', () => {
  it('give no key switch without a key', () => {
    const text = `Fiddle. The keyswitch is the last switch key pressed.\n\n${block('== arco ==', 'a')}\n${block('== pizz ==', 'p')}`;
    expect(values(text, 'sw_last')).toEqual(['-', '-', '-', '-']);
  });

  it('are no formulas where they begin with two equals signs', () => {
    const text = `${block('Fiddle', 'a')}\n== one, two, three ==\nb1.wav, 62, 70, 65\n`;
    expect(notesOf(text).join('\n')).not.toMatch(/formula/);
    expect(values(text, 'sample')).toEqual(['a1.wav', 'a2.wav', 'b1.wav']);
  });
});
