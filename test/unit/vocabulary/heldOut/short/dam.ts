import type { Short } from './short';

/** A level of groups beside one of every region; a loop of nothing where there is none; backslashes below a folder. */
export const dam: Short = {
  text: `<Dam caption="Sluice organ" audioFolder="takes">
  <Gate caption="upper" trimDb="-3">
    <Sluice><Tape uri="reed\\A2.flac"/><Reach noteFloor="43" noteCeil="47" noteHome="45"/><Thrust floor="1" ceil="63"/>
      <Pitch semis="0" cents="-12.5"/><Blend volume="-4.5" balance="12"/><Round enabled="true" begin="1200" length="44100"/></Sluice>
    <Sluice><Tape uri="reed\\D3.flac"/><Reach noteFloor="48" noteCeil="52" noteHome="50"/><Thrust floor="1" ceil="63"/>
      <Pitch semis="-1" cents="4"/><Blend volume="-2" balance="-30"/><Round enabled="false" begin="0" length="0"/></Sluice>
  </Gate>
  <Gate caption="lower" trimDb="1.5">
    <Sluice><Tape uri="reed\\A2 hard.flac"/><Reach noteFloor="43" noteCeil="47" noteHome="45"/><Thrust floor="64" ceil="127"/>
      <Pitch semis="0" cents="0"/><Blend volume="0" balance="0"/><Round enabled="true" begin="900" length="50000"/></Sluice>
  </Gate>
</Dam>
`,
  regions: [
    {
      group_label: 'upper',
      group_volume: -3,
      lovel: 1,
      hivel: 63,
      sample: 'takes/reed/A2.flac',
      lokey: 43,
      hikey: 47,
      pitch_keycenter: 45,
      transpose: 0,
      tune: -12.5,
      volume: -4.5,
      pan: 12,
      loop_mode: 'loop_continuous',
      loop_start: 1200,
      loop_end: 45299,
    },
    {
      group_label: 'upper',
      group_volume: -3,
      lovel: 1,
      hivel: 63,
      sample: 'takes/reed/D3.flac',
      lokey: 48,
      hikey: 52,
      pitch_keycenter: 50,
      transpose: -1,
      tune: 4,
      volume: -2,
      pan: -30,
      loop_mode: 'no_loop',
    },
    {
      group_label: 'lower',
      group_volume: 1.5,
      lovel: 64,
      hivel: 127,
      sample: 'takes/reed/A2 hard.flac',
      lokey: 43,
      hikey: 47,
      pitch_keycenter: 45,
      transpose: 0,
      tune: 0,
      volume: 0,
      pan: 0,
      loop_mode: 'loop_continuous',
      loop_start: 900,
      loop_end: 50899,
    },
  ],
  open: ['Gate/volume.adds'],
};
