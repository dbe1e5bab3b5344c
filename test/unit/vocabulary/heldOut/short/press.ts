import type { Short } from './short';

/** Capitals; keys and velocities in hexadecimal, centibels, letters before numbers for the sides, backslashes. */
export const press: Short = {
  text: `<PRESS UNIT="semitones">
 <FORME KEY_LO="0x30" KEY_HI="0x37" KEY_BASE="0x33" VEL_LO="0x00" VEL_HI="0x3F" IMAGE="a.png" WAVE="TYPE\\ONE.WAV" TUNE_CT="-4" ATT_CB="35" PAN="L40"/>
 <FORME KEY_LO="0x38" KEY_HI="0x43" KEY_BASE="0x3C" VEL_LO="0x40" VEL_HI="0x7F" IMAGE="b.png" WAVE="TYPE\\TWO.WAV" TUNE_CT="7" ATT_CB="0" PAN="R100"/>
</PRESS>
`,
  regions: [
    {
      lokey: 48,
      hikey: 55,
      pitch_keycenter: 51,
      lovel: 0,
      hivel: 63,
      sample: 'TYPE/ONE.WAV',
      tune: -4,
      volume: -3.5,
      pan: -40,
    },
    {
      lokey: 56,
      hikey: 67,
      pitch_keycenter: 60,
      lovel: 64,
      hivel: 127,
      sample: 'TYPE/TWO.WAV',
      tune: 7,
      volume: 0,
      pan: 100,
    },
  ],
  open: [],
};
