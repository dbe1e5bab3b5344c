import { facts } from '../../examples/invented';
import type { Short } from './short';

/** German throughout: H for B, commas for decimals, points between thousands. The files say that D2 is key 50. */
export const obstgarten: Short = {
  text: `<?xml version="1.0"?>
<obstgarten>
  <baum sorte="Birne" anschlagVon="0" anschlagBis="90">
    <frucht datei="birne 1.wav" vonTaste="C2" bisTaste="E2" grundton="D2" verstaerkung="-2,5 dB" schleife="ja" schleifenanfang="12.000" schleifenende="132.300" panorama="-20" feinstimmung="3,5"/>
    <frucht datei="birne 2.wav" vonTaste="F2" bisTaste="H2" grundton="G2" verstaerkung="0 dB" schleife="nein" schleifenanfang="0" schleifenende="0" panorama="15" feinstimmung="-12"/>
  </baum>
  <baum sorte="Apfel" anschlagVon="91" anschlagBis="127">
    <frucht datei="apfel 1.wav" vonTaste="C2" bisTaste="B2" grundton="E2" verstaerkung="-1 dB" schleife="ja" schleifenanfang="9.500" schleifenende="1.050.000" panorama="0" feinstimmung="0"/>
  </baum>
</obstgarten>
`,
  samples: {
    'birne 1.wav': facts(150_000, 44100, { rootKey: 50, loop: [12_000, 132_300] }),
    'birne 2.wav': facts(160_000, 44100, { rootKey: 55 }),
    'apfel 1.wav': facts(1_200_000, 44100, { rootKey: 52, loop: [9500, 1_050_000] }),
  },
  regions: [
    {
      lovel: 0,
      hivel: 90,
      sample: 'birne 1.wav',
      lokey: 48,
      hikey: 52,
      pitch_keycenter: 50,
      volume: -2.5,
      loop_mode: 'loop_continuous',
      loop_start: 12000,
      loop_end: 132300,
      pan: -20,
      tune: 3.5,
    },
    {
      lovel: 0,
      hivel: 90,
      sample: 'birne 2.wav',
      lokey: 53,
      hikey: 59,
      pitch_keycenter: 55,
      volume: 0,
      loop_mode: 'no_loop',
      pan: 15,
      tune: -12,
    },
    {
      lovel: 91,
      hivel: 127,
      sample: 'apfel 1.wav',
      lokey: 48,
      hikey: 58,
      pitch_keycenter: 52,
      volume: -1,
      loop_mode: 'loop_continuous',
      loop_start: 9500,
      loop_end: 1050000,
      pan: 0,
      tune: 0,
    },
  ],
  open: [],
};
