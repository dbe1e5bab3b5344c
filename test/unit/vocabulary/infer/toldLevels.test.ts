import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

/** Three pipes whose places are explained by a text above them. */
const pipes = (said: string, ...values: [string, string, string]) =>
  `<organ><!-- ${said} -->\n${values
    .map(
      (value, at) =>
        `<pipe wav="p${at}.wav" low="${40 + 5 * at}" high="${44 + 5 * at}" root="${42 + 5 * at}" ${value}/>`,
    )
    .join('\n')}</organ>`;
const halves = (name: string, said: string) =>
  valuesIn(pipes(said, `${name}="0.5"`, `${name}="1"`, `${name}="0.25"`), 'volume').map((one) =>
    one === '-' ? one : String(Math.round(Number(one) * 10) / 10),
  );

describe('levels that are told as a share of what was recorded', () => {
  it.each([
    ['strength', 'strength is a factor from 0 (silent) to 1 (as recorded)'],
    ['strength', 'strength: amplitude factor'],
    ['force', 'force: 0 = silent, 1 = full'],
    ['strength', 'strength: linear, 1 = unchanged'],
    ['power', 'power is linear, from 0 (no sound) to 1 (full)'],
    ['wind', 'wind = 0 (silence) to 1 (as recorded)'],
    ['wind', 'wind: factor, 1 = unchanged'],
    ['strength', 'strength tells how loud, 0 (mute) to 1 (full)'],
    ['wind', 'wind runs from 0 (silent) up to 1 (untouched)'],
    ['druck', 'druck: Faktor von 0 (stumm) bis 1 (wie aufgenommen)'],
    ['souffle', 'souffle : facteur de 0 (silence) à 1 (tel quel)'],
  ])('%s by "%s"', (name, said) => {
    expect(halves(name, said)).toEqual(['-6', '0', '-12']);
  });

  it('in percent', () => {
    const said = 'wind in percent, 0 = silent, 100 = as recorded';
    expect(
      valuesIn(pipes(said, 'wind="50"', 'wind="100"', 'wind="10"'), 'volume').map((one) =>
        Math.round(Number(one)),
      ),
    ).toEqual([-6, 0, -20]);
  });

  it('but not a velocity from 0 to 1, nor another share', () => {
    const said = 'velocities are factors from 0 to 1';
    const text = pipes(
      said,
      'velLow="0" velHigh="0.5"',
      'velLow="0" velHigh="0.5"',
      'velLow="0.5" velHigh="1"',
    );
    expect(valuesIn(text, 'volume')).toEqual(['-', '-', '-']);
    expect(halves('sustain', 'sustain: 0 = silent, 1 = full')).toEqual(['-', '-', '-']);
    expect(halves('mute', 'mute: 0 = off, 1 = on')).toEqual(['-', '-', '-']);
    expect(halves('tone', 'tone: filter from 0 (silent) to 1 (open)')).toEqual(['-', '-', '-']);
    expect(halves('wet', 'wet: 0 = dry, 1 = wet')).toEqual(['-', '-', '-']);
  });
});
