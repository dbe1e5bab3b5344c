import type { Short } from './short';

/** The path as the text of the region, velocities in whole percent, a region in a comment, a name that speaks of something else than its unit. */
export const lamp: Short = {
  text: `<lamps>
  <lamp from="36" to="40" home="38" softest="0%" loudest="49%" brightness-db="-3">wicks/a.wav</lamp>
  <lamp from="36" to="40" home="38" softest="50%" loudest="100%" brightness-db="0">wicks/b.wav</lamp>
  <!-- <lamp from="1" to="2">old.wav</lamp> -->
  <lamp from="41" to="46" home="43" softest="0%" loudest="100%" brightness-db="-1">wicks/c.wav</lamp>
</lamps>
`,
  regions: [
    { lokey: 36, hikey: 40, pitch_keycenter: 38, lovel: 0, hivel: 63, volume: -3, sample: 'wicks/a.wav' },
    { lokey: 36, hikey: 40, pitch_keycenter: 38, lovel: 64, hivel: 127, volume: 0, sample: 'wicks/b.wav' },
    { lokey: 41, hikey: 46, pitch_keycenter: 43, lovel: 0, hivel: 127, volume: -1, sample: 'wicks/c.wav' },
  ],
  open: ['volume'],
};
