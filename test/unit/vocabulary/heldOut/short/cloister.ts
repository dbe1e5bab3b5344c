import type { Short } from './short';

/** Velocities around keys with the same bare names, ranges of keys by note name, and a word among ranges of loops. */
export const cloister: Short = {
  text: `<cloister>
  <shared><folder>stalls</folder><pitch-standard>440</pitch-standard></shared>
  <manner name="held" gain="0.8">
    <dynamic name="p" from="0" to="63">
      <monk file="c4_p.wav" key="C4" range="A3-D4" loop="1000:45000"/>
      <monk file="f4_p.wav" key="F4" range="D#4-G4" loop="1200:47000"/>
    </dynamic>
    <dynamic name="f" from="64" to="127">
      <monk file="c4_f.wav" key="C4" range="A3-D4" loop="none"/>
    </dynamic>
  </manner>
</cloister>
`,
  regions: [
    {
      master_label: 'held',
      volume: -1.9382,
      group_label: 'p',
      lovel: 0,
      hivel: 63,
      sample: 'stalls/c4_p.wav',
      pitch_keycenter: 60,
      lokey: 57,
      hikey: 62,
      loop_start: 1000,
      loop_end: 45000,
    },
    {
      master_label: 'held',
      volume: -1.9382,
      group_label: 'p',
      lovel: 0,
      hivel: 63,
      sample: 'stalls/f4_p.wav',
      pitch_keycenter: 65,
      lokey: 63,
      hikey: 67,
      loop_start: 1200,
      loop_end: 47000,
    },
    {
      master_label: 'held',
      volume: -1.9382,
      group_label: 'f',
      lovel: 64,
      hivel: 127,
      sample: 'stalls/c4_f.wav',
      pitch_keycenter: 60,
      lokey: 57,
      hikey: 62,
      loop_mode: 'no_loop',
    },
  ],
  open: ['middleC', 'loop_end.last'],
};
