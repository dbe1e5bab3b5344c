import type { Short } from './short';

/** Keys, numbers of groups that silence each other and a release group on the outside; a level of silence. */
export const harbour: Short = {
  text: `<harbour>
  <quay lowNote="36" highNote="47" rootNote="40" cutBy="3" number="2">
    <boat file="bell_a.flac" level="-inf dB" loop="off"/>
    <boat file="bell_b.flac" level="-4 dB" loop="through release"/>
  </quay>
  <quay lowNote="48" highNote="60" rootNote="52" cutBy="2" number="3">
    <boat file="bell_c.flac" level="1.5 dB" loop="off"/>
  </quay>
  <quay lowNote="48" highNote="60" rootNote="52" startsOn="key up" releaseTime="250 ms" cutBy="2" number="4">
    <boat file="bell_off.flac" level="-12 dB" loop="off"/>
  </quay>
</harbour>
`,
  regions: [
    {
      lokey: 36,
      hikey: 47,
      pitch_keycenter: 40,
      off_by: 3,
      group: 2,
      sample: 'bell_a.flac',
      volume: -144,
      loop_mode: 'no_loop',
    },
    {
      lokey: 36,
      hikey: 47,
      pitch_keycenter: 40,
      off_by: 3,
      group: 2,
      sample: 'bell_b.flac',
      volume: -4,
      loop_mode: 'loop_continuous',
    },
    {
      lokey: 48,
      hikey: 60,
      pitch_keycenter: 52,
      off_by: 2,
      group: 3,
      sample: 'bell_c.flac',
      volume: 1.5,
      loop_mode: 'no_loop',
    },
    {
      lokey: 48,
      hikey: 60,
      pitch_keycenter: 52,
      off_by: 2,
      group: 4,
      trigger: 'release',
      ampeg_release: 0.25,
      sample: 'bell_off.flac',
      volume: -12,
      loop_mode: 'no_loop',
    },
  ],
  open: [],
};
