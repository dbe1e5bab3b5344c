import type { Short } from './short';

/** Values named by letters and a word, all elements of one name; commas between thousands. */
export const ropery: Short = {
  text: `<ropery><strand no="0"><yarn name="file">hemp1.wav</yarn><yarn name="kLo">48</yarn><yarn name="kHi">50</yarn><yarn name="kRoot">49</yarn><yarn name="lMode">sustain</yarn><yarn name="lStart">1,000</yarn><yarn name="lEnd">52,500</yarn><yarn name="vol">70 %</yarn></strand>
<strand no="1"><yarn name="file">hemp2.wav</yarn><yarn name="kLo">51</yarn><yarn name="kHi">53</yarn><yarn name="kRoot">52</yarn><yarn name="lMode">none</yarn><yarn name="lStart">0</yarn><yarn name="lEnd">0</yarn><yarn name="vol">100 %</yarn></strand>
<strand no="2"><yarn name="file">hemp3.wav</yarn><yarn name="kLo">54</yarn><yarn name="kHi">60</yarn><yarn name="kRoot">57</yarn><yarn name="lMode">forward</yarn><yarn name="lStart">950</yarn><yarn name="lEnd">61,000</yarn><yarn name="vol">85 %</yarn></strand></ropery>
`,
  regions: [
    {
      sample: 'hemp1.wav',
      lokey: 48,
      hikey: 50,
      pitch_keycenter: 49,
      loop_mode: 'loop_sustain',
      loop_start: 1000,
      loop_end: 52500,
      volume: -3.098039,
    },
    {
      sample: 'hemp2.wav',
      lokey: 51,
      hikey: 53,
      pitch_keycenter: 52,
      loop_mode: 'no_loop',
      volume: 0,
    },
    {
      sample: 'hemp3.wav',
      lokey: 54,
      hikey: 60,
      pitch_keycenter: 57,
      loop_mode: 'loop_continuous',
      loop_start: 950,
      loop_end: 61000,
      volume: -1.411621,
    },
  ],
  open: ['loop_end.last'],
};
