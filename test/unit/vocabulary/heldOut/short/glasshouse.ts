import type { Short } from './short';

/** A file for several regions, which are told apart by the keys inside it; nothing says which octave is meant, so C4 is 60 as in the open SFZ format. */
export const glasshouse: Short = {
  text: `<glasshouse>
  <bed file="fern.wav" gain="-3">
    <pot keys="C3..D#3" root="D3" velocity="1..127"/>
    <pot keys="E3..G3" root="F3" velocity="1..127"/>
  </bed>
  <bed file="moss.wav" gain="0">
    <pot keys="G#3..C4" root="A3" velocity="1..127"/>
    <pot keys="C#4..E4" root="D4" velocity="1..127"/>
  </bed>
</glasshouse>
`,
  regions: [
    { sample: 'fern.wav', volume: -3, lokey: 48, hikey: 51, pitch_keycenter: 50, lovel: 1, hivel: 127 },
    { sample: 'fern.wav', volume: -3, lokey: 52, hikey: 55, pitch_keycenter: 53, lovel: 1, hivel: 127 },
    { sample: 'moss.wav', volume: 0, lokey: 56, hikey: 60, pitch_keycenter: 57, lovel: 1, hivel: 127 },
    { sample: 'moss.wav', volume: 0, lokey: 61, hikey: 64, pitch_keycenter: 62, lovel: 1, hivel: 127 },
  ],
  open: ['middleC'],
};
