import type { Short } from './short';

/** Three keys in one text: more than can be read, so that it is asked about. Words for velocities share them out evenly. */
export const bakery: Short = {
  text: `<bakery>
  <loaf file="rye.wav" keys="48 52 50" level="0.5" velocities="soft"/>
  <loaf file="oat.wav" keys="53 57 55" level="0.75" velocities="soft"/>
  <loaf file="bun.wav" keys="58 64 60" level="1" velocities="loud" key="60"/>
</bakery>
`,
  regions: [
    { sample: 'rye.wav', volume: -6.0206, lovel: 1, hivel: 63 },
    { sample: 'oat.wav', volume: -2.498775, lovel: 1, hivel: 63 },
    { sample: 'bun.wav', volume: 0, lokey: 60, hikey: 60, pitch_keycenter: 60, lovel: 64, hivel: 127 },
  ],
  open: ['loaf/@keys'],
};
