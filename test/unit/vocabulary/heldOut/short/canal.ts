import { facts } from '../../examples/invented';
import type { Short } from './short';

/** Ranges and units everywhere; positions in seconds at 44,100 and 48,000 frames a second. */
export const canal: Short = {
  text: `<canal>
  <reach velocity="0..40">
    <barge audio="slow/60.wav" pitch="60" keys="58..61" level="-6.0dB" detune="5ct" start="0s" loop="on" loopPoints="0.25s..1.5s"/>
    <barge audio="slow/64.wav" pitch="64" keys="62..65" level="-4.5dB" detune="-3ct" start="0.02s" loop="on" loopPoints="0.3s..1.75s"/>
  </reach>
  <reach velocity="41..127">
    <barge audio="fast/60.wav" pitch="60" keys="58..61" level="0dB" detune="0ct" start="0s" loop="off"/>
  </reach>
</canal>
`,
  samples: {
    'slow/60.wav': facts(88_200, 44_100),
    'slow/64.wav': facts(96_000, 48_000),
    'fast/60.wav': facts(88_200, 44_100),
  },
  regions: [
    {
      lovel: 0,
      hivel: 40,
      sample: 'slow/60.wav',
      pitch_keycenter: 60,
      lokey: 58,
      hikey: 61,
      volume: -6,
      tune: 5,
      offset: 0,
      loop_mode: 'loop_continuous',
      loop_start: 11025,
      loop_end: 66150,
    },
    {
      lovel: 0,
      hivel: 40,
      sample: 'slow/64.wav',
      pitch_keycenter: 64,
      lokey: 62,
      hikey: 65,
      volume: -4.5,
      tune: -3,
      offset: 960,
      loop_mode: 'loop_continuous',
      loop_start: 14400,
      loop_end: 84000,
    },
    {
      lovel: 41,
      hivel: 127,
      sample: 'fast/60.wav',
      pitch_keycenter: 60,
      lokey: 58,
      hikey: 61,
      volume: 0,
      tune: 0,
      offset: 0,
      loop_mode: 'no_loop',
    },
  ],
  open: ['loop_end.last'],
};
