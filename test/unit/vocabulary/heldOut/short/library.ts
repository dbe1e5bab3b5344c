import type { Short } from './short';

/** Folders that groups name below the folder of all. */
export const library: Short = {
  text: `<library base="tapes">
  <shelf folder="soft/" velocityFrom="1" velocityTo="63">
    <bar file="a.wav" lowKey="36" highKey="40" rootKey="38"/>
    <bar file="b.wav" lowKey="41" highKey="45" rootKey="43"/>
  </shelf>
  <shelf folder="loud/" velocityFrom="64" velocityTo="127">
    <bar file="a.wav" lowKey="36" highKey="40" rootKey="38"/>
  </shelf>
</library>
`,
  regions: [
    { lovel: 1, hivel: 63, sample: 'tapes/soft/a.wav', lokey: 36, hikey: 40, pitch_keycenter: 38 },
    { lovel: 1, hivel: 63, sample: 'tapes/soft/b.wav', lokey: 41, hikey: 45, pitch_keycenter: 43 },
    { lovel: 64, hivel: 127, sample: 'tapes/loud/a.wav', lokey: 36, hikey: 40, pitch_keycenter: 38 },
  ],
  open: [],
};
