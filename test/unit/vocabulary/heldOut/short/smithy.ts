import type { Short } from './short';

/** Files without an ending, and keys outside of what names them. */
export const smithy: Short = {
  text: `<smithy directory="Blows/">
  <anvils>
    <anvil note="36" chokes="1"><blow wav="hammer-soft" intensity-from="0" intensity-to="64" decibels="-2"/><blow wav="hammer-hard" intensity-from="65" intensity-to="127" decibels="0"/></anvil>
    <anvil note="38" chokes="2"><blow wav="tongs-soft" intensity-from="0" intensity-to="64" decibels="-1.5"/><blow wav="tongs-hard" intensity-from="65" intensity-to="127" decibels="-0.5"/></anvil>
  </anvils>
</smithy>
`,
  regions: [
    {
      lokey: 36,
      hikey: 36,
      pitch_keycenter: 36,
      group: 1,
      off_by: 1,
      sample: 'Blows/hammer-soft.wav',
      lovel: 0,
      hivel: 64,
      volume: -2,
    },
    {
      lokey: 36,
      hikey: 36,
      pitch_keycenter: 36,
      group: 1,
      off_by: 1,
      sample: 'Blows/hammer-hard.wav',
      lovel: 65,
      hivel: 127,
      volume: 0,
    },
    {
      lokey: 38,
      hikey: 38,
      pitch_keycenter: 38,
      group: 2,
      off_by: 2,
      sample: 'Blows/tongs-soft.wav',
      lovel: 0,
      hivel: 64,
      volume: -1.5,
    },
    {
      lokey: 38,
      hikey: 38,
      pitch_keycenter: 38,
      group: 2,
      off_by: 2,
      sample: 'Blows/tongs-hard.wav',
      lovel: 65,
      hivel: 127,
      volume: -0.5,
    },
  ],
  open: ['sample.ending'],
};
