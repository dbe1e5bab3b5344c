import type { Short } from './short';

/** Single keys and groups that silence themselves on the outside, 0 for none; a round robin; a folder. */
export const apiary: Short = {
  text: `<apiary samples="hives/">
  <hive note="36" chokes="0">
    <bee wav="thump1.wav" turn="1" turns="2" softest="1" loudest="100"/>
    <bee wav="thump2.wav" turn="2" turns="2" softest="1" loudest="100"/>
  </hive>
  <hive note="42" chokes="1">
    <bee wav="tick1.wav" turn="1" turns="2" softest="1" loudest="127"/>
    <bee wav="tick2.wav" turn="2" turns="2" softest="1" loudest="127"/>
  </hive>
  <hive note="46" chokes="1">
    <bee wav="ring.wav" turn="1" turns="1" softest="1" loudest="127"/>
  </hive>
</apiary>
`,
  regions: [
    {
      lokey: 36,
      hikey: 36,
      pitch_keycenter: 36,
      sample: 'hives/thump1.wav',
      seq_position: 1,
      seq_length: 2,
      lovel: 1,
      hivel: 100,
    },
    {
      lokey: 36,
      hikey: 36,
      pitch_keycenter: 36,
      sample: 'hives/thump2.wav',
      seq_position: 2,
      seq_length: 2,
      lovel: 1,
      hivel: 100,
    },
    {
      lokey: 42,
      hikey: 42,
      pitch_keycenter: 42,
      group: 1,
      off_by: 1,
      sample: 'hives/tick1.wav',
      seq_position: 1,
      seq_length: 2,
      lovel: 1,
      hivel: 127,
    },
    {
      lokey: 42,
      hikey: 42,
      pitch_keycenter: 42,
      group: 1,
      off_by: 1,
      sample: 'hives/tick2.wav',
      seq_position: 2,
      seq_length: 2,
      lovel: 1,
      hivel: 127,
    },
    {
      lokey: 46,
      hikey: 46,
      pitch_keycenter: 46,
      group: 1,
      off_by: 1,
      sample: 'hives/ring.wav',
      seq_position: 1,
      seq_length: 1,
      lovel: 1,
      hivel: 127,
    },
  ],
  open: [],
};
