import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

describe('units that an outer element states for places by their names', () => {
  it('counts for those places, a range on both sides of 0 for one between left and right', () => {
    const text = `<rack unit-of-gain="percent" unit-of-side="-100..100">
      <cell gain="100" side="-50" file="r1.wav" low="40" high="45" root="42"/>
      <cell gain="50" side="100" file="r2.wav" low="46" high="50" root="48"/></rack>`;
    expect(valuesIn(text, 'volume', 'pan')).toEqual(['0 -50', '-6.0206 100']);
    const german = `<regal pegel-einheit="dB" lage-einheit="-1 bis 1">
      <fach pegel="-3" lage="0.5" datei="r1.wav" von="40" bis="45" grundton="42"/>
      <fach pegel="2" lage="-1" datei="r2.wav" von="46" bis="50" grundton="48"/></regal>`;
    expect(valuesIn(german, 'volume', 'pan')).toEqual(['-3 50', '2 -100']);
  });

  it('counts from any element around regions', () => {
    const text = `<desk><case><title>Reed</title><pipes beginUnit="ms" cutUnit="dB">
      <pipe><wav>p1.wav</wav><keys lo="40" hi="45" root="42"/><begin>12</begin><cut>3</cut></pipe>
      <pipe><wav>p2.wav</wav><keys lo="46" hi="50" root="48"/><begin>30</begin><cut>0</cut></pipe></pipes></case></desk>`;
    expect(readInferred(text).vocabulary?.levels.at(-1)?.parameters).toContainEqual(
      expect.objectContaining({ parameter: 'offset', form: { kind: 'position', unit: 'milliseconds' } }),
    );
    const listed = text
      .replace(' beginUnit="ms" cutUnit="dB"', '')
      .replace('<title>', '<units><begin>ms</begin></units><title>');
    expect(readInferred(listed).vocabulary?.levels.at(-1)?.parameters).toContainEqual(
      expect.objectContaining({ parameter: 'offset', form: { kind: 'position', unit: 'milliseconds' } }),
    );
  });

  it('says nothing of places whose numbers lie outside of the range', () => {
    const text = `<rack place-unit="-1..1"><cell place="7" file="r1.wav" low="40" high="45"/>
      <cell place="8" file="r2.wav" low="46" high="50"/></rack>`;
    expect(valuesIn(text, 'pan')).toEqual(['-', '-']);
  });
});

describe('units beside keys and places of loops', () => {
  it('are those of the tuning and not of the key beside it', () => {
    const text = `<bells>
      <bell src="q1.wav"><reach lo="40" hi="50"/><pitch key="45"/><loop point="1000" len="2000" units="samples"/></bell>
      <bell src="q2.wav"><reach lo="51" hi="60"/><pitch key="55" shift="3" units="cents"/></bell>
      <bell src="q3.wav"><reach lo="61" hi="70"/><pitch key="66" shift="-0.5" units="semitones"/></bell></bells>`;
    expect(valuesIn(text, 'pitch_keycenter', 'tune')).toEqual(['45 -', '55 3', '66 -50']);
    expect(valuesIn(text, 'loop_start', 'loop_end')[0]).toBe('1000 2999');
  });

  it('tell tunings behind numbers of any name, also of entries that regions refer to', () => {
    const text = `<kit><sources><source id="a" file="a.wav" note="60" drift="+5 cents"/>
      <source id="b" file="b.wav" note="64" drift="-3 cents"/></sources>
      <map><pad lo="58" hi="61" source="a"/><pad lo="62" hi="66" source="b"/></map></kit>`;
    expect(valuesIn(text, 'tune')).toEqual(['5', '-3']);
    expect(readInferred(text).decisions.some(({ message }) => /"drift".*tuning/.test(message))).toBe(true);
  });
});

describe('ends that somebody exchanged', () => {
  it('are keys around their root keys, whatever the element is named', () => {
    const text = `<pipes>
      <hit file="p1.wav" tuned="50" least="44" most="52"/><hit file="p2.wav" tuned="57" least="60" most="53"/>
      <hit file="p3.wav" tuned="66" least="61" most="69"/></pipes>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter', 'lovel')).toEqual([
      '44 52 50 -',
      '53 60 57 -',
      '61 69 66 -',
    ]);
  });

  it('are keys where no place is known to give roots', () => {
    const text = `<harfe>
      <anschlag datei="h1.wav" unten="30" oben="41" mitte="36"/><anschlag datei="h2.wav" unten="42" oben="50" mitte="46"/>
      <anschlag datei="h3.wav" unten="58" oben="51" mitte="55"/><anschlag datei="h4.wav" unten="59" oben="70" mitte="64"/></harfe>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '30 41 36',
      '42 50 46',
      '51 58 55',
      '59 70 64',
    ]);
  });

  it('are no keys where they reach the loudest velocity', () => {
    const text = `<drum><hit file="a.wav" least="1" most="40"/><hit file="b.wav" least="41" most="90"/>
      <hit file="c.wav" least="91" most="127"/></drum>`;
    expect(readInferred(text).regions).toEqual(['none']);
  });
});

describe('files by side and by dynamics', () => {
  it.each([
    ['izquierda', 'derecha'],
    ['vänster', 'höger'],
    ['L', 'R'],
  ])('lie on the sides that "%s" and "%s" name', (left, right) => {
    const string = (root: number) =>
      `<string root="${root}" low="${root - 2}" high="${root + 2}"><wave channel="${left}">a${root}.wav</wave><wave channel="${right}">b${root}.wav</wave></string>`;
    expect(valuesIn(`<harp>${string(57)}${string(62)}</harp>`, 'pan')).toEqual([
      '-100',
      '100',
      '-100',
      '100',
    ]);
  });

  it('share velocities out among elements that are called after dynamics, and tell it', () => {
    const bar = (root: number) =>
      `<bar root="${root}" low="${root - 2}" high="${root + 2}"><hard>f${root}.wav</hard><soft>p${root}.wav</soft></bar>`;
    const text = `<bells>${bar(60)}${bar(65)}</bells>`;
    // Equal parts are our choice.
    expect(valuesIn(text, 'lovel', 'hivel')).toEqual(['64 127', '1 63', '64 127', '1 63']);
    expect(readInferred(text).decisions.map(({ id }) => id)).toContain('region.layers');
  });
});
