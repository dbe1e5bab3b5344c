import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';

function regionsOf(text: string) {
  const inferred = inferVocabulary(text, { path: 'a.xml' });
  if (!inferred) return undefined;
  const instrument = readVocabularyXml(inferred.vocabulary)(text, { path: 'a.xml' });
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

const lettered = (...rows: string[]) =>
  `<pond>${rows.map((row, at) => `<v snd="f${at}.wav" ${row}/>`).join('')}</pond>`;

describe('bare ends in regions that are called by the letter v', () => {
  it.each([
    ['of two ranges', lettered('min="35" max="46"', 'min="47" max="61"')],
    ['of one range in turns', lettered('min="35" max="46" rr="1"', 'min="35" max="46" rr="2"')],
    ['around roots in Hz', lettered('min="35" max="46" baseHz="82.41"', 'min="47" max="61" baseHz="164.81"')],
  ])('are keys %s', (_, text) => {
    const regions = regionsOf(text);
    expect(regions?.[0]).toMatchObject({ lokey: 35, hikey: 46 });
    expect(regions?.[0]).not.toHaveProperty('lovel');
  });

  it('are velocities where another place gives keys, or they reach the ends of velocities', () => {
    const beside = regionsOf(lettered('key="50" min="1" max="70"', 'key="50" min="71" max="127"'));
    expect(beside?.[0]).toMatchObject({ lokey: 50, lovel: 1, hivel: 70 });
    const roots = regionsOf(lettered('root="50" min="1" max="70"', 'root="50" min="71" max="127"'));
    expect(roots?.[0]).toMatchObject({ lovel: 1, hivel: 70 });
  });
});

describe('an outermost element with a usual name', () => {
  it('holds regions that tell their keys', () => {
    const regions = regionsOf(
      '<project><part audio="a.wav" lo="30" hi="41" root="36"/><part audio="b.wav" lo="42" hi="55" root="48"/></project>',
    );
    expect(regions?.[1]).toMatchObject({ sample: 'b.wav', lokey: 42, hikey: 55, pitch_keycenter: 48 });
  });

  it.each([
    '<project><clip audio="a.wav" start="0" end="9"/><clip audio="b.wav" start="9" end="20"/></project>',
    '<manifest><file name="a.wav" key="12"/><file name="b.wav" key="13"/></manifest>',
  ])('holds none in %s', (text) => expect(regionsOf(text)).toBeUndefined());
});
