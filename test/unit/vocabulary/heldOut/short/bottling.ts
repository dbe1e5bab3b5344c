import type { Short } from './short';

/** Samples in a list that regions refer to, one of them unused. */
export const bottling: Short = {
  text: `<bottling>
  <cellar><must mark="w1" file="still/c2.wav"/><must mark="w2" file="still/g2.wav"/><must mark="w9" file="spare.wav"/></cellar>
  <crate velLow="1" velHigh="127">
    <bottle draws="w1" keyLow="36" keyHigh="42" rootKey="36" gainDb="-1.5"/>
    <bottle draws="w2" keyLow="43" keyHigh="50" rootKey="43" gainDb="0"/>
    <bottle draws="w1" keyLow="51" keyHigh="55" rootKey="48" gainDb="-6"/>
  </crate>
</bottling>
`,
  regions: [
    { lovel: 1, hivel: 127, sample: 'still/c2.wav', lokey: 36, hikey: 42, pitch_keycenter: 36, volume: -1.5 },
    { lovel: 1, hivel: 127, sample: 'still/g2.wav', lokey: 43, hikey: 50, pitch_keycenter: 43, volume: 0 },
    { lovel: 1, hivel: 127, sample: 'still/c2.wav', lokey: 51, hikey: 55, pitch_keycenter: 48, volume: -6 },
  ],
  open: [],
};
