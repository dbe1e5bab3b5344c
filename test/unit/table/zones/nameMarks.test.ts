import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

/** A table with a mark behind the name of its last sample, and a line below it or above. */
function marked(mark: string, legend: string, isAbove = false): string {
  const rows = table(
    'File | Low | High | Root | Level',
    'spinet_45.wav | 40 | 49 | 45 | -1',
    'spinet_55.wav | 50 | 59 | 55 | 0',
    `jack_45.wav${mark} | 40 | 59 | 45 | -2`,
  );
  return isAbove ? `${legend}\n${rows}` : `${rows}\n\n${legend}`;
}

describe('a mark behind the name of a sample', () => {
  it.each([
    ['*', '* = release sample, plays on key up, 4 dB lower'],
    [' †', '† release noise, turned down by 4 dB'],
    ['**', 'Files marked ** are release samples; make them 4 dB quieter.'],
    ['°', '° = Loslassgeräusch, klingt beim Loslassen, 4 dB leiser'],
    [' *', '*: bruit de relâchement, 4 dB plus faible'],
    [' (r)', '(r) = release sample, 4 dB quieter'],
    [' ¹', '¹ release sample, 4 dB quieter'],
    [' (1)', '(1) release sample, 4 dB quieter'],
    [' (2)', '(2) 4 dB più piano, suona al rilascio (release)'],
    [' [1]', '[1] Loslassgeräusch, klingt beim Loslassen, 4 dB leiser'],
  ])('means what the legend says: "%s", %s', (mark, legend) => {
    for (const isAbove of [false, true]) {
      const [first, , last] = regions(marked(mark, legend, isAbove));
      expect(last).toMatchObject({ sample: 'jack_45.wav', trigger: 'release', volume: '-6' });
      expect(first).toMatchObject({ sample: 'spinet_45.wav', volume: '-1' });
      expect(first?.trigger).toBeUndefined();
      const notes = notesOf(marked(mark, legend, isAbove)).join('\n');
      expect(notes).toMatch(/beside the name of the sample is read as volume=-4, trigger=release, as "/);
      expect(notes).not.toContain('is not done');
    }
  });

  it.each([
    [' (3)', '(3) Recorded too low: tune by +14 cents.', '14'],
    [' (3)', '(3) Zu hoch aufgenommen: um -9 Cent stimmen.', '-9'],
    ['*', '* registrato calante, accordare di +6 cent', '6'],
  ])('gives the tuning that its legend tells: "%s", %s', (mark, legend, tune) => {
    const [first, , last] = regions(marked(mark, legend));
    expect(last).toMatchObject({ sample: 'jack_45.wav', tune, volume: '-2' });
    expect(first?.tune).toBeUndefined();
  });

  it('means its own line alone, where several follow one another', () => {
    const text = table(
      'File | Low | High | Level',
      'spinet_45.wav (1) | 40 | 49 | -1',
      'spinet_55.wav (2) | 50 | 59 | 0',
      '',
      '(1) 3 dB quieter than written',
      '(2) a semitone sharp: transpose -1',
    );
    expect(regions(text).map(({ volume, transpose }) => `${volume ?? ''}/${transpose ?? ''}`)).toEqual([
      '-4/',
      '/-1',
    ]);
  });

  it.each([
    ['*', '* = recorded again in May', 'gives no value that is known'],
    ['†', 'A nice spinet.', '"†" beside the name of the sample is not used'],
    ['?', '', '"?" beside the name of the sample is not used'],
  ])('is no part of the name where nothing or nothing known is said: "%s" %s', (mark, legend, note) => {
    const [, , last] = regions(marked(mark, legend));
    expect(last).toMatchObject({ sample: 'jack_45.wav', volume: '-2' });
    expect(last?.trigger).toBeUndefined();
    expect(notesOf(marked(mark, legend)).join('\n')).toContain(note);
  });

  it('leaves a row out where its legend says that it is not used', () => {
    const legend = '† = recorded in May\n* = do not use';
    for (const text of [marked(' *', '* not used'), marked(' *', legend)])
      expect(regions(text).map(({ sample }) => sample)).toEqual(['spinet_45.wav', 'spinet_55.wav']);
  });

  it('stands outside the marks around a name', () => {
    for (const mark of ['¹', '[^1]', '<sup>1</sup>', ' *', ' (r)']) {
      const text = `| File | Low | High | Root |\n|---|---|---|---|\n| \`spinet_45.wav\` | 40 | 49 | 45 |\n| \`jack_52.wav\`${mark} | 50 | 59 | 52 |\n| **jack_64.wav**${mark} | 60 | 69 | 64 |\n\n${/1|¹/.test(mark) ? '[^1]:' : `${mark} =`} release sample\n`;
      const [first, ...others] = regions(text);
      expect(first?.trigger).toBeUndefined();
      expect(others).toMatchObject([
        { sample: 'jack_52.wav', trigger: 'release' },
        { sample: 'jack_64.wav', trigger: 'release' },
      ]);
    }
  });

  it('is raised by a tag in wikis and HTML, where names stand in marks of their own too', () => {
    const wiki =
      "{|\n! File !! Low !! High\n|-\n| ''spinet_45.wav''<sup>1</sup> || 40 || 49\n|-\n| <code>spinet_55.wav</code><sup>2</sup> || 50 || 59\n|}\n¹ a bit noisy\n² 3 dB quieter\n";
    const html =
      '<table><tr><th>File</th><th>Low</th><th>High</th></tr><tr><td><i>spinet_45.wav</i><sup>1</sup></td><td>40</td><td>49</td></tr><tr><td>spinet_55.wav <sup>2</sup></td><td>50</td><td>59</td></tr></table><p><sup>1</sup> a bit noisy</p><p><sup>2</sup> 3 dB quieter</p>';
    for (const text of [wiki, html]) {
      const [first, second] = regions(text);
      expect(first?.sample).toBe('spinet_45.wav');
      expect(first?.volume).toBeUndefined();
      expect(second).toMatchObject({ sample: 'spinet_55.wav', volume: '-3' });
    }
  });
});
