import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

/** A pitched sample and a noise whose element has one attribute more. */
function pair(more: string): string {
  return `<rack><bell wav="b1.wav" low="60" high="71" root="66"/>
    <bell wav="b2.wav" low="40" high="43" root="41" ${more}/></rack>`;
}

describe('samples that do not follow the keys', () => {
  it.each([
    'follow-pitch="no"',
    'key-follow="off"',
    'keyTracking="false"',
    'pitchTracking="none"',
    'pitched="no"',
    'transpose="no"',
    'chromatic="false"',
    'fixedPitch="yes"',
    'constant-pitch="1"',
    'ignoreKey="true"',
    'unpitched="yes"',
    'track="0"',
    'folgt-tasten="nein"',
    'suivi-clavier="non"',
    'sigue-tecla="no"',
    'volgt-toets="nee"',
  ])('are known by %s', (more) => {
    expect(valuesIn(pair(more), 'pitch_keytrack', 'pitch_keycenter', 'transpose')).toEqual([
      '- 66 -',
      '0 41 -',
    ]);
  });

  it('are those alone of which it is said', () => {
    const text = pair('follows="yes"').replace('root="66"', 'root="66" follows="no"');
    expect(valuesIn(text, 'pitch_keytrack')).toEqual(['0', '100']);
    expect(valuesIn(pair('transpose="-12"'), 'pitch_keytrack', 'transpose')).toEqual(['- -', '- -12']);
  });

  it('also by an element in theirs, or around several', () => {
    const inner = `<rack><bell wav="b1.wav" low="60" high="71" root="66"><follow>on</follow></bell>
      <bell wav="b2.wav" low="40" high="43" root="41"><follow>off</follow></bell></rack>`;
    expect(valuesIn(inner, 'pitch_keytrack')).toEqual(['100', '0']);
    const outer = `<rack><row keytrack="on"><bell wav="b1.wav" low="60" high="71" root="66"/></row>
      <row keytrack="off"><bell wav="b2.wav" low="40" high="43" root="41"/></row></rack>`;
    expect(valuesIn(outer, 'pitch_keytrack')).toEqual(['100', '0']);
  });
});
