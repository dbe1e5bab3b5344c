import type { Short } from './short';

/** Names of one letter: units and the order of keys tell what they are, and tuning and pan remain a guess. */
export const kennel: Short = {
  text: `<q>
 <d n="pups" v="0-63">
  <b s="a.wav" k="60" l="58" h="61" t="-0.12" a="-3dB" p="12"/>
  <b s="b.wav" k="64" l="62" h="65" t="0.05" a="-1.5dB" p="-50"/>
  <b s="c.wav" k="67" l="66" h="69" t="0.3" a="0dB" p="100"/>
 </d>
 <d n="hounds" v="64-127">
  <b s="d.wav" k="60" l="58" h="61" t="0" a="-3dB" p="-100"/>
 </d>
</q>
`,
  regions: [
    {
      group_label: 'pups',
      lovel: 0,
      hivel: 63,
      sample: 'a.wav',
      pitch_keycenter: 60,
      lokey: 58,
      hikey: 61,
      tune: -12,
      volume: -3,
      pan: 12,
    },
    {
      group_label: 'pups',
      lovel: 0,
      hivel: 63,
      sample: 'b.wav',
      pitch_keycenter: 64,
      lokey: 62,
      hikey: 65,
      tune: 5,
      volume: -1.5,
      pan: -50,
    },
    {
      group_label: 'pups',
      lovel: 0,
      hivel: 63,
      sample: 'c.wav',
      pitch_keycenter: 67,
      lokey: 66,
      hikey: 69,
      tune: 30,
      volume: 0,
      pan: 100,
    },
    {
      group_label: 'hounds',
      lovel: 64,
      hivel: 127,
      sample: 'd.wav',
      pitch_keycenter: 60,
      lokey: 58,
      hikey: 61,
      tune: 0,
      volume: -3,
      pan: -100,
    },
  ],
  open: ['tune', 'pan'],
};
